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
  /** y = (a − a_0)/m_n */
  readonly distanceModification: number;
}

/**
 * A pair at the distance where it runs without backlash (thinning apart), or at a given distance. The second wheel
 * may be internal or a rack, the first is external.
 *
 * inv α_wt = inv α_t + 2 (x2 ± x1) tan α_n/(z2 ± z1), a = a_0 cos α_t/cos α_wt (ISO 21771; upper signs external,
 * internal with our sign of x). Throws Fail `bad-geometry` where no such distance exists.
 *
 * @example 12/24, m 3, x 0.6/0.36: α_w 26.0886°, a 56.4999
 */
export function findWorkingPair(first: GearSpec, second: GearSpec, centerDistance?: number): WorkingPair {
  const one = findDiameters(first);
  const a = first.pressureAngle;
  if (second.kind === 'rack') {
    const distance = centerDistance ?? one.reference / 2 + first.profileShift * first.module;
    return {
      centerDistance: distance,
      workingPressureAngle: one.transversePressureAngle,
      workingDiameters: [one.reference, Number.POSITIVE_INFINITY],
      distanceModification: (distance - one.reference / 2) / first.module,
    };
  }
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
  const nominal = (teeth * one.transverseModule) / 2;
  let working: number;
  if (centerDistance === undefined) {
    const shift = internal
      ? second.profileShift - first.profileShift
      : second.profileShift + first.profileShift;
    const inv = involute(one.transversePressureAngle) + (2 * shift * Math.tan(a)) / teeth;
    if (!(inv > 0)) throw noDistance('profileShift', 'the shifts leave no distance at which the teeth mesh');
    working = inverseInvolute(inv);
  } else {
    const cosine = (nominal * Math.cos(one.transversePressureAngle)) / centerDistance;
    if (!(cosine > 0 && cosine <= 1))
      throw noDistance('centerDistance', 'at that distance the base circles overlap');
    working = Math.acos(cosine);
  }
  const distance = centerDistance ?? (nominal * Math.cos(one.transversePressureAngle)) / Math.cos(working);
  return {
    centerDistance: distance,
    workingPressureAngle: working,
    workingDiameters: [(2 * distance * first.teeth) / teeth, (2 * distance * second.teeth) / teeth],
    distanceModification: (distance - nominal) / first.module,
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
