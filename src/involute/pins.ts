import { findBaseSpaceAngle } from './base-space-angle.ts';
import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { inverseInvolute } from './involute-function.ts';

/**
 * Measurement over two pins (spur) or balls (helical) of diameter D in opposite spaces, mm, on an odd count the two
 * most nearly opposite; between them on an internal wheel; for a rack, from the datum line to the pin's far side.
 *
 * Even counts M = d_b/cos φ ± D, odd ones with cos(90°/z) before d_b, φ from `findPinAngle` (ISO 21771, dimension over
 * balls); a rack: D/(2 sin α) − w/tan α + D/2, w half the space at the datum line. Undefined where the flanks hold no
 * pin so small (on an internal wheel: so large). Whether it touches them between root and tip, `findPinRange` says.
 *
 * @example m 1, z 20, D 1.7: 22.2941
 */
export function measureOverPins(spec: GearSpec, pinDiameter: number): number | undefined {
  if (spec.kind === 'rack') {
    const halfSpace = (Math.PI * spec.module) / 4 + spec.thinning / 2;
    const sine = Math.sin(spec.pressureAngle);
    return pinDiameter / (2 * sine) - halfSpace / Math.tan(spec.pressureAngle) + pinDiameter / 2;
  }
  const phi = findPinAngle(spec, pinDiameter);
  if (phi === undefined) return undefined;
  const { base } = findDiameters(spec);
  const side = spec.kind === 'internal' ? -1 : 1;
  const factor = spec.teeth % 2 === 0 ? 1 : Math.cos(Math.PI / (2 * spec.teeth));
  return (factor * base) / Math.cos(phi) + side * pinDiameter;
}

/**
 * φ, rad: the transverse pressure angle at the center of a pin or ball that rests on both flanks of a space,
 * inv φ = ±(D/(z m_n cos α_n) − η_b), η_b half the space's angle at the base circle, lower sign internal (ISO 21771).
 * Undefined where that is below 0: the flanks hold no such pin. A rack has no such angle: a plain Error.
 */
export function findPinAngle(spec: GearSpec, pinDiameter: number): number | undefined {
  const side = spec.kind === 'internal' ? -1 : 1;
  const turned = pinDiameter / (spec.teeth * spec.module * Math.cos(spec.pressureAngle));
  const inv = side * (turned - findBaseSpaceAngle(spec));
  return inv >= 0 ? inverseInvolute(inv) : undefined;
}
