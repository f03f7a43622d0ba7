import { Fail } from '../fail.ts';
import { findBaseSpaceAngle } from './base-space-angle.ts';
import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { findInternalRoot, findInternalSpaceHalfAngle, type InternalFillet } from './internal-root.ts';
import { inverseInvolute } from './involute-function.ts';
import { pushArc } from './push-arc.ts';
import { sampleCurve } from './sample-curve.ts';

/**
 * Half a space and half a tooth of an internal wheel, from the middle of the space (+y axis) to the middle of the
 * tooth: root arc, fillet or shaper's trochoid, involute flank, tip arc; x, y pairs, both ends included, no point
 * twice.
 *
 * Throws Fail `bad-geometry` where the tip circle lies inside the base circle, where there is no involute, and as
 * `findInternalRoot` does; `pointed-tooth` where the flanks meet before the tip circle.
 */
export function traceInternalHalf(spec: GearSpec, chordError: number): number[] {
  const { base, tip, root } = findDiameters(spec);
  const z = spec.teeth;
  checkTip(spec);
  const rootForm = findInternalRoot(spec);
  const points = [0, root / 2];
  if (rootForm.cut === 'fillet') {
    pushFillet(points, rootForm, root / 2, findInternalSpaceHalfAngle(spec, rootForm.flankStart), chordError);
  } else {
    const start: [number, number] = [0, 0];
    rootForm.pointAt(0, start);
    pushArc(points, root / 2, 0, Math.atan2(start[0], start[1]), chordError);
    sampleCurve(rootForm.pointAt, 0, rootForm.end, chordError, points);
  }
  // Even steps of τ^1.5 on the roll angle τ give chords of even error, as on external flanks.
  const first = rollAt(rootForm.flankStart, base / 2) ** 1.5;
  const last = rollAt(tip / 2, base / 2) ** 1.5;
  const count = Math.ceil((2 / 3) * Math.sqrt(base / (16 * chordError)) * (first - last));
  for (let k = 1; k <= count; k++) {
    const roll = (first + ((last - first) * k) / count) ** (2 / 3);
    const radius = k === count ? tip / 2 : (base / 2) * Math.sqrt(1 + roll * roll);
    const angle = findInternalSpaceHalfAngle(spec, radius);
    points.push(radius * Math.sin(angle), radius * Math.cos(angle));
  }
  pushArc(points, tip / 2, findInternalSpaceHalfAngle(spec, tip / 2), Math.PI / z, chordError);
  return points;
}

function checkTip(spec: GearSpec): void {
  const { base, tip, reference } = findDiameters(spec);
  const addendumFor = (diameter: number): number =>
    Math.floor((spec.profileShift + (reference - diameter) / (2 * spec.module)) * 1000) / 1000;
  if (tip < base * (1 - 1e-12)) {
    const least = Math.ceil(base * 1000) / 1000;
    throw new Fail(
      'bad-geometry',
      'tipDiameter',
      `the tips reach to ${tip.toFixed(3)} mm, inside the base circle, where there is no involute`,
      `Give a tip diameter of at least ${least} mm: an addendum of at most ${addendumFor(least)}, or a larger profile shift.`,
      { tip, least, greatestAddendum: addendumFor(least) },
    );
  }
  if (findInternalSpaceHalfAngle(spec, tip / 2) >= Math.PI / spec.teeth) {
    const pointed = base / Math.cos(inverseInvolute(findBaseSpaceAngle(spec) - Math.PI / spec.teeth));
    const least = Math.ceil(pointed * 1000) / 1000;
    throw new Fail(
      'pointed-tooth',
      'tipDiameter',
      `the tooth comes to a point at ${pointed.toFixed(3)} mm, before its tip circle`,
      `Give a tip diameter of at least ${least} mm: an addendum of at most ${addendumFor(least)}.`,
      { tip, least, greatestAddendum: addendumFor(least) },
    );
  }
}

function rollAt(radius: number, baseRadius: number): number {
  return Math.sqrt(Math.max(0, (radius / baseRadius) ** 2 - 1));
}

/** Root arc and fillet, up to the flank's start, which stands `endAngle` off the space's axis. */
function pushFillet(
  points: number[],
  fillet: InternalFillet,
  rootRadius: number,
  endAngle: number,
  chordError: number,
): void {
  const { radius, centerRadius, centerAngle, flankStart } = fillet;
  // A root rounded from flank to flank has no arc left; a sharp one no fillet. Below a nanometer both are none.
  if (centerAngle * rootRadius > 1e-6) pushArc(points, rootRadius, 0, centerAngle, chordError);
  if (radius < 1e-6) return;
  const cx = centerRadius * Math.sin(centerAngle);
  const cy = centerRadius * Math.cos(centerAngle);
  const to = Math.atan2(flankStart * Math.sin(endAngle) - cx, flankStart * Math.cos(endAngle) - cy);
  const step = 2 * Math.acos(Math.max(0, 1 - chordError / radius));
  const count = Math.max(1, Math.ceil(Math.abs(to - centerAngle) / step));
  for (let k = 1; k <= count; k++) {
    const at = centerAngle + ((to - centerAngle) * k) / count;
    points.push(cx + radius * Math.sin(at), cy + radius * Math.cos(at));
  }
}
