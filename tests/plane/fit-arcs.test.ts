import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitArcs } from '../../src/plane/fit-arcs.ts';

/** Points of a circle about the origin from one angle to another. */
function circle(radius: number, from: number, to: number, count: number): number[] {
  return Array.from({ length: count + 1 }, (_, k) => from + ((to - from) * k) / count).flatMap((angle) => [
    radius * Math.cos(angle),
    radius * Math.sin(angle),
  ]);
}

describe('arcs through a sampled curve', () => {
  test('a quarter circle is one piece of bulge tan 22.5°, the same way round', () => {
    const ccw = fitArcs(circle(3, 0, Math.PI / 2, 40), 1e-3);
    expect(ccw.points).toEqual([3, 0, 3 * Math.cos(Math.PI / 2), 3]);
    expect(ccw.bulges[0]).toBeCloseTo(Math.tan(Math.PI / 8), 12);
    const cw = fitArcs(circle(3, Math.PI / 2, 0, 40), 1e-3);
    expect(cw.bulges[0]).toBeCloseTo(-Math.tan(Math.PI / 8), 12);
  });

  test('no piece turns by more than a third of a turn and a half of it', () => {
    const { bulges } = fitArcs(circle(1, 0, 6, 400), 1e-3);
    for (const bulge of bulges) expect(4 * Math.atan(bulge)).toBeLessThanOrEqual((2 * Math.PI) / 3 + 1e-9);
    expect(bulges.reduce((sum, bulge) => sum + 4 * Math.atan(bulge), 0)).toBeCloseTo(6, 9);
  });

  test('points in a row are one straight line; a corner is kept wherever its neighbors lie', () => {
    expect(fitArcs([0, 0, 1, 1, 2, 2, 5, 5], 1e-6)).toEqual({ points: [0, 0, 5, 5], bulges: [0] });
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 3, noNaN: true }),
        fc.double({ min: 0.01, max: 3, noNaN: true }),
        fc.double({ min: 0.3, max: 2.8, noNaN: true }),
        (before, after, turn) => {
          const { points } = fitArcs(
            [-before, 0, 0, 0, after * Math.cos(turn), after * Math.sin(turn)],
            1e-4,
          );
          expect(points.slice(2, 4)).toEqual([0, 0]);
        },
      ),
      { seed: 3, numRuns: 300 },
    );
  });

  test('on any smooth curve every sample lies within the error of its piece, and ends are the samples’ own', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (wave, bend) => {
          const samples = Array.from({ length: 400 }, (_, k) => k / 100).flatMap((x) => [
            x,
            bend * x * x + 0.3 * Math.sin(wave * x),
          ]);
          const error = 1e-3;
          const { points, bulges } = fitArcs(samples, error);
          expect(points.slice(0, 2)).toEqual(samples.slice(0, 2));
          expect(points.slice(-2)).toEqual(samples.slice(-2));
          // Fewer pieces than chords of the same error would need, or as many on nearly straight runs.
          let piece = 0;
          for (let k = 0; k < samples.length; k += 2) {
            while (piece + 1 < bulges.length && samples[k] > points[2 * piece + 2]) piece++;
            expect(distance(samples[k], samples[k + 1], points, bulges, piece)).toBeLessThan(error);
          }
        },
      ),
      { seed: 5, numRuns: 60 },
    );
  });

  test('one point is no curve', () => {
    expect(() => fitArcs([1, 1], 1e-3)).toThrow('no curve');
  });
});

/** Of a point from one piece: to its line, or to its circle. */
function distance(
  x: number,
  y: number,
  points: readonly number[],
  bulges: readonly number[],
  piece: number,
): number {
  const [ax, ay, bx, by] = points.slice(2 * piece, 2 * piece + 4);
  const chord = Math.hypot(bx - ax, by - ay);
  const bulge = bulges[piece];
  if (bulge === 0) return Math.abs((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / chord;
  const off = (1 - bulge * bulge) / (4 * bulge);
  const [cx, cy] = [(ax + bx) / 2 - off * (by - ay), (ay + by) / 2 + off * (bx - ax)];
  return Math.abs(Math.hypot(x - cx, y - cy) - Math.hypot(ax - cx, ay - cy));
}
