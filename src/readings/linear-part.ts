import type { Weigher } from '../evidence/weigher.ts';
import type { HypothesisSpace, ToothHypothesis } from './hypothesis-space.ts';
import type { MeasuredLength } from './measured-length.ts';
import type { PitchHypothesis } from './pitch-prior.ts';
import type { NormalPart } from './tooth-prior.ts';
import type { ResponseMode } from './tooth-response.ts';

/** One linear hypothesis: everything discrete is chosen, the rest are independent standard normals. */
export interface LinearPart {
  readonly pitch: PitchHypothesis;
  readonly tooth: ToothHypothesis;
  readonly tipLoss: NormalPart;
  readonly modes: readonly ResponseMode[];
  /** log prior weight */
  readonly prior: number;
  /** What a mate and the shaft distance say of the profile shift, as one more reading of it: modules. */
  readonly shiftSeen?: { readonly value: number; readonly variance: number };
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
  pitch: PitchHypothesis,
  tooth: ToothHypothesis,
  tipLoss: NormalPart,
  mode: ResponseMode,
  zeroDeviation: number,
): void {
  const m = pitch.module;
  const cell = pitch.spread;
  const { scaleSpread } = space;
  loadings[at] = m * tooth.shift.spread * mode.byShift;
  loadings[at + 1] = m * tipLoss.spread * mode.byTipLoss;
  loadings[at + 2] = m * space.thinning.spread * mode.byThinning;
  loadings[at + 3] = m * space.tipLandSpread * mode.byTipLand;
  loadings[at + 4] =
    m * mode.value * (cell === 0 ? scaleSpread : Math.sqrt(cell * cell + scaleSpread * scaleSpread));
  loadings[at + 5] = m * tooth.helixSpread * mode.byHelix;
  loadings[at + 6] = zeroDeviation;
}

/** What the reading should show on average over the shared causes, mm. */
export function findExpected(
  space: HypothesisSpace,
  pitch: PitchHypothesis,
  tipLoss: NormalPart,
  mode: ResponseMode,
  offset: number,
): number {
  const value = mode.value + tipLoss.mean * mode.byTipLoss + space.thinning.mean * mode.byThinning;
  return pitch.module * value + mode.offset + offset;
}

/**
 * Fills a weigher with one linear part after another. Parts that differ in tip loss alone share all the rest, so a
 * part is filled in steps: `chooseTooth` for what tips do not touch, `chooseTipLoss` for residuals and the diagonal
 * of the covariance, and `fillCovariance` only where the diagonal does not rule the part out already.
 */
export interface PartFiller {
  /** n × causeCount, of the part as chosen. */
  readonly loadings: Float64Array;
  chooseTooth(part: Pick<LinearPart, 'pitch' | 'tooth' | 'modes'>): void;
  chooseTipLoss(tipLoss: NormalPart): void;
  fillCovariance(): void;
}

export function createPartFiller(
  weigher: Weigher,
  space: HypothesisSpace,
  lengths: readonly MeasuredLength[],
): PartFiller {
  const n = lengths.length;
  const { residual, covariance } = weigher;
  const loadings = new Float64Array(n * causeCount);
  // Without tip loss: read − expected, variance, covariances; and what a module of tip loss takes off, mm.
  const apart = new Float64Array(n);
  const variances = new Float64Array(n);
  const shared = new Float64Array(n * n);
  const slopes = new Float64Array(n);
  let hasShared = false;
  return {
    loadings,
    chooseTooth(part) {
      hasShared = false;
      const { pitch, tooth, modes } = part;
      const m = pitch.module;
      for (let i = 0; i < n; i++) {
        const length = lengths[i];
        const mode = modes[i];
        const at = i * causeCount;
        setLoadings(loadings, at, space, pitch, tooth, noLoss, mode, length.zeroDeviation);
        slopes[i] = m * mode.byTipLoss;
        apart[i] = length.value - findExpected(space, pitch, noLoss, mode, length.offset);
        let variance = length.noise + m * m * mode.variance;
        for (let f = at; f < at + causeCount; f++) variance += loadings[f] * loadings[f];
        variances[i] = variance;
      }
    },
    chooseTipLoss({ mean, spread }) {
      for (let i = 0; i < n; i++) {
        const loading = spread * slopes[i];
        loadings[i * causeCount + sharedCauses.tipLoss] = loading;
        residual[i] = apart[i] - mean * slopes[i];
        covariance[i * n + i] = variances[i] + loading * loading;
      }
    },
    fillCovariance() {
      if (!hasShared) {
        hasShared = true;
        for (let i = 1; i < n; i++) {
          for (let j = 0; j < i; j++) {
            let sum = 0;
            for (let f = 0; f < causeCount; f++) {
              if (f === sharedCauses.tipLoss) continue;
              sum += loadings[i * causeCount + f] * loadings[j * causeCount + f];
            }
            shared[i * n + j] = sum;
          }
        }
      }
      for (let i = 1; i < n; i++) {
        const loading = loadings[i * causeCount + sharedCauses.tipLoss];
        for (let j = 0; j < i; j++) {
          covariance[i * n + j] =
            shared[i * n + j] + loading * loadings[j * causeCount + sharedCauses.tipLoss];
        }
      }
    },
  };
}

const noLoss: NormalPart = { logWeight: 0, mean: 0, spread: 0 };
