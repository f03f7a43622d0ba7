import { Fail } from '../fail.ts';
import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { inverseInvolute, involute } from './involute-function.ts';
import { pushArc } from './push-arc.ts';
import { sampleCurve } from './sample-curve.ts';

/**
 * Half a space and half a tooth of an internal wheel, from the middle of the space (+y axis) to the middle of the
 * tooth: root arc, fillet, involute flank, tip arc; x, y pairs, both ends included.
 *
 * No rack cuts an internal wheel: its fillet is a circle tangent to flank and root circle, of `rootRadius` times the
 * module or as large as the space holds; with `cutterTeeth`, the trochoid of an unshifted shaper's sharp tip corner.
 * Throws Fail `bad-geometry` where the tip circle lies inside the base circle, where there is no involute.
 */
export function traceInternalHalf(spec: GearSpec, chordError: number): number[] {
  const { base, tip, root } = findDiameters(spec);
  const z = spec.teeth;
  if (tip < base * (1 - 1e-12)) {
    const least = Math.ceil(base * 1000) / 1000;
    throw new Fail(
      'bad-geometry',
      'tipDiameter',
      `the tips reach to ${tip.toFixed(3)} mm, inside the base circle`,
      `Give a tip diameter of at least ${least} mm, a smaller addendum or a larger profile shift.`,
      { tip, least },
    );
  }
  const halfAngleAt = (radius: number): number => findInternalSpaceHalfAngle(spec, radius);
  const points = [0, root / 2];
  const flankStart =
    spec.cutterTeeth === undefined
      ? pushFillet(points, spec, base / 2, root / 2, chordError)
      : pushShaperTrochoid(points, spec, spec.cutterTeeth, base / 2, root / 2, chordError);
  if (halfAngleAt(tip / 2) >= Math.PI / z) {
    throw new Fail(
      'pointed-tooth',
      'tipDiameter',
      'the tooth comes to a point before its tip circle',
      'Give a larger tip diameter or a smaller profile shift.',
      { tip },
    );
  }
  const from = rollAt(flankStart, base / 2);
  const to = rollAt(tip / 2, base / 2);
  const first = from ** 1.5;
  const last = to ** 1.5;
  const count = Math.max(1, Math.ceil((2 / 3) * Math.sqrt(base / (16 * chordError)) * (first - last)));
  for (let k = 1; k <= count; k++) {
    const roll = (first + ((last - first) * k) / count) ** (2 / 3);
    const radius = k === count ? tip / 2 : (base / 2) * Math.sqrt(1 + roll * roll);
    const angle = halfAngleAt(radius);
    points.push(radius * Math.sin(angle), radius * Math.cos(angle));
  }
  pushArc(points, tip / 2, halfAngleAt(tip / 2), Math.PI / z, chordError);
  return points;
}

/** Half the angle of an internal wheel's space at a radius: the half tooth of the external wheel that fills it. */
export function findInternalSpaceHalfAngle(spec: GearSpec, radius: number): number {
  const { base, transversePressureAngle } = findDiameters(spec);
  const { teeth: z, module: m } = spec;
  return (
    (Math.PI / 2 + 2 * spec.profileShift * Math.tan(spec.pressureAngle) + spec.thinning / m) / z +
    involute(transversePressureAngle) -
    involute(Math.acos(Math.min(1, base / (2 * radius))))
  );
}

function rollAt(radius: number, baseRadius: number): number {
  return Math.sqrt(Math.max(0, (radius / baseRadius) ** 2 - 1));
}

/**
 * The fillet circle's center lies on the flank's inner parallel, an involute of the same base circle turned by ρ/r_b,
 * at radius r_f − ρ; it touches the flank where the generating line is longer by ρ. Returns the flank's start.
 */
function pushFillet(
  points: number[],
  spec: GearSpec,
  baseRadius: number,
  rootRadius: number,
  chordError: number,
): number {
  const centerAngle = (radius: number): number =>
    findInternalSpaceHalfAngle(spec, rootRadius - radius) - radius / baseRadius;
  let radius = spec.rootRadius * spec.module;
  if (rootRadius - radius < baseRadius || centerAngle(radius) < 0) {
    let low = 0;
    let high = Math.min(radius, rootRadius - baseRadius);
    for (let round = 0; round < 60; round++) {
      const middle = (low + high) / 2;
      if (centerAngle(middle) > 0) low = middle;
      else high = middle;
    }
    radius = low;
  }
  const centerRadius = rootRadius - radius;
  const angle = Math.max(0, centerAngle(radius));
  const flankStart = Math.hypot(baseRadius, Math.sqrt(centerRadius ** 2 - baseRadius ** 2) + radius);
  if (angle > 1e-12) pushArc(points, rootRadius, 0, angle, chordError);
  const cx = centerRadius * Math.sin(angle);
  const cy = centerRadius * Math.cos(angle);
  const end = findInternalSpaceHalfAngle(spec, flankStart);
  const from = Math.atan2(cx, cy);
  const to = Math.atan2(flankStart * Math.sin(end) - cx, flankStart * Math.cos(end) - cy);
  const step = 2 * Math.acos(Math.max(0, 1 - chordError / Math.max(radius, chordError)));
  const count = Math.max(1, Math.ceil(Math.abs(to - from) / step));
  for (let k = 1; k <= count; k++) {
    const at = from + ((to - from) * k) / count;
    points.push(cx + radius * Math.sin(at), cy + radius * Math.cos(at));
  }
  return flankStart;
}

/** The trochoid of a shaper's tip corner, from the root circle to where the shaper's tip leaves the flank. */
function pushShaperTrochoid(
  points: number[],
  spec: GearSpec,
  cutterTeeth: number,
  baseRadius: number,
  rootRadius: number,
  chordError: number,
): number {
  const { transverseModule, transversePressureAngle: a } = findDiameters(spec);
  const z = spec.teeth;
  const inv = involute(a) + (2 * spec.profileShift * Math.tan(spec.pressureAngle)) / (z - cutterTeeth);
  if (!(cutterTeeth < z) || !(inv > 0)) {
    throw new Fail(
      'bad-geometry',
      'cutterTeeth',
      `a shaper of ${cutterTeeth} teeth can't cut this wheel`,
      'Give a smaller cutter, or leave cutterTeeth out.',
      { cutterTeeth },
    );
  }
  const working = inverseInvolute(inv);
  const distance = (((z - cutterTeeth) * transverseModule) / 2) * (Math.cos(a) / Math.cos(working));
  const cutterTip = rootRadius - distance;
  const cutterBase = ((cutterTeeth * transverseModule) / 2) * Math.cos(a);
  const halfTooth =
    (Math.PI / 2 + spec.thinning / spec.module) / cutterTeeth +
    involute(a) -
    involute(Math.acos(Math.min(1, cutterBase / cutterTip)));
  if (!(cutterTip > cutterBase) || !(halfTooth > 0)) {
    throw new Fail(
      'bad-geometry',
      'cutterTeeth',
      'the shaper that reaches this root has pointed teeth',
      'Give a larger cutter or a smaller dedendum.',
      { cutterTeeth },
    );
  }
  const reach = Math.sqrt(cutterTip ** 2 - cutterBase ** 2);
  const flankStart = Math.hypot(baseRadius, reach + distance * Math.sin(working));
  // The corner turns with the cutter by φ while the wheel turns by φ z_c/z; parameter: the corner's angle from +y.
  const pointAt = (corner: number, out: [number, number]): void => {
    const turn = ((corner - halfTooth) * cutterTeeth) / z;
    const x = cutterTip * Math.sin(corner);
    const y = distance + cutterTip * Math.cos(corner);
    out[0] = x * Math.cos(turn) - y * Math.sin(turn);
    out[1] = x * Math.sin(turn) + y * Math.cos(turn);
  };
  const start: [number, number] = [0, 0];
  pointAt(0, start);
  pushArc(points, rootRadius, 0, Math.atan2(start[0], start[1]), chordError);
  // On the line of action the cutter's tip stands at its own pressure angle from the base tangent.
  const end = Math.acos(cutterBase / cutterTip) - working;
  sampleCurve(pointAt, 0, end, chordError, points);
  return flankStart;
}
