import { factorCholesky, invertLower } from '../numeric/cholesky.ts';
import type { Repair, RepairKind } from './list-repairs.ts';

/** One reading as the weigher needs it. */
export interface WeighedReading {
  readonly repairs: readonly Repair[];
  readonly value: number;
  /** Ways of being plain wrong: log of its chance, and the variance of a wrong value about the right one. */
  readonly wrong: readonly { readonly logChance: number; readonly variance: number }[];
  /** How far it follows the instrument's zero: 1 for a caliper reading, 0 for none. */
  readonly zeroShare: number;
}

/** What may have happened to the readings: nothing, one slip of one reading, or the zero of them all. */
export interface SlipPattern {
  readonly kind: 'none' | RepairKind | 'wrong' | 'zero-not-set';
  /** Index of the reading; −1 where no single one is meant. */
  readonly reading: number;
  readonly repairedValue: number;
  readonly logChance: number;
  /** What a plain wrong reading adds to its own variance, or an unset zero to all; else 0. */
  readonly variance: number;
}

/**
 * Weighs one linear-Gaussian hypothesis against all readings, under every pattern of one slip at most.
 *
 * The caller fills `residual` (read − expected) and the lower half of `covariance` (n × n row-major), then calls
 * `weigh`, which returns the log evidence summed over patterns. A slip of one reading is a rank-one change of the
 * covariance or a shift of one residual, so all patterns cost one Cholesky factor: with s = Σ⁻¹r and p = diag Σ⁻¹,
 * reading i given the others lies at r_i − s_i/p_i with variance 1/p_i; a variance w added to it changes
 * rᵀΣ⁻¹r by −w s_i²/(1 + w p_i) and log det Σ by log(1 + w p_i) (Sherman–Morrison; Golub & Van Loan, Matrix
 * Computations, 2.1.4). Buffers are reused: copy what must outlive the next call.
 */
export interface Weigher {
  readonly size: number;
  readonly patterns: readonly SlipPattern[];
  readonly residual: Float64Array;
  readonly covariance: Float64Array;
  /** log evidence of each pattern in the last call. */
  readonly logPatterns: Float64Array;
  /** Indices of the patterns that matter in the last call; the first `countLive()` of them count. */
  readonly live: Uint16Array;
  countLive(): number;
  /** Σ⁻¹r of the last call. */
  readonly solved: Float64Array;
  /** L⁻¹ (lower, row-major) of the last call. */
  readonly inverseFactor: Float64Array;
  /** @param least log evidence that is surely no more than this is not worked out: −Infinity stands for it */
  weigh(least?: number): number;
}

// Patterns this far below the no-slip evidence (natural log) can't move a probability by 1e-7.
const negligible = 20;

export function createWeigher(
  readings: readonly WeighedReading[],
  zeroSlip: { readonly logChance: number; readonly variance: number } | undefined,
): Weigher {
  const n = readings.length;
  const patterns: SlipPattern[] = [
    { kind: 'none', reading: -1, repairedValue: Number.NaN, logChance: 0, variance: 0 },
  ];
  const starts: number[] = [];
  readings.forEach((reading, i) => {
    starts.push(patterns.length);
    for (const way of reading.wrong) {
      patterns.push({ kind: 'wrong', reading: i, repairedValue: Number.NaN, ...way });
    }
    for (const { kind, value, logChance } of reading.repairs) {
      patterns.push({ kind, reading: i, repairedValue: value, logChance, variance: 0 });
    }
  });
  if (zeroSlip) {
    patterns.push({ kind: 'zero-not-set', reading: -1, repairedValue: Number.NaN, ...zeroSlip });
  }
  const zeroAt = patterns.length - 1;

  const shifts = readings.map((reading) =>
    Float64Array.from(reading.repairs, (repair) => repair.value - reading.value),
  );
  const logChances = readings.map((reading) =>
    Float64Array.from(reading.repairs, (repair) => repair.logChance),
  );
  const likeliestSlip = readings.map((reading) =>
    Math.max(...[...reading.wrong, ...reading.repairs].map((slip) => slip.logChance)),
  );
  const logPatternCount = Math.log(patterns.length);
  const zeroShares = Float64Array.from(readings, (reading) => reading.zeroShare);
  const wrongChances = readings.map((reading) => Float64Array.from(reading.wrong, (way) => way.logChance));
  const wrongVariances = readings.map((reading) => Float64Array.from(reading.wrong, (way) => way.variance));
  const residual = new Float64Array(n);
  const covariance = new Float64Array(n * n);
  const logPatterns = new Float64Array(patterns.length);
  const live = new Uint16Array(patterns.length);
  let liveCount = 0;
  const solved = new Float64Array(n);
  const half = new Float64Array(n);
  const precision = new Float64Array(n);
  const constant = -0.5 * n * Math.log(2 * Math.PI);

  // Σ⁻¹ along the zero, and Σ⁻¹r along it, of the last call.
  let zeroWeight = 0;
  let zeroAlong = 0;
  const followZero = (): void => {
    zeroWeight = 0;
    zeroAlong = 0;
    for (let i = 0; i < n; i++) {
      zeroAlong += zeroShares[i] * solved[i];
      let sum = 0;
      for (let j = 0; j <= i; j++) sum += covariance[i * n + j] * zeroShares[j];
      zeroWeight += sum * sum;
    }
  };

  // A reading left out altogether gives back ½ s²/p, its likeliest slip's chance taken off; no slip gives back more.
  const boundGain = (): number => {
    let gain = 0;
    for (let i = 0; i < n; i++) {
      gain = Math.max(gain, (0.5 * solved[i] * solved[i]) / precision[i] + likeliestSlip[i]);
    }
    if (zeroSlip) {
      followZero();
      gain = Math.max(gain, (0.5 * zeroAlong * zeroAlong) / zeroWeight + zeroSlip.logChance);
    }
    return gain + logPatternCount;
  };

  const weigh = (least = Number.NEGATIVE_INFINITY): number => {
    liveCount = 0;
    const logDeterminant = factorCholesky(covariance, n);
    if (Number.isNaN(logDeterminant)) return Number.NEGATIVE_INFINITY;
    invertLower(covariance, n);
    let quadratic = 0;
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let j = 0; j <= i; j++) sum += covariance[i * n + j] * residual[j];
      half[i] = sum;
      quadratic += sum * sum;
    }
    for (let j = 0; j < n; j++) {
      let sum = 0;
      let square = 0;
      for (let i = j; i < n; i++) {
        const entry = covariance[i * n + j];
        sum += entry * half[i];
        square += entry * entry;
      }
      solved[j] = sum;
      precision[j] = square;
    }
    const base = constant - 0.5 * (quadratic + logDeterminant);
    if (base + boundGain() <= least) return Number.NEGATIVE_INFINITY;
    logPatterns[0] = base;
    live[liveCount++] = 0;
    let greatest = base;
    const floor = base - negligible;
    for (let i = 0; i < n; i++) {
      const p = precision[i];
      const s = solved[i];
      let at = starts[i];
      const wrongChance = wrongChances[i];
      const variance = wrongVariances[i];
      for (let k = 0; k < wrongChance.length; k++) {
        const denominator = 1 + variance[k] * p;
        const log =
          base + wrongChance[k] + (0.5 * variance[k] * s * s) / denominator - 0.5 * Math.log(denominator);
        logPatterns[at] = log;
        if (log > floor) {
          live[liveCount++] = at;
          if (log > greatest) greatest = log;
        }
        at++;
      }
      const apart = s / p;
      const without = base + 0.5 * p * apart * apart;
      const shift = shifts[i];
      const logChance = logChances[i];
      for (let k = 0; k < shift.length; k++) {
        const moved = apart + shift[k];
        const repaired = without + logChance[k] - 0.5 * p * moved * moved;
        logPatterns[at] = repaired;
        if (repaired > floor) {
          live[liveCount++] = at;
          if (repaired > greatest) greatest = repaired;
        }
        at++;
      }
    }
    if (zeroSlip) {
      const denominator = 1 + zeroSlip.variance * zeroWeight;
      const log =
        base +
        zeroSlip.logChance +
        (0.5 * zeroSlip.variance * zeroAlong * zeroAlong) / denominator -
        0.5 * Math.log(denominator);
      logPatterns[zeroAt] = log;
      if (log > floor) {
        live[liveCount++] = zeroAt;
        if (log > greatest) greatest = log;
      }
    }
    let total = 0;
    for (let k = 0; k < liveCount; k++) total += Math.exp(logPatterns[live[k]] - greatest);
    return greatest + Math.log(total);
  };

  return {
    size: n,
    patterns,
    residual,
    covariance,
    logPatterns,
    live,
    countLive: () => liveCount,
    solved,
    inverseFactor: covariance,
    weigh,
  };
}
