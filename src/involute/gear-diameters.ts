import type { GearSpec } from './gear-spec.ts';

export interface GearDiameters {
  /** d, mm */
  readonly reference: number;
  /** d_b, mm */
  readonly base: number;
  /** d_a, mm */
  readonly tip: number;
  /** d_f, mm */
  readonly root: number;
  /** m_t, mm */
  readonly transverseModule: number;
  /** α_t, rad */
  readonly transversePressureAngle: number;
  /** β_b, rad */
  readonly baseHelixAngle: number;
}

/**
 * The circles of a wheel (mm) and its transverse system: m_t = m_n/cos β, tan α_t = tan α_n/cos β, d = z m_t,
 * d_b = d cos α_t, sin β_b = sin β cos α_n, d_a = d + 2 m_n (h_a + x), d_f = d − 2 m_n (h_f − x); internal:
 * d_a = d − 2 m_n (h_a − x), d_f = d + 2 m_n (h_f + x) (ISO 21771, with the sign that gear-spec states).
 *
 * Tip and root are what the spec says even where the tooth would come to a point before. A rack has no circles:
 * a plain Error.
 *
 * @example z 12, m 3, x 0.6, 20°: d 36, d_b 33.829, d_a 45.6, d_f 32.1
 */
export function findDiameters(spec: GearSpec): GearDiameters {
  if (spec.kind === 'rack') throw new Error('a rack has no diameters');
  const { module: m, teeth: z, profileShift: x } = spec;
  const transverseModule = m / Math.cos(spec.helixAngle);
  const transversePressureAngle = Math.atan(Math.tan(spec.pressureAngle) / Math.cos(spec.helixAngle));
  const reference = z * transverseModule;
  const internal = spec.kind === 'internal';
  return {
    reference,
    base: reference * Math.cos(transversePressureAngle),
    tip: spec.tipDiameter ?? reference + 2 * m * (internal ? x - spec.addendum : x + spec.addendum),
    root: reference + 2 * m * (internal ? x + spec.dedendum : x - spec.dedendum),
    transverseModule,
    transversePressureAngle,
    baseHelixAngle: Math.asin(Math.sin(spec.helixAngle) * Math.cos(spec.pressureAngle)),
  };
}
