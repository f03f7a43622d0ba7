/**
 * Limits for shafts and bores of small machines to 50 mm, after ISO 286 (JIS B 0401 prints the same figures):
 * tolerance grades and fundamental deviations, micrometers. A size belongs to the band that it is over the start of,
 * up to and including the end: 3 mm is in "over 0 up to 3".
 */
export interface SizeBand {
  readonly overMm: number;
  readonly upToMm: number;
  /** Width of the tolerance, IT5 to IT11 */
  readonly grades: Readonly<Record<5 | 6 | 7 | 8 | 9 | 10 | 11, number>>;
  /** Shafts: the deviation nearest zero; from f to h the upper, from k on the lower */
  readonly shaft: Readonly<Record<FitLetter, number>>;
  readonly source: string;
}

export type FitLetter = 'f' | 'g' | 'h' | 'k' | 'm' | 'n' | 'p' | 'r' | 's';

const source =
  'ISO 286-2 / JIS B 0401 tables, to 10 mm read in two published copies; f, g, h, k, n, p, s to 50 mm read in a third; m and r over 10 mm: value from memory';

function band(
  overMm: number,
  upToMm: number,
  [it5, it6, it7, it8, it9, it10, it11]: readonly number[],
  [f, g, k, m, n, p, r, s]: readonly number[],
): SizeBand {
  const grades = { 5: it5, 6: it6, 7: it7, 8: it8, 9: it9, 10: it10, 11: it11 };
  return { overMm, upToMm, grades, shaft: { f, g, h: 0, k, m, n, p, r, s }, source };
}

export const sizeBands: readonly SizeBand[] = [
  band(0, 3, [4, 6, 10, 14, 25, 40, 60], [-6, -2, 0, 2, 4, 6, 10, 14]),
  band(3, 6, [5, 8, 12, 18, 30, 48, 75], [-10, -4, 1, 4, 8, 12, 15, 19]),
  band(6, 10, [6, 9, 15, 22, 36, 58, 90], [-13, -5, 1, 6, 10, 15, 19, 23]),
  band(10, 18, [8, 11, 18, 27, 43, 70, 110], [-16, -6, 1, 7, 12, 18, 23, 28]),
  band(18, 30, [9, 13, 21, 33, 52, 84, 130], [-20, -7, 2, 8, 15, 22, 28, 35]),
  band(30, 50, [11, 16, 25, 39, 62, 100, 160], [-25, -9, 2, 9, 17, 26, 34, 43]),
];
