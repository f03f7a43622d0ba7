import { Fail } from '../fail.ts';
import { type Fraction, reduceFraction } from './fraction.ts';

/**
 * The exact ratio that a person typed, in lowest terms: a number with point or comma, a fraction `12/7`, or a
 * proportion `1:6.931`, whose parts may be decimals too. Nothing is rounded: 12.5 is 25/2.
 *
 * Throws Fail `bad-value` for 0, a negative, anything that is not a number, a comma and a point in one number (which
 * of them marks thousands can't be told), and ratios beyond a million to one either way.
 *
 * @param field what the text was typed into, for the message
 * @example parseRatio('1:6,931') is 1000/6931
 */
export function parseRatio(text: string, field = ''): Fraction {
  if (text.length > longest) throw refuse(text, field, 'the text is too long for a ratio');
  const parts = text.split(/[/:]/).map((part) => part.trim());
  if (parts.length > 2) throw refuse(text, field, 'a ratio has two parts at most');
  const [over, under] = parts.map((part) => readNumber(part, text, field));
  if (over.num === 0n || under?.num === 0n) throw refuse(text, field, 'a ratio is never 0');
  const ratio = under ? { num: over.num * under.den, den: over.den * under.num } : over;
  if (ratio.num > ratio.den * farthest || ratio.den > ratio.num * farthest) {
    throw refuse(text, field, 'more than a million to one is no gear ratio');
  }
  return reduceFraction(ratio);
}

function readNumber(part: string, text: string, field: string): Fraction {
  if (/^[-−–]\s*[\d.,]/.test(part))
    throw refuse(text, field, 'a ratio is above 0; the direction is another matter');
  const found = /^\+?(?:(\d+)(?:[.,](\d*))?|[.,](\d+))(?:e([+-]?\d{1,2}))?$/i.exec(part);
  if (!found) {
    const isMixed = /^[\d.,]+$/.test(part) && part !== '.' && part !== ',';
    throw refuse(text, field, isMixed ? 'more than one point or comma in a number' : 'that is not a ratio');
  }
  const decimals = found[2] ?? found[3] ?? '';
  const digits = BigInt(`${found[1] ?? ''}${decimals}`);
  const power = Number(found[4] ?? 0) - decimals.length;
  return power >= 0
    ? { num: digits * 10n ** BigInt(power), den: 1n }
    : { num: digits, den: 10n ** BigInt(-power) };
}

// Two numbers of thirty digits; anything longer is not a field's content.
const longest = 64;

// Eight pairs of 1:5 come to 390,625.
const farthest = 1_000_000n;

function refuse(text: string, field: string, message: string): Fail {
  return new Fail(
    'bad-value',
    field,
    message,
    'Give input speed over output speed, such as 12.5, 12,5, 12/7 or 1:6.931.',
    { typed: text.slice(0, longest) },
  );
}
