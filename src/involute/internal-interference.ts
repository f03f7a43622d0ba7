import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { involute } from './involute-function.ts';
import { findWorkingPair } from './working-pair.ts';

/** One limit of an internal pair: how far it is met (above 0: free), rad. */
export interface InterferenceLimit {
  readonly margin: number;
  readonly isFree: boolean;
}

export interface InternalInterference {
  /** The wheel's tips meet the pinion's flank below its base circle */
  readonly involute: InterferenceLimit;
  /** Tips pass each other where they leave mesh */
  readonly trochoid: InterferenceLimit;
  /** The pinion can be moved in radially; else it goes in along its axis, and a shaper of that size trims the tips */
  readonly trimming: InterferenceLimit;
}

/**
 * The three interference limits of an external pinion in an internal wheel, as gear handbooks give them:
 *
 * - involute: tan α_a2 · z2 ≥ (z2 − z1) tan α_w, the wheel's tip must not pass the pinion's base tangent point;
 * - trochoid: θ1 z1/z2 + inv α_w − inv α_a2 ≥ θ2, with
 *   θ1 = acos[(r_a2² − r_a1² − a²)/(2 a r_a1)] + inv α_a1 − inv α_w, θ2 = acos[(a² + r_a2² − r_a1²)/(2 a r_a2)];
 * - trimming: θ1 + inv α_a1 − inv α_w ≥ (z2/z1)(θ2 + inv α_a2 − inv α_w), with
 *   sin² θ1 = [1 − (cos α_a1/cos α_a2)²]/[1 − (z1/z2)²], sin² θ2 = [(cos α_a2/cos α_a1)² − 1]/[(z2/z1)² − 1].
 *
 * Margins are the left side less the right, in rad of the wheel (trochoid, trimming) or as a difference of roll
 * angles of the pinion (involute).
 */
export function findInternalInterference(
  pinion: GearSpec,
  wheel: GearSpec,
  centerDistance?: number,
): InternalInterference {
  const pair = findWorkingPair(pinion, wheel, centerDistance);
  const one = findDiameters(pinion);
  const two = findDiameters(wheel);
  const z1 = pinion.teeth;
  const z2 = wheel.teeth;
  const a = pair.centerDistance;
  const w = pair.workingPressureAngle;
  const a1 = Math.acos(Math.min(1, one.base / one.tip));
  const a2 = Math.acos(Math.min(1, two.base / two.tip));
  const r1 = one.tip / 2;
  const r2 = two.tip / 2;
  const roll = (z2 * Math.tan(a2) - (z2 - z1) * Math.tan(w)) / z1;

  const trochoid = findTrochoidMargin();
  const sine1 = (1 - (Math.cos(a1) / Math.cos(a2)) ** 2) / (1 - (z1 / z2) ** 2);
  const sine2 = ((Math.cos(a2) / Math.cos(a1)) ** 2 - 1) / ((z2 / z1) ** 2 - 1);
  const trimming = findTrimming();
  const limit = (margin: number): InterferenceLimit => ({ margin, isFree: margin >= 0 });
  return { involute: limit(roll), trochoid: limit(trochoid), trimming: limit(trimming) };

  function findTrochoidMargin(): number {
    const crossing1 = (r2 * r2 - r1 * r1 - a * a) / (2 * a * r1);
    const crossing2 = (a * a + r2 * r2 - r1 * r1) / (2 * a * r2);
    // Tip circles that do not cross: apart, the tips never meet.
    if (crossing1 >= 1 || crossing2 >= 1) return Number.POSITIVE_INFINITY;
    const pinionTurn = acosWithin(crossing1) + involute(a1) - involute(w);
    return (pinionTurn * z1) / z2 + involute(w) - involute(a2) - acosWithin(crossing2);
  }

  function findTrimming(): number {
    // No root: the pinion's tips never pass the wheel's. No sine: they pass them all the way in.
    if (sine1 <= 0 || sine2 <= 0) return Number.POSITIVE_INFINITY;
    if (sine1 > 1 || sine2 > 1) return Number.NEGATIVE_INFINITY;
    const pinionTurn = Math.asin(Math.sqrt(sine1)) + involute(a1) - involute(w);
    const wheelTurn = Math.asin(Math.sqrt(sine2)) + involute(a2) - involute(w);
    return (z1 / z2) * pinionTurn - wheelTurn;
  }
}

function acosWithin(cosine: number): number {
  return Math.acos(Math.max(-1, Math.min(1, cosine)));
}
