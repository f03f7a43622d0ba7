import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { inverseInvolute, involute } from './involute-function.ts';
import { findTrochoid } from './trochoid.ts';

/** Whether the generating rack's corner cuts away involute of an external wheel. */
export function isUndercut(spec: GearSpec): boolean {
  return spec.kind === 'external' && findTrochoid(spec).isUndercut;
}

/**
 * The tooth count below which a rack undercuts a wheel without shift: 2 h cos β/sin² α_t, not rounded (ISO 21771).
 *
 * @param depth height of the rack's straight flank under the datum line, modules: the addendum of the mate's rack, 1
 * @example findLeastTeeth(1, 20°, 0) = 17.097
 */
export function findLeastTeeth(depth: number, pressureAngle: number, helixAngle: number): number {
  const transverse = Math.atan(Math.tan(pressureAngle) / Math.cos(helixAngle));
  return (2 * depth * Math.cos(helixAngle)) / Math.sin(transverse) ** 2;
}

/**
 * The profile shift at which undercut just ends, x = h − z sin² α_t/(2 cos β); negative where there is room.
 *
 * @example z 12, 20°: 0.298
 */
export function findUndercutShift(
  teeth: number,
  depth: number,
  pressureAngle: number,
  helixAngle: number,
): number {
  return depth - (depth * teeth) / findLeastTeeth(depth, pressureAngle, helixAngle);
}

/** The diameter at which an external wheel's tooth comes to a point, mm: s_y = 0; at least the base circle. */
export function findPointedDiameter(spec: GearSpec): number {
  const { base, transversePressureAngle } = findDiameters(spec);
  const half =
    (Math.PI / 2 + 2 * spec.profileShift * Math.tan(spec.pressureAngle) - spec.thinning / spec.module) /
    spec.teeth;
  // So thin a tooth has nothing left at the base circle either.
  return base / Math.cos(inverseInvolute(Math.max(0, half + involute(transversePressureAngle))));
}
