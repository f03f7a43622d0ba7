/** A clamped cubic B-spline on 0 … 1: the first and last control points are its ends. */
export interface CubicSpline {
  /** Numbers a control point has */
  readonly dimension: number;
  /** Control points, one after the other */
  readonly points: Float64Array;
  /** Distinct knots from 0 to 1: the ends four times, the others once */
  readonly knots: Float64Array;
}

/**
 * Fits a cubic B-spline through even steps of a smooth curve on 0 … 1, with the curve's own end derivatives (de Boor, A
 * Practical Guide to Splines, complete cubic spline interpolation), in as few spans as keep it within `tolerance`.
 *
 * What is measured is the distance of points at equal parameters, at eight places a span: at least the distance of the
 * two curves. Throws a plain Error where 512 spans don't do.
 *
 * @param pointAt writes a curve point into `out`; an array of any dimension
 * @returns the spline and the largest distance that was found
 */
export function fitSpline(
  pointAt: (parameter: number, out: Float64Array) => void,
  dimension: number,
  tolerance: number,
): { readonly spline: CubicSpline; readonly error: number } {
  for (const spans of spanCounts) {
    const spline = interpolate(pointAt, dimension, spans);
    const error = measure(pointAt, spline, spans);
    if (error <= tolerance) return { spline, error };
  }
  throw new Error(`no spline of ${spanCounts[spanCounts.length - 1]} spans within ${tolerance}`);
}

const spanCounts = [1, 2, 3, 4, 5, 6, 8, 10, 12, 16, 24, 32, 48, 64, 128, 256, 512];

/** Writes the spline's point at a parameter, 0 … 1, into `out` (de Boor's algorithm). */
export function evaluateSpline(
  { points, knots, dimension }: CubicSpline,
  parameter: number,
  out: Float64Array,
): void {
  const last = knots.length - 2;
  let span = 0;
  while (span < last && parameter >= knots[span + 1]) span++;
  const knot = (k: number): number => knots[Math.min(Math.max(k - 3, 0), knots.length - 1)];
  const work = points.slice(span * dimension, (span + 4) * dimension);
  for (let level = 1; level <= 3; level++) {
    for (let j = 3; j >= level; j--) {
      const from = knot(span + j);
      const share = (parameter - from) / (knot(span + j + 4 - level) - from);
      for (let i = 0; i < dimension; i++) {
        const at = j * dimension + i;
        work[at] = (1 - share) * work[at - dimension] + share * work[at];
      }
    }
  }
  for (let i = 0; i < dimension; i++) out[i] = work[3 * dimension + i];
}

function interpolate(
  pointAt: (parameter: number, out: Float64Array) => void,
  dimension: number,
  spans: number,
): CubicSpline {
  const knots = Float64Array.from({ length: spans + 1 }, (_, k) => k / spans);
  const points = new Float64Array((spans + 3) * dimension);
  const at = new Float64Array(dimension);
  const put = (index: number): void => points.set(at, index * dimension);
  pointAt(0, at);
  put(0);
  pointAt(1, at);
  put(spans + 2);
  for (const [end, index, step] of [
    [0, 1, 1],
    [1, spans + 1, -1],
  ] as const) {
    const slope = findEndSlope(pointAt, dimension, end, step);
    for (let i = 0; i < dimension; i++) {
      points[index * dimension + i] =
        points[(index - step) * dimension + i] + (step * slope[i]) / (3 * spans);
    }
  }
  // The curve passes knot k at the sum of three control points: a tridiagonal system for the inner ones.
  const diagonal = new Float64Array(spans);
  const upper = new Float64Array(spans);
  for (let k = 1; k < spans; k++) {
    const [before, here, after] = findWeights(knots, k);
    pointAt(knots[k], at);
    for (let i = 0; i < dimension; i++) {
      if (k === 1) at[i] -= before * points[dimension + i];
      if (k === spans - 1) at[i] -= after * points[(spans + 1) * dimension + i];
    }
    const factor = k === 1 ? 0 : before / diagonal[k - 1];
    diagonal[k] = here - factor * upper[k - 1];
    upper[k] = after;
    for (let i = 0; i < dimension; i++) {
      points[(k + 1) * dimension + i] = at[i] - factor * (k === 1 ? 0 : points[k * dimension + i]);
    }
  }
  for (let k = spans - 1; k >= 1; k--) {
    for (let i = 0; i < dimension; i++) {
      const next = k === spans - 1 ? 0 : upper[k] * points[(k + 2) * dimension + i];
      points[(k + 1) * dimension + i] = (points[(k + 1) * dimension + i] - next) / diagonal[k];
    }
  }
  return { dimension, points, knots };
}

/** The three cubic basis functions that are not 0 at an inner knot; the ends' knots count four times. */
function findWeights(knots: Float64Array, k: number): readonly [number, number, number] {
  const at = (index: number): number => knots[Math.min(Math.max(index, 0), knots.length - 1)];
  const [a, b, t, d, e] = [at(k - 2), at(k - 1), at(k), at(k + 1), at(k + 2)];
  const before = (d - t) ** 2 / ((d - a) * (d - b));
  const after = (t - b) ** 2 / ((e - b) * (d - b));
  return [before, 1 - before - after, after];
}

/** One-sided difference of fourth order. */
function findEndSlope(
  pointAt: (parameter: number, out: Float64Array) => void,
  dimension: number,
  end: number,
  step: 1 | -1,
): Float64Array {
  const slope = new Float64Array(dimension);
  const at = new Float64Array(dimension);
  endWeights.forEach((weight, k) => {
    pointAt(end + step * k * slopeStep, at);
    for (let i = 0; i < dimension; i++) slope[i] += (step * weight * at[i]) / slopeStep;
  });
  return slope;
}

const endWeights = [-25 / 12, 4, -3, 4 / 3, -1 / 4];

/** Fourth power below a millionth of a millionth, and far above what rounding leaves. */
const slopeStep = 1e-3;

function measure(
  pointAt: (parameter: number, out: Float64Array) => void,
  spline: CubicSpline,
  spans: number,
): number {
  const a = new Float64Array(spline.dimension);
  const b = new Float64Array(spline.dimension);
  let most = 0;
  for (let k = 1; k < 8 * spans; k++) {
    pointAt(k / (8 * spans), a);
    evaluateSpline(spline, k / (8 * spans), b);
    let square = 0;
    for (let i = 0; i < a.length; i++) square += (a[i] - b[i]) ** 2;
    most = Math.max(most, square);
  }
  return Math.sqrt(most);
}
