import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { involute } from './involute-function.ts';

/**
 * Half the angle of a space at the base circle, rad: η_b = (π/2 − 2 x tan α_n + thinning/m_n)/z − inv α_t; internal
 * with + 2 x tan α_n and + inv α_t (from the tooth thickness of ISO 21771). At a radius r it is η_b + inv α_y,
 * internal η_b − inv α_y, cos α_y = r_b/r. Negative where the flanks of an external space would cross before they
 * reach the base circle, as they do on wheels of many teeth.
 *
 * @example z 20, m 1, 20°: 0.063636
 */
export function findBaseSpaceAngle(spec: GearSpec): number {
  const { transversePressureAngle } = findDiameters(spec);
  const side = spec.kind === 'internal' ? -1 : 1;
  const atReference =
    (Math.PI / 2 -
      side * 2 * spec.profileShift * Math.tan(spec.pressureAngle) +
      spec.thinning / spec.module) /
    spec.teeth;
  return atReference - side * involute(transversePressureAngle);
}
