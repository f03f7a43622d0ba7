import { type FitLetter, type SizeBand, sizeBands } from '../../gear-library/fits.ts';
import { Fail } from '../fail.ts';

/** How far a shaft or bore of one tolerance class may stray from its nominal size, micrometers. */
export interface FitLimits {
  readonly upper: number;
  readonly lower: number;
}

/**
 * The limits of a tolerance class at a nominal size: shafts f to s in lower case, holes F to S in upper case, grades 5
 * to 11 where the class is in use (holes F, G, H any of these; K, M, N, P, R, S grades 6 and 7; shafts k grades 5 to 7).
 *
 * Holes mirror shafts: F, G, H have the shaft's deviation with the sign turned as their lower limit; from K on the
 * upper limit is that too, raised over 3 mm by Δ = IT_n − IT_(n−1) (ISO 286-1, rule for fits of like tightness).
 *
 * Throws Fail `bad-value` for a size outside 0 to 50 mm or a class that is not held here.
 *
 * @example 2 mm H7: 0 to +10; 3 mm h6: −6 to 0; 4 mm P7: −20 to −8
 */
export function findFitLimits(sizeMm: number, fitClass: string): FitLimits {
  const [, letter = '', digits = ''] = /^([fghkmnprsFGHKMNPRS])(5|6|7|8|9|10|11)$/.exec(fitClass) ?? [];
  const small = letter.toLowerCase() as FitLetter;
  const grade = Number(digits) as keyof SizeBand['grades'];
  const isHole = letter !== small;
  const isTight = 'kmnprs'.includes(small);
  if (letter === '' || (isTight && (isHole ? grade > 7 || grade < 6 : small === 'k' && grade > 7))) {
    throw new Fail(
      'bad-value',
      'fit',
      `"${fitClass}" is not a tolerance class held here`,
      'Use shafts f to s (f7, g6, h6, k6, m6, n6, p6, r6, s6) or holes F to S (F8, G7, H7, K7, N7, P7).',
      { fitClass },
    );
  }
  const band = sizeBands.find(({ overMm, upToMm }) => sizeMm > overMm && sizeMm <= upToMm);
  if (!band) {
    throw new Fail(
      'bad-value',
      'fit',
      `no limits are held for ${sizeMm} mm`,
      'Use a size above 0, up to and including 50 mm.',
      { sizeMm },
    );
  }
  const width = band.grades[grade];
  const deviation = band.shaft[small];
  if (!isHole) {
    return isTight ? fromLower(deviation, width) : fromUpper(deviation, width);
  }
  if (!isTight) return fromLower(0 - deviation, width);
  const raise = band.overMm === 0 ? 0 : width - band.grades[(grade - 1) as keyof SizeBand['grades']];
  return fromUpper(0 - deviation + raise, width);
}

function fromUpper(upper: number, width: number): FitLimits {
  return { upper, lower: upper - width };
}

function fromLower(lower: number, width: number): FitLimits {
  return { upper: lower + width, lower };
}
