import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { referenceToothThickness } from './tooth-thickness.ts';

/**
 * Chordal tooth thickness at the reference circle and its height below the tip, mm, normal section. External:
 * with ψ = s_n/(z_v m_n), z_v = z/cos³ β: s̄ = z_v m_n sin ψ, h̄ = z_v m_n (1 − cos ψ)/2 + h (ISO 21771; virtual wheel
 * as gear handbooks use it). A rack: the thickness itself.
 *
 * @example m 10, z 12, x 0.3: 17.8256 at 13.6657
 */
export function findChordalThickness(spec: GearSpec): {
  readonly thickness: number;
  readonly height: number;
} {
  const thickness = referenceToothThickness(spec);
  if (spec.kind === 'rack') return { thickness, height: spec.addendum * spec.module };
  const { reference, tip } = findDiameters(spec);
  const virtual = (spec.teeth * spec.module) / Math.cos(spec.helixAngle) ** 3;
  const half = thickness / virtual;
  const side = spec.kind === 'internal' ? -1 : 1;
  return {
    thickness: virtual * Math.sin(half),
    height: (side * (tip - reference)) / 2 + (side * virtual * (1 - Math.cos(half))) / 2,
  };
}
