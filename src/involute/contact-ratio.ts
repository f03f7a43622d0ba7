import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { findWorkingPair } from './working-pair.ts';

/** How many pairs of teeth share the load on average, and where contact runs. */
export interface PathOfContact {
  /** ε_α */
  readonly transverse: number;
  /** ε_β = b sin β/(π m_n); 0 without a face width */
  readonly overlap: number;
  readonly total: number;
  /** Length of the path of contact in the transverse section, mm */
  readonly length: number;
}

/**
 * Contact ratio from the real tip circles, cut off where the involute ends at the base circle:
 * g_α = √(r_a1² − r_b1²) + √(r_a2² − r_b2²) − a sin α_wt, internal with the wheel's terms reversed, rack with
 * (h_a m_n − …)/sin α_t (ISO 21771, path of contact). Root undercut is not looked at here.
 *
 * @example 20/60, m 8, 20°: path 39.458 mm
 */
export function findContactRatio(
  first: GearSpec,
  second: GearSpec,
  options: { readonly centerDistance?: number; readonly faceWidth?: number } = {},
): PathOfContact {
  const pair = findWorkingPair(first, second, options.centerDistance);
  const one = findDiameters(first);
  const working = pair.workingPressureAngle;
  const reach1 = Math.sqrt(Math.max(0, one.tip ** 2 - one.base ** 2)) / 2;
  const pitchPoint = (pair.workingDiameters[0] / 2) * Math.sin(working);
  const recess = reach1 - pitchPoint;
  let approach: number;
  if (second.kind === 'rack') {
    const above = second.addendum * second.module - (pair.centerDistance - one.reference / 2);
    approach = Math.min(above / Math.sin(working), pitchPoint);
  } else {
    const two = findDiameters(second);
    const reach2 = Math.sqrt(Math.max(0, two.tip ** 2 - two.base ** 2)) / 2;
    const far = (pair.workingDiameters[1] / 2) * Math.sin(working);
    // Contact can't start before the first wheel's base tangent point.
    approach = Math.min(second.kind === 'internal' ? far - reach2 : reach2 - far, pitchPoint);
  }
  const length = recess + approach;
  const basePitch = Math.PI * one.transverseModule * Math.cos(one.transversePressureAngle);
  const transverse = length / basePitch;
  const overlap =
    ((options.faceWidth ?? 0) * Math.abs(Math.sin(first.helixAngle))) / (Math.PI * first.module);
  return { transverse, overlap, total: transverse + overlap, length };
}
