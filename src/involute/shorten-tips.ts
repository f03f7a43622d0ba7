import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { findWorkingPair } from './working-pair.ts';

/**
 * The tip diameters, mm, to which JIS practice shortens an external pair of shifted wheels so that the rack's
 * clearance stays: h_a1 = (h_a + y − x2) m, h_a2 = (h_a + y − x1) m (JIS B 1701 practice as gear handbooks give it).
 * Put them in `tipDiameter`; ISO 21771 does not shorten unless told. No wheel but external ones: a plain Error.
 *
 * @example 12/24, m 3, x 0.6/0.36: 44.840 and 79.400
 */
export function shortenTips(first: GearSpec, second: GearSpec): readonly [number, number] {
  if (second.kind !== 'external') throw new Error(`no tips to shorten with a wheel of kind ${second.kind}`);
  const { distanceModification: y } = findWorkingPair(first, second);
  const tip = (spec: GearSpec, other: GearSpec): number =>
    findDiameters(spec).reference + 2 * spec.module * (spec.addendum + y - other.profileShift);
  return [tip(first, second), tip(second, first)];
}
