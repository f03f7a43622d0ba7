import type { Weigher } from '../evidence/weigher.ts';
import type { HypothesisSpace, Response, ToothHypothesis } from './hypothesis-space.ts';
import type { MeasuredLength } from './measured-length.ts';
import type { PitchHypothesis } from './pitch-prior.ts';
import type { NormalPart } from './tooth-prior.ts';

/** One linear hypothesis: everything discrete is chosen, the rest are independent standard normals. */
export interface LinearPart {
  readonly pitch: PitchHypothesis;
  readonly tooth: ToothHypothesis;
  readonly tipLoss: NormalPart;
  readonly modes: readonly Response[];
  /** log prior weight */
  readonly prior: number;
}

/** The standard normals that the readings share, in the order of their loadings. */
export const sharedCauses = {
  shift: 0,
  tipLoss: 1,
  thinning: 2,
  tipLand: 3,
  scale: 4,
  helix: 5,
  zero: 6,
} as const;
export const causeCount = 7;

/** How one reading depends on the shared causes, mm for one standard deviation of each, from `at` on. */
export function setLoadings(
  loadings: Float64Array,
  at: number,
  space: HypothesisSpace,
  part: LinearPart,
  mode: Response,
  zeroDeviation: number,
): void {
  const m = part.pitch.module;
  const cell = part.pitch.spread;
  const { scaleSpread } = space;
  loadings[at] = m * part.tooth.shift.spread * mode.byShift;
  loadings[at + 1] = m * part.tipLoss.spread * mode.byTipLoss;
  loadings[at + 2] = m * space.thinning.spread * mode.byThinning;
  loadings[at + 3] = m * space.tipLandSpread * mode.byTipLand;
  loadings[at + 4] =
    m * mode.value * (cell === 0 ? scaleSpread : Math.sqrt(cell * cell + scaleSpread * scaleSpread));
  loadings[at + 5] = m * part.tooth.helixSpread * mode.byHelix;
  loadings[at + 6] = zeroDeviation;
}

/** What the reading should show on average over the shared causes, mm. */
export function findExpected(
  space: HypothesisSpace,
  part: LinearPart,
  mode: Response,
  offset: number,
): number {
  const value = mode.value + part.tipLoss.mean * mode.byTipLoss + space.thinning.mean * mode.byThinning;
  return part.pitch.module * value + mode.offset + offset;
}

/**
 * Fills the weigher's residual and the diagonal of its covariance for a part, and `loadings` (n × causeCount).
 * `fillCovariance` does the rest, where the diagonal does not rule the part out already.
 */
export function fillResiduals(
  weigher: Weigher,
  loadings: Float64Array,
  space: HypothesisSpace,
  lengths: readonly MeasuredLength[],
  part: LinearPart,
): void {
  const n = lengths.length;
  const { residual, covariance } = weigher;
  const m = part.pitch.module;
  for (let i = 0; i < n; i++) {
    const length = lengths[i];
    const mode = part.modes[i];
    const at = i * causeCount;
    setLoadings(loadings, at, space, part, mode, length.zeroDeviation);
    residual[i] = length.value - findExpected(space, part, mode, length.offset);
    let variance = length.noise + m * m * mode.variance;
    for (let f = at; f < at + causeCount; f++) variance += loadings[f] * loadings[f];
    covariance[i * n + i] = variance;
  }
}

/** The covariances of readings with each other, from their loadings. */
export function fillCovariance(weigher: Weigher, loadings: Float64Array): void {
  const { covariance, size: n } = weigher;
  for (let i = 1; i < n; i++) {
    for (let j = 0; j < i; j++) {
      let sum = 0;
      for (let f = 0; f < causeCount; f++) sum += loadings[i * causeCount + f] * loadings[j * causeCount + f];
      covariance[i * n + j] = sum;
    }
  }
}
