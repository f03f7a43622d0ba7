import type { GearSpec } from './gear-spec.ts';

/** Normal base pitch p_bn = π m_n cos α_n, mm (ISO 21771): what two wheels must share to run together. */
export function findBasePitch(spec: GearSpec): number {
  return Math.PI * spec.module * Math.cos(spec.pressureAngle);
}
