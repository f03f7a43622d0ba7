import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { toothThicknessAt } from './tooth-thickness.ts';
import { findWorkingPair } from './working-pair.ts';

/** Room left between two wheels at a distance, mm. */
export interface PairClearances {
  /** Tip of the first wheel to root of the second, and tip of the second to root of the first */
  readonly tip: readonly [number, number];
  /** j_t: circumferential backlash at the working circle, transverse */
  readonly backlash: number;
  /** j_bn = j_t cos α_wt cos β_b: along the line of action, normal to the flanks */
  readonly normalBacklash: number;
}

/**
 * Tip clearance and backlash of an external, internal or rack pair, from thinning and distance: j_t is the working
 * circle's pitch less both teeth's thicknesses there (ISO 21771, backlash). Negative where the teeth overlap. With a
 * rack, moving off by Δa adds 2 Δa tan α_t to the thinnings.
 *
 * Throws Fail `bad-geometry` as `findWorkingPair` does.
 *
 * @example 20/40, m 1, 20°, 0.1 mm over the nominal 30 mm: j_t = 0.0736
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
  const [w1, w2] = pair.workingDiameters;
  const normal = Math.cos(w) * Math.cos(one.baseHelixAngle);
  if (second.kind === 'rack') {
    const lift = a - findWorkingPair(first, second).centerDistance;
    // A wheel's thinning is arc at its reference circle: by angle it is wider or narrower at the working circle.
    const thinned =
      (first.thinning * w1) / (one.reference * Math.cos(first.helixAngle)) +
      second.thinning / Math.cos(second.helixAngle);
    const backlash = thinned + 2 * lift * Math.tan(w);
    return {
      tip: [
        a + second.dedendum * second.module - one.tip / 2,
        a - second.addendum * second.module - one.root / 2,
      ],
      backlash,
      normalBacklash: backlash * normal,
    };
  }
  const two = findDiameters(second);
  const backlash = (Math.PI * w1) / first.teeth - toothThicknessAt(first, w1) - toothThicknessAt(second, w2);
  return {
    tip:
      second.kind === 'internal'
        ? [two.root / 2 - a - one.tip / 2, two.tip / 2 - a - one.root / 2]
        : [a - one.tip / 2 - two.root / 2, a - two.tip / 2 - one.root / 2],
    backlash,
    normalBacklash: backlash * normal,
  };
}
