import { type Rational, toNumber } from '../numeric/rational.ts';
import type { Ratio } from './drive-report.ts';

/**
 * A fraction for the report. Without whole numbers where it isn't exact or they have more digits than JSON's numbers
 * hold; undefined where even its value is beyond them.
 */
export function tellRatio(fraction: Rational, isExact: boolean): Ratio | undefined {
  const value = toNumber(fraction);
  if (!Number.isFinite(value) || (value === 0 && fraction.num !== 0n)) return undefined;
  const [num, den] = [Number(fraction.num), Number(fraction.den)];
  const isWritable = isExact && Number.isSafeInteger(num) && Number.isSafeInteger(den);
  return { num: isWritable ? num : null, den: isWritable ? den : null, value };
}
