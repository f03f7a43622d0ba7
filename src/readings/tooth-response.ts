import { jawHabits, mateShift, tipLandKept } from '../../gear-library/tooth-variation.ts';
import { inverseInvolute, involute } from '../involute/involute-function.ts';
import type { MeasuredLength } from './measured-length.ts';

/** A toothing of module 1 at one profile shift: what the readings respond to. Angles rad. */
export interface UnitTooth {
  readonly kind: 'external' | 'internal' | 'rack';
  /** z */
  readonly teeth: number;
  /** α_n */
  readonly pressureAngle: number;
  /** β */
  readonly helixAngle: number;
  /** h_a */
  readonly addendum: number;
  /** h_f, without the absolute part */
  readonly dedendum: number;
  /** mm that the root lies deeper whatever the module */
  readonly extraDedendum: number;
  /** x */
  readonly profileShift: number;
}

/**
 * What one reading should show on a wheel, and how that changes: expected reading = module · value + offset, with
 * slopes per unit of profile shift x, tip loss (in modules, on the radius), thinning (in modules of arc) and the
 * part of the tip land that the jaws meet. A reading that can be taken in several ways has one mode for each.
 */
export interface ResponseMode {
  readonly logWeight: number;
  readonly value: number;
  readonly offset: number;
  readonly byShift: number;
  readonly byTipLoss: number;
  readonly byThinning: number;
  readonly byTipLand: number;
  /** By helix angle, rad; filled by who turns the tooth, 0 on a spur wheel. */
  readonly byHelix: number;
  /** Further variance, in modules² */
  readonly variance: number;
}

/**
 * The response of a measured length on a toothing.
 *
 * @param module needed by over-pins alone, whose pin has an absolute size
 * @returns one mode for each way it may have been taken; empty where the reading makes no sense on this wheel
 */
export function respond(length: MeasuredLength, tooth: UnitTooth, module: number): readonly ResponseMode[] {
  switch (length.of) {
    case 'outside':
      return tooth.kind === 'rack' ? [] : respondOutside(length, tooth);
    case 'root':
      return tooth.kind === 'rack' ? [] : respondRoot(tooth);
    case 'tooth-depth':
      return [
        mode({
          value: tooth.addendum + tooth.dedendum,
          offset: tooth.extraDedendum,
          byTipLoss: -1,
        }),
      ];
    case 'span':
      return tooth.kind === 'rack' ? [] : respondSpan(length.teeth, tooth);
    case 'over-pins':
      return tooth.kind === 'rack' ? [] : respondPins(length.pin / module, tooth);
    case 'center-distance':
      return respondDistance(length, tooth);
    case 'rack-pitch':
      return tooth.kind === 'rack'
        ? [mode({ value: (length.pitches * Math.PI) / Math.cos(tooth.helixAngle) })]
        : [];
  }
}

function mode(given: Partial<ResponseMode>): ResponseMode {
  return {
    logWeight: 0,
    value: 0,
    offset: 0,
    byShift: 0,
    byTipLoss: 0,
    byThinning: 0,
    byTipLand: 0,
    byHelix: 0,
    variance: 0,
    ...given,
  };
}

/**
 * d_a on even counts. On odd ones flat jaws touch the corners of the tip lands: with τ = s_a/d_a (half the land's
 * angle), settled jaws read d_a/2 (1 + cos(180°/z − τ)), rocked ones d_a cos(90°/z − τ): least and greatest width
 * of the outline's convex hull. Inside jaws on an internal wheel reach across the two most nearly opposite tips.
 */
function respondOutside(length: MeasuredLength, tooth: UnitTooth): ResponseMode[] {
  const { teeth: z, profileShift: x, addendum: h } = tooth;
  const d = z / Math.cos(tooth.helixAngle);
  if (tooth.kind === 'internal') {
    const factor = z % 2 === 0 || length.jaws === 'true' ? 1 : Math.cos(Math.PI / (2 * z));
    return [mode({ value: factor * (d - 2 * (h - x)), byShift: 2 * factor, byTipLoss: 2 * factor })];
  }
  const tip = d + 2 * (h + x);
  if (z % 2 === 0) return [mode({ value: tip, byShift: 2, byTipLoss: -2 })];
  const transverse = Math.atan(Math.tan(tooth.pressureAngle) / Math.cos(tooth.helixAngle));
  const base = d * Math.cos(transverse);
  const tipAngle = Math.acos(Math.min(1, base / tip));
  const land =
    (Math.PI / 2 + 2 * x * Math.tan(tooth.pressureAngle)) / z + involute(transverse) - involute(tipAngle);
  const pointed = land <= 0;
  const tau = pointed ? 0 : land;
  const tauByTip = pointed ? 0 : -Math.tan(tipAngle) / tip;
  const tauByShift = pointed ? 0 : (2 * Math.tan(tooth.pressureAngle)) / z;
  const kept = tipLandKept.mean;
  const rows: ResponseMode[] = [];
  for (const { jaws, weight } of jawHabits) {
    if (length.jaws !== undefined && length.jaws !== jaws) continue;
    const turn = jaws === 'settled' ? Math.PI / z - kept * tau : Math.PI / (2 * z) - kept * tau;
    const factor = jaws === 'true' ? 1 : jaws === 'settled' ? (1 + Math.cos(turn)) / 2 : Math.cos(turn);
    const byTau = jaws === 'true' ? 0 : (jaws === 'settled' ? 0.5 : 1) * tip * Math.sin(turn);
    const byTip = factor + byTau * kept * tauByTip;
    rows.push(
      mode({
        logWeight: length.jaws === undefined ? Math.log(weight) : 0,
        value: tip * factor,
        byShift: 2 * byTip + byTau * kept * tauByShift,
        byTipLoss: -2 * byTip,
        byTipLand: byTau * tau,
      }),
    );
  }
  return rows;
}

/** d_f; on odd counts thin jaws in the two most nearly opposite gaps read d_f cos(90°/z) at the largest. */
function respondRoot(tooth: UnitTooth): ResponseMode[] {
  const { teeth: z, profileShift: x, dedendum: h } = tooth;
  const d = z / Math.cos(tooth.helixAngle);
  const factor = z % 2 === 0 ? 1 : Math.cos(Math.PI / (2 * z));
  const deeper = tooth.kind === 'internal' ? 1 : -1;
  return [
    mode({
      value: factor * (d + deeper * 2 * h + 2 * x),
      offset: deeper * 2 * factor * tooth.extraDedendum,
      byShift: 2 * factor,
    }),
  ];
}

/** W_k = m cos α [π (k − ½) + z inv α_t] + 2 x m sin α (ISO 21771, span measurement), thinning taken off. */
function respondSpan(k: number, tooth: UnitTooth): ResponseMode[] {
  const { teeth: z, profileShift: x, pressureAngle: a } = tooth;
  const transverse = Math.atan(Math.tan(a) / Math.cos(tooth.helixAngle));
  const thicker = tooth.kind === 'internal' ? 1 : -1;
  return [
    mode({
      value: Math.cos(a) * (Math.PI * (k - 0.5) + z * involute(transverse)) + 2 * x * Math.sin(a),
      byShift: 2 * Math.sin(a),
      byThinning: thicker * Math.cos(a),
    }),
  ];
}

/**
 * Over (internal: between) two pins or balls of diameter D: inv φ = inv α_t ± (D/(z m cos α_n) − η) with η half the
 * space's angle at the reference circle; the pin's center stands at d_b/cos φ (ISO 21771, dimension over balls).
 */
function respondPins(pin: number, tooth: UnitTooth): ResponseMode[] {
  const { teeth: z, profileShift: x, pressureAngle: a } = tooth;
  const side = tooth.kind === 'internal' ? -1 : 1;
  const transverse = Math.atan(Math.tan(a) / Math.cos(tooth.helixAngle));
  const base = (z / Math.cos(tooth.helixAngle)) * Math.cos(transverse);
  const inv =
    involute(transverse) + side * (pin / (z * Math.cos(a)) - Math.PI / (2 * z)) + (2 * x * Math.tan(a)) / z;
  if (!(inv > 1e-7)) return [];
  const phi = inverseInvolute(inv);
  const factor = z % 2 === 0 ? 1 : Math.cos(Math.PI / (2 * z));
  // d(d_b/cos φ)/d inv φ = d_b/sin φ
  const slope = (factor * base) / Math.sin(phi);
  return [
    mode({
      value: (factor * base) / Math.cos(phi) + side * pin,
      byShift: (slope * 2 * Math.tan(a)) / z,
      byThinning: (-side * slope) / z,
    }),
  ];
}

/**
 * Shaft distance to a mate of counted teeth, same pitch and angle: a = a_0 cos α_t/cos α_w with
 * inv α_w = inv α_t + 2 Σx tan α_n/Σz (ISO 21771); the mate's shift has a mode for each usual relation.
 */
function respondDistance(length: MeasuredLength, tooth: UnitTooth): ResponseMode[] {
  const mate = length.mate;
  if (!mate || tooth.kind === 'rack') return [];
  const a = tooth.pressureAngle;
  const { teeth: z, profileShift: x } = tooth;
  if (mate.kind === 'rack') return [mode({ value: z / (2 * Math.cos(tooth.helixAngle)) + x, byShift: 1 })];
  if (tooth.kind === 'internal' && mate.kind === 'internal') return [];
  // The outer wheel's shift opens an internal pair, the inner wheel's closes it.
  const own = mate.kind === 'internal' ? -1 : 1;
  const other = tooth.kind === 'internal' ? -1 : 1;
  const sum = own * z + other * mate.teeth;
  if (sum <= 0) return [];
  const nominal = sum / (2 * Math.cos(tooth.helixAngle));
  const transverse = Math.atan(Math.tan(a) / Math.cos(tooth.helixAngle));
  const rows: ResponseMode[] = [];
  for (const { relation, center, spread, weight } of mateShift) {
    const opposite = relation === 'opposite';
    const mateX = opposite ? -own * other * x + center : center;
    const inv = involute(transverse) + (2 * (own * x + other * mateX) * Math.tan(a)) / sum;
    if (!(inv > 1e-6)) continue;
    const working = inverseInvolute(inv);
    const slope = ((nominal * Math.cos(transverse)) / Math.sin(working)) * ((2 * Math.tan(a)) / sum);
    rows.push(
      mode({
        logWeight: Math.log(weight),
        value: (nominal * Math.cos(transverse)) / Math.cos(working),
        byShift: opposite ? 0 : own * slope,
        variance: (slope * spread) ** 2,
      }),
    );
  }
  return rows;
}
