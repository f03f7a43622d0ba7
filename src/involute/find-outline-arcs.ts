import { type ArcLoop, fitArcs } from '../plane/fit-arcs.ts';
import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { traceOutline } from './trace-outline.ts';

/**
 * The outline of a toothing in lines and arcs alone: tip and root circles exactly, flanks and fillets as arcs that
 * stray from the exact curves by at most `error` (mm). Both flanks of a tooth are mirror images and all teeth are
 * alike. Where `traceOutline` puts it: wheels about the origin with tooth 0 on +x, a rack along x.
 *
 * Throws the Fails of `traceOutline`.
 *
 * @example m 1, z 20, 20°, error 0.001: 11 pieces a flank or fewer
 */
export function findOutlineArcs(spec: GearSpec, error: number): ArcLoop {
  // The samples stray a tenth, the arcs from the samples the rest.
  const outline = traceOutline(spec, error * sampledPart);
  const arcError = error * (1 - sampledPart);
  if (spec.kind === 'rack') {
    const closed = [...outline.points, outline.points[0], outline.points[1]];
    const { points, bulges } = fitArcs(closed, arcError);
    return { points: Float64Array.from(points.slice(0, -2)), bulges: Float64Array.from(bulges) };
  }
  const { tip, root } = findDiameters(spec);
  const half = listFlank(outline.points, outline.perTooth, root / 2, tip / 2);
  const right = fitArcs(half, arcError);
  return repeatFlank(right.points, right.bulges, spec.teeth);
}

const sampledPart = 0.1;

/** The samples of tooth 0's first flank: from the last one on the root circle to the first one on the tip circle. */
function listFlank(points: Float64Array, perTooth: number, root: number, tip: number): number[] {
  const isOn = (k: number, radius: number): boolean =>
    Math.abs(Math.hypot(points[2 * k], points[2 * k + 1]) - radius) < onCircle * radius;
  let from = 0;
  while (from + 1 < perTooth && isOn(from + 1, root)) from++;
  let to = from + 1;
  // At the latest the sample on the tooth's axis, halfway.
  while (to < perTooth / 2 && !isOn(to, tip)) to++;
  return Array.from(points.subarray(2 * from, 2 * to + 2));
}

/** Rounding moves a sample off its circle by less. */
const onCircle = 1e-9;

/** A whole wheel of one flank: root to tip at negative y, its mirror image, tip and root arcs between. */
function repeatFlank(flank: readonly number[], bulges: readonly number[], teeth: number): ArcLoop {
  const n = flank.length / 2;
  const pitch = (2 * Math.PI) / teeth;
  const start = -Math.atan2(flank[1], flank[0]);
  const end = -Math.atan2(flank[2 * n - 1], flank[2 * n - 2]);
  const radius = Math.hypot(flank[0], flank[1]);
  const hasTip = end > nothing;
  const hasRoot = pitch / 2 - start > nothing;
  const xy: number[] = [];
  const turns: number[] = [];
  for (let k = 0; k < n; k++) {
    xy.push(flank[2 * k], flank[2 * k + 1]);
    if (k + 1 < n) turns.push(bulges[k]);
  }
  // Mirrored and run backwards, an arc keeps its bulge.
  turns.push(hasTip ? Math.tan(end / 2) : bulges[n - 2]);
  for (let k = n - (hasTip ? 1 : 2); k >= 0; k--) {
    xy.push(flank[2 * k], -flank[2 * k + 1]);
    if (k > 0) turns.push(bulges[k - 1]);
  }
  if (hasRoot) turns.push(Math.tan((pitch / 2 - start) / 2));
  // Without a floor the next tooth begins where this one ends.
  else xy.length -= 2;
  if (!(radius > 0) || turns.length !== xy.length / 2) throw new Error(`${turns.length} pieces, ${xy.length / 2} points`);
  const points = new Float64Array(xy.length * teeth);
  const all = new Float64Array(turns.length * teeth);
  for (let tooth = 0; tooth < teeth; tooth++) {
    const c = Math.cos(tooth * pitch);
    const s = Math.sin(tooth * pitch);
    for (let k = 0; k < xy.length; k += 2) {
      points[tooth * xy.length + k] = xy[k] * c - xy[k + 1] * s;
      points[tooth * xy.length + k + 1] = xy[k] * s + xy[k + 1] * c;
    }
    all.set(turns, tooth * turns.length);
  }
  return { points, bulges: all };
}

/** An arc of a smaller angle, rad, is none. */
const nothing = 1e-9;
