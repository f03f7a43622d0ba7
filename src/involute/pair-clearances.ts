import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { involute } from './involute-function.ts';
import { findWorkingPair } from './working-pair.ts';

/** Room left between two wheels at a distance, mm. */
export interface PairClearances {
  /** Tip of the first wheel to root of the second, and tip of the second to root of the first */
  readonly tip: readonly [number, number];
  /** j_t: circumferential backlash at the working circle, transverse */
  readonly backlash: number;
  /** j_bn = j_t cos α_wt cos β_b: along the line of action */
  readonly normalBacklash: number;
}

/**
 * Tip clearance and backlash of an external or internal pair, from thinning and distance: j_t is the working circle's
 * pitch less both teeth's thicknesses there (ISO 21771, backlash). Negative where the teeth overlap.
 */
export function findPairClearances(
  first: GearSpec,
  second: GearSpec,
  centerDistance?: number,
): PairClearances {
  const pair = findWorkingPair(first, second, centerDistance);
  const one = findDiameters(first);
  const a = pair.centerDistance;
  const w = pair.workingPressureAngle;
  const cosBase = Math.cos(one.baseHelixAngle);
  if (second.kind === 'rack') {
    const lift = a - one.reference / 2 - first.profileShift * first.module;
    const thinned = (first.thinning + second.thinning) / Math.cos(first.helixAngle);
    const backlash = thinned + 2 * lift * Math.tan(w);
    return {
      tip: [
        a + second.dedendum * second.module - one.tip / 2,
        a - second.addendum * second.module - one.root / 2,
      ],
      backlash,
      normalBacklash: backlash * Math.cos(w) * cosBase,
    };
  }
  const two = findDiameters(second);
  const internal = second.kind === 'internal';
  const [w1, w2] = pair.workingDiameters;
  const backlash = (Math.PI * w1) / first.teeth - thicknessAt(first, w1, w) - thicknessAt(second, w2, w);
  return {
    tip: internal
      ? [two.root / 2 - a - one.tip / 2, two.tip / 2 - a - one.root / 2]
      : [a - one.tip / 2 - two.root / 2, a - two.tip / 2 - one.root / 2],
    backlash,
    normalBacklash: backlash * Math.cos(w) * cosBase,
  };
}

/** Transverse arc thickness at the working circle, whose pressure angle is α_wt on both wheels. */
function thicknessAt(spec: GearSpec, diameter: number, working: number): number {
  const { transversePressureAngle } = findDiameters(spec);
  const side = spec.kind === 'internal' ? -1 : 1;
  const atReference =
    (Math.PI / 2 +
      side * 2 * spec.profileShift * Math.tan(spec.pressureAngle) -
      spec.thinning / spec.module) /
    spec.teeth;
  return diameter * (atReference + side * (involute(transversePressureAngle) - involute(working)));
}

/** Change of shaft distance for a change of circumferential backlash: 1/(2 tan α), to first order. */
export function findDistancePerBacklash(pressureAngle: number): number {
  return 1 / (2 * Math.tan(pressureAngle));
}
