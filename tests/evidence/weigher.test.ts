import { describe, expect, test } from 'vitest';
import { findExpectedInformation } from '../../src/evidence/expected-information.ts';
import { listRepairs } from '../../src/evidence/list-repairs.ts';
import { createWeigher, type WeighedReading } from '../../src/evidence/weigher.ts';
import { startRandom } from '../../src/numeric/random.ts';

const chances = {
  'inch-for-mm': 0.002,
  'radius-for-diameter': 0.001,
  'swapped-digits': 0.002,
  'lost-decimal': 0.002,
};

/** log N(residual; 0, covariance) by Gaussian elimination: nothing shared with the code under test. */
function logNormal(residual: readonly number[], covariance: readonly (readonly number[])[]): number {
  const n = residual.length;
  const rows = covariance.map((row, i) => [...row, residual[i]]);
  let logDeterminant = 0;
  for (let k = 0; k < n; k++) {
    logDeterminant += Math.log(rows[k][k]);
    for (let i = k + 1; i < n; i++) {
      const factor = rows[i][k] / rows[k][k];
      for (let j = k; j <= n; j++) rows[i][j] -= factor * rows[k][j];
    }
  }
  const solved = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    let sum = rows[k][n];
    for (let j = k + 1; j < n; j++) sum -= rows[k][j] * solved[j];
    solved[k] = sum / rows[k][k];
  }
  const quadratic = residual.reduce((sum, value, i) => sum + value * solved[i], 0);
  return -0.5 * (quadratic + logDeterminant + n * Math.log(2 * Math.PI));
}

describe('the weigher gives each pattern of slips the evidence that a direct computation gives', () => {
  test('on random covariances, with every slip', () => {
    const random = startRandom(3);
    for (let round = 0; round < 40; round++) {
      const n = 2 + (round % 4);
      const loadings = Array.from({ length: n }, () =>
        Array.from({ length: 3 }, () => random.normal() * 0.05),
      );
      const zeroVariance = 0.06;
      const covariance = loadings.map((a, i) =>
        loadings.map((b, j) => a.reduce((sum, v, f) => sum + v * b[f], 0) + (i === j ? 0.001 : 0)),
      );
      const readings: WeighedReading[] = Array.from({ length: n }, (_, i) => ({
        value: 12.44 + i,
        repairs: listRepairs(12.44 + i, chances, true),
        wrong: [
          { logChance: Math.log(0.006), variance: 0.3 },
          { logChance: Math.log(0.002), variance: 0.1 },
        ],
        zeroShare: i === 0 ? 0 : 1,
      }));
      const residual = readings.map(() => 0.05 * random.normal());
      const weigher = createWeigher(readings, { logChance: Math.log(0.003), variance: zeroVariance });
      const fill = (): void =>
        residual.forEach((value, i) => {
          weigher.residual[i] = value;
          for (let j = 0; j <= i; j++) weigher.covariance[i * n + j] = covariance[i][j];
        });
      fill();
      const least = weigher.weigh() - 1e-9;
      fill();
      // What is above the floor is not given up, and what no slip can lift to it is.
      expect(weigher.weigh(least + 100)).toBe(Number.NEGATIVE_INFINITY);
      fill();
      const total = weigher.weigh(least);
      expect(total).toBeCloseTo(least, 8);
      let sum = 0;
      weigher.patterns.forEach((pattern, k) => {
        let expected: number;
        if (pattern.kind === 'none') expected = logNormal(residual, covariance);
        else if (pattern.kind === 'zero-not-set') {
          const shared = covariance.map((row, i) =>
            row.map((v, j) => v + (i > 0 && j > 0 ? zeroVariance : 0)),
          );
          expected = Math.log(0.003) + logNormal(residual, shared);
        } else if (pattern.kind === 'wrong') {
          const wider = covariance.map((row, i) =>
            row.map((v, j) => v + (i === j && i === pattern.reading ? pattern.variance : 0)),
          );
          expected = Math.log(pattern.variance === 0.3 ? 0.006 : 0.002) + logNormal(residual, wider);
        } else {
          const repair = readings[pattern.reading].repairs.find((one) => one.value === pattern.repairedValue);
          const moved = residual.map((v, i) =>
            i === pattern.reading ? v + pattern.repairedValue - readings[i].value : v,
          );
          expected = (repair?.logChance ?? Number.NaN) + logNormal(moved, covariance);
        }
        if (expected > total - 20) expect(weigher.logPatterns[k]).toBeCloseTo(expected, 8);
        sum += Math.exp(weigher.logPatterns[k] - total);
      });
      expect(sum).toBeCloseTo(1, 8);
    }
  });

  test('a covariance that is none weighs nothing', () => {
    const weigher = createWeigher(
      [{ value: 1, repairs: [], wrong: [{ logChance: -5, variance: 1 }], zeroShare: 0 }],
      undefined,
    );
    weigher.covariance[0] = -1;
    expect(weigher.weigh()).toBe(Number.NEGATIVE_INFINITY);
  });
});

describe('repairs', () => {
  test('12.46 read in inches is 0.49, and 0.49 may have been that', () => {
    expect(listRepairs(0.49, chances, true).some((one) => Math.abs(one.value - 12.446) < 1e-9)).toBe(true);
  });
  test('a swapped pair of digits is found across the point, never in the last hundredths alone', () => {
    const swaps = (typed: number): number[] =>
      listRepairs(typed, chances, false)
        .filter((one) => one.kind === 'swapped-digits')
        .map((one) => one.value);
    expect(swaps(6.73)).toEqual(expect.arrayContaining([7.63, 6.37]));
    expect(swaps(6.34)).not.toContain(6.32);
    expect(swaps(11.11)).toEqual([]);
  });
  test('chances of a digit swap share their kind', () => {
    const swaps = listRepairs(12.34, chances, false).filter((one) => one.kind === 'swapped-digits');
    const sum = swaps.reduce((total, one) => total + Math.exp(one.logChance), 0);
    expect(sum).toBeCloseTo(chances['swapped-digits'], 12);
  });
});

describe('expected information', () => {
  test('is one bit for two equal classes far apart, none for two that read alike', () => {
    expect(findExpectedInformation([0.5, 0.5], [0, 1], 2, [0, 10], [0.1, 0.1])).toBeCloseTo(1, 4);
    expect(findExpectedInformation([0.5, 0.5], [0, 1], 2, [3, 3], [0.1, 0.1])).toBeCloseTo(0, 9);
  });
  test('never exceeds the entropy, and falls as the reading gets worse', () => {
    const entropy = -(0.7 * Math.log2(0.7) + 0.3 * Math.log2(0.3));
    let last = entropy + 1e-6;
    for (const spread of [0.01, 0.1, 0.3, 1, 3]) {
      const bits = findExpectedInformation([0.7, 0.3], [0, 1], 2, [0, 0.5], [spread, spread]);
      expect(bits).toBeLessThanOrEqual(last);
      last = bits;
    }
    expect(last).toBeLessThan(0.02);
  });
  test('agrees with a plain Monte Carlo of the same mixture', () => {
    const weights = [0.5, 0.2, 0.3];
    const classes = [0, 1, 1];
    const means = [0, 0.4, 0.9];
    const deviations = [0.2, 0.25, 0.15];
    const density = (y: number, k: number): number =>
      Math.exp(-0.5 * ((y - means[k]) / deviations[k]) ** 2) / (deviations[k] * Math.sqrt(2 * Math.PI));
    const random = startRandom(9);
    let bits = 0;
    const draws = 60_000;
    for (let i = 0; i < draws; i++) {
      const k = random.index(weights);
      const y = means[k] + deviations[k] * random.normal();
      const own = weights.reduce((sum, w, j) => sum + (classes[j] === classes[k] ? w * density(y, j) : 0), 0);
      const all = weights.reduce((sum, w, j) => sum + w * density(y, j), 0);
      const prior = classes[k] === 0 ? 0.5 : 0.5;
      bits += Math.log2(own / all / prior) / draws;
    }
    expect(findExpectedInformation(weights, classes, 2, means, deviations)).toBeCloseTo(bits, 2);
  });
});
