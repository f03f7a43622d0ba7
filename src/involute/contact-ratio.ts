import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { findGeneratingRack } from './generating-rack.ts';
import { findInternalRoot } from './internal-root.ts';
import { findTrochoid } from './trochoid.ts';
import { findWorkingPair } from './working-pair.ts';

/** How many pairs of teeth share the load on average, and where contact runs. */
export interface PathOfContact {
  /** ε_α */
  readonly transverse: number;
  /** ε_β = b sin β/(π m_n); 0 without a face width */
  readonly overlap: number;
  readonly total: number;
  /** Length of the path of contact in the transverse section, mm; 0 where the teeth do not meet */
  readonly length: number;
  /**
   * ε_α from the tip circles and base circles alone, as handbooks reckon it. Where it is above `transverse` a tip
   * reaches past the end of its mate's involute, into undercut or a fillet, and may foul the root: rolling the
   * outlines tells. Up to 0.0001 is the rounding of the standard 0.38 fillet.
   */
  readonly betweenTips: number;
}

/**
 * Contact ratio of a pair from its tip circles and the ends of its involutes, undercut and fillets included.
 *
 * Along the line of action from the first wheel's base tangent point, contact runs from where the second wheel's tip
 * (or the first's involute) begins to where the first's tip (or the second's involute) ends; a point at ρ1 there is
 * at a sin α_wt − ρ1 on an external mate's involute, ρ1 + a sin α_wt on an internal one's (ISO 21771, path of
 * contact). Without the involute's ends this is √(r_a1² − r_b1²) ± √(r_a2² − r_b2²) ∓ a sin α_wt. The ends are those
 * of the outline: of an internal wheel without `cutterTeeth`, its stand-in fillet. Tip circles are taken as the spec
 * says, also where the tooth would be pointed before.
 *
 * Throws Fail as `findWorkingPair`, the generating rack and `findInternalRoot` do.
 *
 * @example 20/60, m 8, 20°: path 39.458 mm
 */
export function findContactRatio(
  first: GearSpec,
  second: GearSpec,
  options: { readonly centerDistance?: number; readonly faceWidth?: number } = {},
): PathOfContact {
  const pair = findWorkingPair(first, second, options.centerDistance);
  const one = findDiameters(first);
  const working = pair.workingPressureAngle;
  const pitchPoint = (pair.workingDiameters[0] / 2) * Math.sin(working);

  // 1. Each wheel's own limits, as ρ1: tips, then the involutes' ends.
  const tip1 = lengthAt(one.tip, one.base);
  const form1 = lengthAt(2 * findTrochoid(first).endRadius, one.base);
  let tip2: number;
  let form2: number;
  let lastTangent = Number.POSITIVE_INFINITY;
  if (second.kind === 'rack') {
    const { cornerV, cornerRadius } = findGeneratingRack(second);
    // A rack's flank ends where its root corner begins; heights over the working line, towards the wheel.
    const datum = pair.centerDistance - pair.workingDiameters[0] / 2;
    const rootHeight = cornerV - cornerRadius * Math.sin(second.pressureAngle) - datum;
    tip2 = pitchPoint - (second.addendum * second.module - datum) / Math.sin(working);
    form2 = pitchPoint - rootHeight / Math.sin(working);
  } else {
    const two = findDiameters(second);
    const between = pair.centerDistance * Math.sin(working);
    if (second.kind === 'internal') {
      tip2 = lengthAt(two.tip, two.base) - between;
      form2 = lengthAt(2 * findInternalRoot(second).flankStart, two.base) - between;
    } else {
      lastTangent = between;
      tip2 = between - lengthAt(two.tip, two.base);
      form2 = between - lengthAt(2 * findTrochoid(second).endRadius, two.base);
    }
  }

  // 2. What is left between them.
  const basePitch = Math.PI * one.transverseModule * Math.cos(one.transversePressureAngle);
  const betweenTips = Math.max(0, Math.min(tip1, lastTangent) - Math.max(tip2, 0)) / basePitch;
  const length = Math.max(0, Math.min(tip1, form2) - Math.max(tip2, form1));
  const transverse = length / basePitch;
  const overlap =
    ((options.faceWidth ?? 0) * Math.abs(Math.sin(first.helixAngle))) / (Math.PI * first.module);
  return { transverse, overlap, total: transverse + overlap, length, betweenTips };
}

/** ρ: length of the generating line at a diameter; 0 within the base circle. */
function lengthAt(diameter: number, baseDiameter: number): number {
  return Math.sqrt(Math.max(0, diameter ** 2 - baseDiameter ** 2)) / 2;
}
