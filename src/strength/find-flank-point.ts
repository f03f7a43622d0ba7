import type { ToothHalf } from './trace-tooth-half.ts';

/** Where a force stands on a tooth's flank, and where its line meets the tooth's axis. */
export interface FlankPoint {
  readonly halfThickness: number;
  readonly height: number;
  /** α_Fen, rad: between the force and the square to the tooth's axis */
  readonly angle: number;
  /** Height at which the force's line crosses the tooth's axis: where the bending lever begins */
  readonly vertex: number;
}

/**
 * The point of the outline at a radius (a rack: at a height over its datum line), or at the end of its flank, with
 * the direction of its normal. The direction is that of the chords beside it, turned in proportion.
 *
 * Throws a plain Error where the flank does not reach that radius.
 */
export function findFlankPoint({ kind, points }: ToothHalf, radius?: number): FlankPoint {
  const last = points.length / 2 - 1;
  // A level that grows toward the tip, as heights do.
  const levelOf = (k: number): number => {
    if (kind === 'rack') return points[2 * k + 1];
    const distance = Math.hypot(points[2 * k], points[2 * k + 1]);
    return kind === 'internal' ? -distance : distance;
  };
  let edge = last - 1;
  let part = 1;
  if (radius !== undefined) {
    const level = kind === 'internal' ? -radius : radius;
    if (!(level >= levelOf(0) && level <= levelOf(last) + 1e-9 * Math.abs(radius) + 1e-12))
      throw new Error(`no flank at radius ${radius}`);
    while (edge > 0 && levelOf(edge) > level) edge--;
    part = Math.min(1, (level - levelOf(edge)) / (levelOf(edge + 1) - levelOf(edge)));
  }
  const halfThickness = points[2 * edge] + (points[2 * edge + 2] - points[2 * edge]) * part;
  const height = points[2 * edge + 1] + (points[2 * edge + 3] - points[2 * edge + 1]) * part;
  const angle = slopeAt(points, edge, part);
  return { halfThickness, height, angle, vertex: height - halfThickness * Math.tan(angle) };
}

/** Chords have the curve's direction in their middles; between and beyond these it turns in proportion. */
function slopeAt(points: Float64Array, edge: number, part: number): number {
  const neighbor = part >= 0.5 && 2 * edge + 5 < points.length ? edge + 1 : Math.max(0, edge - 1);
  const own = chordAt(points, edge);
  if (neighbor === edge) return own.slope;
  const other = chordAt(points, neighbor);
  // A straight flank is one long chord beside the short ones of its fillet: their turning is not its own.
  if (own.length > muchLonger * other.length) return own.slope;
  const fromMiddle = (part - 0.5) * own.length;
  const between = ((own.length + other.length) / 2) * Math.sign(neighbor - edge);
  return own.slope + ((other.slope - own.slope) * fromMiddle) / between;
}

/** Neighboring chords of one sampled curve differ by far less. */
const muchLonger = 4;

function chordAt(points: Float64Array, edge: number): { readonly slope: number; readonly length: number } {
  const dx = points[2 * edge + 2] - points[2 * edge];
  const dy = points[2 * edge + 3] - points[2 * edge + 1];
  return { slope: Math.atan2(-dx, dy), length: Math.hypot(dx, dy) };
}
