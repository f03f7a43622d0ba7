import { findDiameters } from '../involute/gear-diameters.ts';
import type { StackWall } from './part-stack.ts';
import type { PlacedSection } from './wheel-form.ts';

/** One level of a toothing: height, turn about the axis, and the chamfer's share there (1 at a face, 0 above). */
export interface WallLevel {
  readonly z: number;
  readonly turn: number;
  readonly share: number;
}

/** A helical toothing turns by 2 tan β/d a millimeter, rad/mm. */
export function findTwist({ spec }: PlacedSection): number {
  return (2 * Math.tan(spec.helixAngle)) / findDiameters(spec).reference;
}

/**
 * Levels of a toothed wall from low to high. Between two of them a point on radius r goes straight where the helix
 * goes round: r Δ²/8 off for a turn Δ, so Δ ≤ √(8 e/r). A turned section joined straight also loses area, Δ²/6 of it
 * at the mean, which the second bound keeps below 1 part in 30,000; a ring loses a multiple of it, so it gets more.
 */
export function listWallLevels(wall: StackWall, section: PlacedSection, chordError: number): WallLevel[] {
  const { spec } = section;
  const { tip, root } = findDiameters(spec);
  const twist = findTwist(section);
  const turnAt = (z: number): number => (section.phase ?? 0) + twist * (z - section.offset);
  const step = Math.min(
    Math.sqrt((16 * chordError) / Math.max(tip, root)),
    spec.kind === 'internal' ? 0.005 : 0.014,
  );
  const { low, high, chamfer } = wall;
  const ends = [
    { z: low, share: chamfer.low > 0 ? 1 : 0 },
    ...(chamfer.low > 0 ? [{ z: low + chamfer.low, share: 0 }] : []),
    ...(chamfer.high > 0 ? [{ z: high - chamfer.high, share: 0 }] : []),
    { z: high, share: chamfer.high > 0 ? 1 : 0 },
  ];
  const levels: WallLevel[] = [{ ...ends[0], turn: turnAt(low) }];
  for (let k = 0; k + 1 < ends.length; k++) {
    const [from, to] = [ends[k], ends[k + 1]];
    const height = to.z - from.z;
    const count = Math.max(1, Math.ceil(Math.abs(twist * height) / step));
    for (let i = 1; i <= count; i++) {
      const z = i === count ? to.z : from.z + (height * i) / count;
      levels.push({ z, turn: turnAt(z), share: from.share + ((to.share - from.share) * i) / count });
    }
  }
  return levels;
}

/** The section at a chamfer's share: 0 whole, 1 as at the face. Those two are made once. */
export function startCuts(section: PlacedSection, whole: Float64Array): (share: number) => Float64Array {
  const { chamfer } = section;
  const isInternal = section.spec.kind === 'internal';
  const limit = findChamferRadius(section);
  const atFace = chamfer > 0 ? limitRadii(whole, limit, 1, isInternal) : whole;
  return (share) => {
    if (share === 0) return whole;
    return share === 1 ? atFace : limitRadii(whole, limit, share, isInternal);
  };
}

/** The circle that a chamfer cuts the outline back to at the face. */
export function findChamferRadius({ spec, chamfer }: PlacedSection): number {
  return findDiameters(spec).tip / 2 + (spec.kind === 'internal' ? chamfer : -chamfer);
}

/** Points beyond the limit circle go `share` of the way to it along their radius. */
function limitRadii(points: Float64Array, limit: number, share: number, isInternal: boolean): Float64Array {
  const moved = points.slice();
  const square = limit * limit;
  for (let k = 0; k < points.length; k += 2) {
    const found = points[k] * points[k] + points[k + 1] * points[k + 1];
    if (isInternal ? found >= square : found <= square) continue;
    const factor = 1 + share * (limit / Math.sqrt(found) - 1);
    moved[k] *= factor;
    moved[k + 1] *= factor;
  }
  return moved;
}

/** Points turned about the origin. */
export function turnPoints(points: Float64Array, turn: number): Float64Array {
  if (turn === 0) return points;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const turned = new Float64Array(points.length);
  for (let k = 0; k < points.length; k += 2) {
    turned[k] = points[k] * c - points[k + 1] * s;
    turned[k + 1] = points[k] * s + points[k + 1] * c;
  }
  return turned;
}
