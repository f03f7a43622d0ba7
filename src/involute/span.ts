import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { involute } from './involute-function.ts';
import { findTrochoid } from './trochoid.ts';

/**
 * Span over k teeth (base tangent length), mm, k ≥ 1 (internal: over k spaces):
 * W_k = m_n cos α_n [π (k − ½) + z inv α_t] + 2 x m_n sin α_n − thinning · cos α_n (ISO 21771, span measurement).
 * Whether the jaws touch the flanks there is `listSpanTeeth`'s matter. A rack has none: a plain Error.
 *
 * @example m 3, z 24, x 0.4, k 4: 32.8266
 */
export function findSpan(spec: GearSpec, k: number): number {
  const { module: m, pressureAngle: a, teeth: z, profileShift: x } = spec;
  const { transversePressureAngle } = findDiameters(spec);
  const thicker = spec.kind === 'internal' ? 1 : -1;
  return (
    m * Math.cos(a) * (Math.PI * (k - 0.5) + z * involute(transversePressureAngle)) +
    2 * x * m * Math.sin(a) +
    thicker * spec.thinning * Math.cos(a)
  );
}

/**
 * The numbers of teeth whose span can be measured: both jaws touch the involute, at diameter
 * √(d_b² + (W cos β_b)²) above the root's end and below the tip, ascending. Face width is not asked for: a helical
 * wheel must also be at least W sin β_b wide. Internal wheels and racks: none.
 */
export function listSpanTeeth(spec: GearSpec): number[] {
  if (spec.kind !== 'external') return [];
  const { base, tip, baseHelixAngle } = findDiameters(spec);
  const { endRadius, meetsTip } = findTrochoid(spec);
  if (meetsTip) return [];
  const found: number[] = [];
  for (let k = 1; k <= spec.teeth / 2; k++) {
    const contact = Math.hypot(base, findSpan(spec, k) * Math.cos(baseHelixAngle));
    if (contact > tip) break;
    if (contact >= 2 * endRadius) found.push(k);
  }
  return found;
}

/**
 * The number of teeth whose span touches nearest the middle of the flank, at diameter d + 2 x m_n:
 * k = z K/π + ½ rounded, K = √((1 + 2x/z)² − cos² α)/cos α − inv α − (2x/z) tan α, for spur wheels (JIS and ISO
 * practice), found here for all wheels as the valid k nearest that diameter; undefined where no k is valid.
 */
export function findSpanTeeth(spec: GearSpec): number | undefined {
  const { base, reference, baseHelixAngle } = findDiameters(spec);
  const wanted = reference + 2 * spec.profileShift * spec.module;
  const offAt = (k: number): number =>
    Math.abs(Math.hypot(base, findSpan(spec, k) * Math.cos(baseHelixAngle)) - wanted);
  return listSpanTeeth(spec).reduce<number | undefined>(
    (best, k) => (best === undefined || offAt(k) < offAt(best) ? k : best),
    undefined,
  );
}
