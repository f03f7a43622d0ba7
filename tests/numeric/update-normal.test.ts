import { describe, expect, test } from 'vitest';
import { updateNormal } from '../../src/numeric/update-normal.ts';

describe('normal unknowns after linear readings', () => {
  test('stay as they were without any', () => {
    const { mean, covariance } = updateNormal({ mean: [1, 2], deviation: [3, 4] }, []);
    expect([...mean]).toEqual([1, 2]);
    expect([...covariance]).toEqual([9, 0, 0, 16]);
  });

  // The normal mean with known variance: Gelman et al., Bayesian Data Analysis, 2.5: precisions add.
  test('of one mean: precisions add and means weigh by them', () => {
    const read = [1.3, 0.9, 1.6].map((value) => ({ slopes: [1], value, noise: 0.5 }));
    const { mean, covariance } = updateNormal({ mean: [0.2], deviation: [2] }, read);
    const precision = 1 / 4 + 3 / 0.25;
    expect(covariance[0]).toBeCloseTo(1 / precision, 12);
    expect(mean[0]).toBeCloseTo((0.2 / 4 + (1.3 + 0.9 + 1.6) / 0.25) / precision, 12);
  });

  test('have the evidence that adding the unknown up by quadrature gives', () => {
    const read = [
      { slopes: [1], value: 0.7, noise: 0.3 },
      { slopes: [-2], value: -0.9, noise: 0.4 },
    ];
    const normal = (x: number, s: number): number =>
      Math.exp(-0.5 * (x / s) ** 2) / (s * Math.sqrt(2 * Math.PI));
    let sum = 0;
    const step = 1e-3;
    for (let x = -8; x < 8; x += step)
      sum += step * normal(x - 0.1, 1.2) * normal(0.7 - x, 0.3) * normal(-0.9 + 2 * x, 0.4);
    expect(updateNormal({ mean: [0.1], deviation: [1.2] }, read).logEvidence).toBeCloseTo(Math.log(sum), 8);
  });

  test('a known one stays known', () => {
    const { mean, covariance } = updateNormal({ mean: [1, 5], deviation: [1, 0] }, [
      { slopes: [1, 1], value: 7, noise: 0.1 },
    ]);
    expect(mean[1]).toBe(5);
    expect(mean[0]).toBeGreaterThan(1.9);
    expect(covariance[3]).toBe(0);
  });
});
