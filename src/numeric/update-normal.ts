import { factorCholesky, invertLower } from './cholesky.ts';

/** Unknowns that are normal, independent of each other, before anything is read. */
export interface NormalPrior {
  readonly mean: ArrayLike<number>;
  /** Standard deviations; 0 for what is known */
  readonly deviation: ArrayLike<number>;
}

/** One number read: a row of slopes by the unknowns, what they leave of it, and the standard deviation of its error. */
export interface LinearReading {
  readonly slopes: ArrayLike<number>;
  /** Read value less what it would be with every unknown 0 */
  readonly value: number;
  readonly noise: number;
}

export interface NormalPosterior {
  readonly mean: Float64Array;
  /** n × n, row-major */
  readonly covariance: Float64Array;
  /** Natural logarithm of the density of what was read */
  readonly logEvidence: number;
}

/**
 * What normal unknowns are after linear readings with normal errors: mean and covariance by Bayes' rule in its form for
 * few readings, K = P Aᵀ (A P Aᵀ + R)⁻¹ (Gelman et al., Bayesian Data Analysis, ch. 14). Without readings the prior
 * comes back. A noise of 0 that leaves the readings' covariance singular is a plain Error.
 *
 * @example prior 0 ± 1, one reading 1 ± 1 of it: mean 0.5, variance 0.5
 */
export function updateNormal(prior: NormalPrior, readings: readonly LinearReading[]): NormalPosterior {
  const n = prior.mean.length;
  const count = readings.length;
  const mean = Float64Array.from(prior.mean);
  const covariance = new Float64Array(n * n);
  for (let k = 0; k < n; k++) covariance[k * n + k] = prior.deviation[k] ** 2;
  if (count === 0) return { mean, covariance, logEvidence: 0 };
  // S = A P Aᵀ + R, then L⁻¹ of its factor; W = L⁻¹ A P.
  const spread = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = i === j ? readings[i].noise ** 2 : 0;
      for (let k = 0; k < n; k++)
        sum += readings[i].slopes[k] * readings[j].slopes[k] * prior.deviation[k] ** 2;
      spread[i * count + j] = sum;
    }
  }
  const logDeterminant = factorCholesky(spread, count);
  if (Number.isNaN(logDeterminant)) throw new Error('readings without noise contradict or repeat each other');
  invertLower(spread, count);
  const apart = readings.map(({ slopes, value }) => {
    let expected = 0;
    for (let k = 0; k < n; k++) expected += slopes[k] * prior.mean[k];
    return value - expected;
  });
  let square = 0;
  const row = new Float64Array(n);
  for (let i = 0; i < count; i++) {
    let whitened = 0;
    row.fill(0);
    for (let j = 0; j <= i; j++) {
      const part = spread[i * count + j];
      whitened += part * apart[j];
      for (let k = 0; k < n; k++) row[k] += part * readings[j].slopes[k] * prior.deviation[k] ** 2;
    }
    square += whitened ** 2;
    for (let k = 0; k < n; k++) {
      mean[k] += row[k] * whitened;
      for (let l = 0; l < n; l++) covariance[k * n + l] -= row[k] * row[l];
    }
  }
  return { mean, covariance, logEvidence: -0.5 * (square + logDeterminant + count * Math.log(2 * Math.PI)) };
}
