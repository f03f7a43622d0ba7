import { type ArcRun, fitArcs } from '../plane/fit-arcs.ts';
import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { traceOutline } from './trace-outline.ts';

/**
 * The first flank of tooth 0 in lines and arcs, fillet and undercut included, from the root circle to the tip circle
 * (the tooth stands on +x, the flank at negative y). No arc strays from the exact curves by more than `error`, mm.
 *
 * For wheels; a rack has no such flank: a plain Error. Throws the Fails of `traceOutline`.
 *
 * @example m 1, z 20, 20°, error 0.001 mm: 6 arcs
 */
export function findFlankArcs(spec: GearSpec, error: number): ArcRun {
  if (spec.kind === 'rack') throw new Error('a rack has no flank about an axis');
  const { points, perTooth } = traceOutline(spec, error * sampledPart);
  const { tip, root } = findDiameters(spec);
  const isOn = (k: number, diameter: number): boolean =>
    Math.abs(2 * Math.hypot(points[2 * k], points[2 * k + 1]) - diameter) < onCircle * diameter;
  let from = 0;
  while (from + 1 < perTooth && isOn(from + 1, root)) from++;
  let to = from + 1;
  // At the latest the sample on the tooth's axis, halfway.
  while (to < perTooth / 2 && !isOn(to, tip)) to++;
  return fitArcs(points.subarray(2 * from, 2 * to + 2), error * arcPart);
}

/** The samples stray by the first share of the error, the arcs from the samples by the second: together below it. */
const sampledPart = 0.05;
const arcPart = 0.85;

/** Rounding moves a sample off its circle by less. */
const onCircle = 1e-9;
