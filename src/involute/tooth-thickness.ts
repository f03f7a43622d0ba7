import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { involute } from './involute-function.ts';

/**
 * Arc thickness of a tooth at the reference circle in the normal plane, mm, thinning taken off:
 * s_n = m_n (π/2 + 2 x tan α_n) − thinning; internal m_n (π/2 − 2 x tan α_n) − thinning (ISO 21771, tooth thickness).
 *
 * @example m 10, z 12, 20°, x 0.3: 17.8918
 */
export function referenceToothThickness(spec: GearSpec): number {
  const shifted = 2 * spec.profileShift * Math.tan(spec.pressureAngle);
  const sign = spec.kind === 'internal' ? -1 : 1;
  return spec.module * (Math.PI / 2 + sign * shifted) - spec.thinning;
}

/**
 * Transverse arc thickness of a tooth at a diameter, mm: s_y = d_y (s_t/d + inv α_t − inv α_y), for internal
 * wheels s_y = d_y (s_t/d − inv α_t + inv α_y) (ISO 21771). Negative beyond the diameter where the tooth comes to a
 * point. A diameter below the base circle has no involute: a plain Error.
 */
export function toothThicknessAt(spec: GearSpec, diameter: number): number {
  const { reference, base, transversePressureAngle } = findDiameters(spec);
  const ratio = base / diameter;
  if (!(ratio <= 1 + 1e-12) || !(ratio > 0))
    throw new Error(`no involute at diameter ${diameter}, base ${base}`);
  const angle = Math.acos(Math.min(1, ratio));
  const thickness = referenceToothThickness(spec) / Math.cos(spec.helixAngle);
  const narrowing = involute(transversePressureAngle) - involute(angle);
  return diameter * (thickness / reference + (spec.kind === 'internal' ? -narrowing : narrowing));
}

/** Transverse arc of the tip land, mm; 0 or below where the tooth comes to a point at or before the tip circle. */
export function findTipLand(spec: GearSpec): number {
  return toothThicknessAt(spec, findDiameters(spec).tip);
}
