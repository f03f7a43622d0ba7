import { describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { findFitLimits } from '../../src/strength/find-fit-limits.ts';

/** Nominal sizes inside over 0 to 3, 3 to 6, 6 to 10 mm; the ends belong to the band that they end. */
const small = [
  [1, 3],
  [3.01, 6],
  [6.5, 10],
] as const;

describe('ISO 286 limits to 10 mm', () => {
  // JIS B 0401 (the figures of ISO 286-2), read at docs.steelcam.org (shafts) and in a second copy at docslib.org;
  // holes from a transcription whose lost signs were restored, K7 to R7 read with signs at online.flippingbook.com.
  test.each([
    ['f7', [-6, -10, -13], [-16, -22, -28]],
    ['g6', [-2, -4, -5], [-8, -12, -14]],
    ['h5', [0, 0, 0], [-4, -5, -6]],
    ['h6', [0, 0, 0], [-6, -8, -9]],
    ['h7', [0, 0, 0], [-10, -12, -15]],
    ['h8', [0, 0, 0], [-14, -18, -22]],
    ['h9', [0, 0, 0], [-25, -30, -36]],
    ['k6', [6, 9, 10], [0, 1, 1]],
    ['m6', [8, 12, 15], [2, 4, 6]],
    ['n6', [10, 16, 19], [4, 8, 10]],
    ['p6', [12, 20, 24], [6, 12, 15]],
    ['r6', [16, 23, 28], [10, 15, 19]],
    ['s6', [20, 27, 32], [14, 19, 23]],
    ['G7', [12, 16, 20], [2, 4, 5]],
    ['H6', [6, 8, 9], [0, 0, 0]],
    ['H7', [10, 12, 15], [0, 0, 0]],
    ['H8', [14, 18, 22], [0, 0, 0]],
    ['K7', [0, 3, 5], [-10, -9, -10]],
    ['N7', [-4, -4, -4], [-14, -16, -19]],
    ['P7', [-6, -8, -9], [-16, -20, -24]],
    ['R7', [-10, -11, -13], [-20, -23, -28]],
    ['S7', [-14, -15, -17], [-24, -27, -32]],
  ] as const)('%s', (fit, upper, lower) => {
    small.forEach((sizes, band) => {
      for (const size of sizes)
        expect(findFitLimits(size, fit), `${size} mm`).toEqual({ upper: upper[band], lower: lower[band] });
    });
  });

  test('3 mm is in "up to and including 3"', () => {
    expect(findFitLimits(3, 'h6').lower).toBe(-6);
    expect(findFitLimits(3.001, 'h6').lower).toBe(-8);
  });
});

describe('ISO 286 limits from 10 to 50 mm', () => {
  // A bore and shaft tolerance table at bg.hzpt.com/tech/boretol.htm; h from precisemetal.in/tolerence-table.php.
  const sizes = [14, 18, 30, 50] as const;
  test.each([
    ['H7', [18, 18, 21, 25], [0, 0, 0, 0]],
    ['H8', [27, 27, 33, 39], [0, 0, 0, 0]],
    ['f7', [-16, -16, -20, -25], [-34, -34, -41, -50]],
    ['g6', [-6, -6, -7, -9], [-17, -17, -20, -25]],
    ['k6', [12, 12, 15, 18], [1, 1, 2, 2]],
    ['n6', [23, 23, 28, 33], [12, 12, 15, 17]],
    ['p6', [29, 29, 35, 42], [18, 18, 22, 26]],
    ['s6', [39, 39, 48, 59], [28, 28, 35, 43]],
    ['h6', [0, 0, 0, 0], [-11, -11, -13, -16]],
    ['h7', [0, 0, 0, 0], [-18, -18, -21, -25]],
    ['h9', [0, 0, 0, 0], [-43, -43, -52, -62]],
    ['h11', [0, 0, 0, 0], [-110, -110, -130, -160]],
  ] as const)('%s', (fit, upper, lower) => {
    sizes.forEach((size, i) => {
      expect(findFitLimits(size, fit), `${size} mm`).toEqual({ upper: upper[i], lower: lower[i] });
    });
  });
});

describe('a fit that is not held', () => {
  test.each([
    [0, 'H7'],
    [50.01, 'H7'],
    [Number.NaN, 'H7'],
    [5, 'H3'],
    [5, 'x6'],
    [5, 'k9'],
    [5, 'N8'],
    [5, ''],
  ])('%s mm %s', (size, fit) => {
    expect(() => findFitLimits(size, fit)).toThrow(Fail);
  });
});
