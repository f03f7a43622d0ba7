import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isSimplePolygon, signedArea } from '../../src/plane/polygon.ts';

const polygon = (...points: readonly number[]): Float64Array => Float64Array.from(points);

/** Points about the origin at rising angles: simple whatever the radii. */
function star(radii: readonly number[]): Float64Array {
  return Float64Array.from(
    radii.flatMap((radius, k) => {
      const angle = (2 * Math.PI * k) / radii.length;
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    }),
  );
}

/** Every pair of edges, by the sign of exact integer cross products. */
function isSimpleByAllPairs(points: Float64Array): boolean {
  const n = points.length / 2;
  const at = (k: number): [number, number] => [points[2 * (k % n)], points[2 * (k % n) + 1]];
  const turn = (a: [number, number], b: [number, number], c: [number, number]): number =>
    Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
  for (let i = 0; i < n; i++) {
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      const [a, b, c, d] = [at(i), at(i + 1), at(j), at(j + 1)];
      const s = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
      if (s[0] * s[1] < 0 && s[2] * s[3] < 0) return false;
      // On one line or ending on each other: they meet where their boxes do and each straddles the other's line.
      const boxes =
        Math.max(a[0], b[0]) >= Math.min(c[0], d[0]) &&
        Math.max(c[0], d[0]) >= Math.min(a[0], b[0]) &&
        Math.max(a[1], b[1]) >= Math.min(c[1], d[1]) &&
        Math.max(c[1], d[1]) >= Math.min(a[1], b[1]);
      if (boxes && s[0] * s[1] <= 0 && s[2] * s[3] <= 0) return false;
    }
  }
  return true;
}

describe('area', () => {
  test('is positive counter-clockwise, changes sign with direction and stays when turned or moved', () => {
    const square = polygon(0, 0, 2, 0, 2, 2, 0, 2);
    expect(signedArea(square)).toBe(4);
    expect(signedArea(polygon(0, 2, 2, 2, 2, 0, 0, 0))).toBe(-4);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 1, max: 5, noNaN: true }), { minLength: 3, maxLength: 40 }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (radii, angle) => {
          const points = star(radii);
          const area = signedArea(points);
          const moved = points.slice();
          for (let k = 0; k < points.length; k += 2) {
            moved[k] = points[k] * Math.cos(angle) - points[k + 1] * Math.sin(angle) + 7;
            moved[k + 1] = points[k] * Math.sin(angle) + points[k + 1] * Math.cos(angle) - 3;
          }
          return area > 0 && Math.abs(signedArea(moved) / area - 1) < 1e-12;
        },
      ),
      { seed: 5, numRuns: 200 },
    );
  });
});

describe('a polygon is simple where no two edges meet', () => {
  test('bow ties, touching corners and edges that run back are not', () => {
    expect(isSimplePolygon(polygon(0, 0, 2, 0, 2, 2, 0, 2))).toBe(true);
    expect(isSimplePolygon(polygon(0, 0, 2, 2, 2, 0, 0, 2))).toBe(false);
    expect(isSimplePolygon(polygon(0, 0, 4, 0, 4, 4, 2, 0, 0, 4))).toBe(false);
  });

  test('agrees with trying every pair on 2,000 random polygons of whole numbers', () => {
    const corner = fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 30 }));
    let simple = 0;
    fc.assert(
      fc.property(fc.uniqueArray(corner, { minLength: 4, maxLength: 8, selector: String }), (corners) => {
        const points = Float64Array.from(corners.flat());
        const isSimple = isSimpleByAllPairs(points);
        if (isSimple) simple++;
        return isSimplePolygon(points) === isSimple;
      }),
      { seed: 6, numRuns: 2000 },
    );
    expect(simple).toBeGreaterThan(100);
  });

  test('sees one crossing among ten thousand edges', () => {
    const radii = Array.from({ length: 10_000 }, (_, k) => 10 + (k % 20 < 10 ? 1 : 0));
    const points = star(radii);
    expect(isSimplePolygon(points)).toBe(true);
    // Two neighbors change places.
    for (const axis of [0, 1]) {
      const kept = points[2 * 5005 + axis];
      points[2 * 5005 + axis] = points[2 * 5006 + axis];
      points[2 * 5006 + axis] = kept;
    }
    expect(isSimplePolygon(points)).toBe(false);
  });
});
