import { Fail } from '../fail.ts';
import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { inverseInvolute, involute } from './involute-function.ts';

/** Two wheels at a distance. Lengths mm, angles rad. */
export interface WorkingPair {
  /** a; with a rack, from the axis to the datum line */
  readonly centerDistance: number;
  /** α_wt */
  readonly workingPressureAngle: number;
  /** d_w of each; of a rack Infinity */
  readonly workingDiameters: readonly [number, number];
  /** y = (a − a_0)/m_n, a_0 from the reference circles; m_n the first wheel's */
  readonly distanceModification: number;
}

/**
 * A pair at the distance where the unthinned teeth run without backlash, or at a given distance. The first wheel is
 * external; the second may be internal or a rack (of a rack its own profile shift does not count).
 *
 * With ψ_b half the angle of a tooth (internal: of a space) between its involutes at the base circle, the working
 * circles' arcs fill the pitch when inv α_wt = (z2 ψ_b2 ± (z1 ψ_b1 − π))/(z2 ± z1), external +, internal − and
 * without π; for equal module and angle this is inv α_t + 2 (x2 ± x1) tan α_n/(z2 ± z1) (ISO 21771, with our sign of
 * an internal x). a = (r_b2 ± r_b1)/cos α_wt. Only base pitch and base thickness enter, so labels may differ where
 * the teeth do not.
 *
 * Throws Fail `bad-geometry` where no such distance exists, or where base pitches or helices do not go together.
 *
 * @example 12/24, m 3, x 0.6/0.36: α_w 26.0886°, a 56.4999
 */
export function findWorkingPair(first: GearSpec, second: GearSpec, centerDistance?: number): WorkingPair {
  if (first.kind !== 'external') throw new Error(`the first wheel of a pair is external, not ${first.kind}`);
  checkPitchAndHelix(first, second);
  const one = findDiameters(first);
  if (second.kind === 'rack') return findRackPair(first, second, centerDistance);
  const two = findDiameters(second);
  const internal = second.kind === 'internal';
  const teeth = internal ? second.teeth - first.teeth : second.teeth + first.teeth;
  if (teeth <= 0) {
    throw new Fail(
      'bad-geometry',
      'teeth',
      'an internal wheel needs more teeth than its pinion',
      'Give the internal wheel more teeth, or the pinion fewer.',
      { teeth: [first.teeth, second.teeth] },
    );
  }
  const nominal = (internal ? two.reference - one.reference : two.reference + one.reference) / 2;
  const baseDistance = (internal ? two.base - one.base : two.base + one.base) / 2;
  let working: number;
  if (centerDistance === undefined) {
    const tooth1 = first.teeth * findHalfAngleAtBase(first);
    const tooth2 = second.teeth * findHalfAngleAtBase(second);
    const inv = (internal ? tooth2 - tooth1 : tooth2 + tooth1 - Math.PI) / teeth;
    // Rounding leaves a hair below 0 where the working circles are the base circles.
    if (!(inv > -1e-12))
      throw noDistance('profileShift', 'the shifts leave no distance at which the teeth mesh');
    working = inverseInvolute(Math.max(0, inv));
  } else {
    const cosine = baseDistance / centerDistance;
    if (!(cosine > 0 && cosine <= 1))
      throw noDistance('centerDistance', 'at that distance the teeth have no common line of action');
    working = Math.acos(cosine);
  }
  const distance = centerDistance ?? baseDistance / Math.cos(working);
  return {
    centerDistance: distance,
    workingPressureAngle: working,
    workingDiameters: [(2 * distance * first.teeth) / teeth, (2 * distance * second.teeth) / teeth],
    distanceModification: (distance - nominal) / first.module,
  };
}

/** Base pitches within this are the same teeth (a hundredth of a tooth's error over ten pitches). */
const samePitch = 1e-3;
/** Base helix angles within this, rad, run together: 0.01 mm over a face of 10 mm. */
const sameHelix = 1e-3;

function checkPitchAndHelix(first: GearSpec, second: GearSpec): void {
  const pitchOf = (spec: GearSpec): number => spec.module * Math.cos(spec.pressureAngle);
  if (!(Math.abs(pitchOf(first) / pitchOf(second) - 1) <= samePitch)) {
    throw new Fail(
      'bad-geometry',
      'module',
      'the two wheels have different base pitches, so their teeth do not run together',
      'Give both the same module and pressure angle.',
      { basePitches: [Math.PI * pitchOf(first), Math.PI * pitchOf(second)] },
    );
  }
  const helixOf = (spec: GearSpec): number =>
    Math.asin(Math.sin(spec.helixAngle) * Math.cos(spec.pressureAngle));
  const side = second.kind === 'internal' ? 1 : -1;
  if (!(Math.abs(helixOf(first) - side * helixOf(second)) <= sameHelix)) {
    throw new Fail(
      'bad-geometry',
      'helixAngle',
      'the two helices do not run together on parallel axes',
      'Give both the same helix angle: of opposite hands, or of one hand with an internal wheel.',
      { helixAngles: [first.helixAngle, second.helixAngle] },
    );
  }
}

/** ψ_b, thinning left out: half a tooth's angle between its involutes at the base circle; internal: half a space's. */
function findHalfAngleAtBase(spec: GearSpec): number {
  const { transversePressureAngle } = findDiameters(spec);
  const shifted = 2 * spec.profileShift * Math.tan(spec.pressureAngle);
  return (Math.PI / 2 + shifted) / spec.teeth + involute(transversePressureAngle);
}

/**
 * With a rack the working angle is the rack's own. Its tooth is p_t/2 − 2 e tan α_t thick at height e over its datum
 * line, so it fills the wheel's space on the working circle at e = (s_w1 − p_t/2)/(2 tan α_t); like labels: e = x m.
 */
function findRackPair(wheel: GearSpec, rack: GearSpec, centerDistance?: number): WorkingPair {
  const { base, reference } = findDiameters(wheel);
  const working = Math.atan(Math.tan(rack.pressureAngle) / Math.cos(rack.helixAngle));
  const diameter = base / Math.cos(working);
  const pitch = (Math.PI * rack.module) / Math.cos(rack.helixAngle);
  const thickness = diameter * (findHalfAngleAtBase(wheel) - involute(working));
  const lift = (thickness - pitch / 2) / (2 * Math.tan(working));
  const distance = centerDistance ?? diameter / 2 + lift;
  return {
    centerDistance: distance,
    workingPressureAngle: working,
    workingDiameters: [diameter, Number.POSITIVE_INFINITY],
    distanceModification: (distance - reference / 2) / wheel.module,
  };
}

function noDistance(field: string, message: string): Fail {
  return new Fail(
    'bad-geometry',
    field,
    message,
    'Use shifts of a smaller difference, or a larger distance.',
  );
}
