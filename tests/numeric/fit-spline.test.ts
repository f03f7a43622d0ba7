import { expect, test } from 'vitest';
import { evaluateSpline, fitSpline } from '../../src/numeric/fit-spline.ts';

const circle = (turn: number, out: Float64Array): void => {
  out[0] = Math.cos(turn);
  out[1] = Math.sin(turn);
};

test('a cubic is its own spline, in one span', () => {
  const cubic = (t: number, out: Float64Array): void => {
    out[0] = 1 + t * (2 + t * (3 - 4 * t));
  };
  const { spline, error } = fitSpline(cubic, 1, 1e-9);
  expect(spline.knots.length).toBe(2);
  expect(error).toBeLessThan(1e-12);
  // Bernstein coefficients of 1 + 2 t + 3 t² − 4 t³.
  [1, 5 / 3, 10 / 3, 2].forEach((value, k) => {
    expect(spline.points[k]).toBeCloseTo(value, 11);
  });
});

test('a circle comes within the tolerance, and the error falls with the fourth power of the spans', () => {
  const errors = [1e-3, 1e-5, 1e-7, 1e-9].map((tolerance) => {
    const { spline, error } = fitSpline(circle, 2, tolerance);
    expect(error).toBeLessThanOrEqual(tolerance);
    // Measured again between the places that the fit looked at.
    const at = new Float64Array(2);
    let off = 0;
    for (let k = 0; k <= 997; k++) {
      evaluateSpline(spline, k / 997, at);
      off = Math.max(off, Math.abs(Math.hypot(at[0], at[1]) - 1));
    }
    expect(off).toBeLessThanOrEqual(1.2 * tolerance);
    return error * (spline.knots.length - 1) ** 4;
  });
  expect(Math.max(...errors) / Math.min(...errors)).toBeLessThan(4);
});

test('ends are the curve’s ends to the last bit, and so are its end slopes to ten digits', () => {
  const { spline } = fitSpline(circle, 2, 1e-8);
  const spans = spline.knots.length - 1;
  expect([...spline.points.slice(0, 2)]).toEqual([1, 0]);
  expect([...spline.points.slice(-2)]).toEqual([Math.cos(1), Math.sin(1)]);
  expect((spline.points[3] - spline.points[1]) * 3 * spans).toBeCloseTo(1, 10);
});

test('what no spline follows is a mistake of the program', () => {
  const jump = (t: number, out: Float64Array): void => {
    out[0] = t < 1 / Math.PI ? 0 : 1;
  };
  expect(() => fitSpline(jump, 1, 1e-6)).toThrow('spans');
});
