/** An exact fraction in lowest terms; `den` is positive. */
export interface Rational {
  readonly num: bigint;
  readonly den: bigint;
}

/**
 * A fraction in lowest terms. A denominator of 0 is a plain Error.
 *
 * @example makeRational(6n, -4n) = −3/2
 */
export function makeRational(num: bigint, den: bigint): Rational {
  if (den === 0n) throw new Error('a fraction over 0');
  const shared = greatestCommonDivisor(num, den) * (den < 0n ? -1n : 1n);
  return { num: num / shared, den: den / shared };
}

/**
 * The decimal number as it is written, exactly: 12.4 is 62/5, not the nearest binary fraction. Not finite is a plain
 * Error.
 */
export function rationalOf(value: number): Rational {
  if (!Number.isFinite(value)) throw new Error(`no fraction for ${value}`);
  const [digits, exponent = '0'] = String(value).split('e');
  const [whole, part = ''] = digits.split('.');
  const shift = part.length - Number(exponent);
  const num = BigInt(whole + part);
  return shift >= 0 ? makeRational(num, 10n ** BigInt(shift)) : { num: num * 10n ** BigInt(-shift), den: 1n };
}

/** Shared factors are taken out crosswise before multiplying, which keeps a long product times a small ratio cheap. */
export function multiply(a: Rational, b: Rational): Rational {
  if (a.num === 0n || b.num === 0n) return zero;
  const one = greatestCommonDivisor(a.num, b.den);
  const other = greatestCommonDivisor(b.num, a.den);
  return { num: (a.num / one) * (b.num / other), den: (a.den / other) * (b.den / one) };
}

/** a/b; b of 0 is a plain Error. */
export function divide(a: Rational, b: Rational): Rational {
  if (b.num === 0n) throw new Error('divided by 0');
  return multiply(a, b.num < 0n ? { num: -b.den, den: -b.num } : { num: b.den, den: b.num });
}

export function add(a: Rational, b: Rational): Rational {
  return makeRational(a.num * b.den + b.num * a.den, a.den * b.den);
}

export function negate(a: Rational): Rational {
  return { num: -a.num, den: a.den };
}

export function withoutSign(a: Rational): Rational {
  return a.num < 0n ? negate(a) : a;
}

export function isSame(a: Rational, b: Rational): boolean {
  return a.num === b.num && a.den === b.den;
}

/**
 * The nearest double but for the last bit, however long the fraction is; beyond the doubles ±Infinity or 0.
 */
export function toNumber({ num, den }: Rational): number {
  if (num === 0n) return 0;
  if (isShort(num) && isShort(den)) return Number(num) / Number(den);
  // Enough bits for a double, then the power of two that was taken out.
  const shift = 64 - (bitLength(num) - bitLength(den));
  const quotient = shift >= 0 ? (num << BigInt(shift)) / den : num / (den << BigInt(-shift));
  // In two steps, for 2 ** −shift alone may leave the range where the product doesn't.
  const half = Math.trunc(shift / 2);
  return Number(quotient) * 2 ** -half * 2 ** (half - shift);
}

export const zero: Rational = { num: 0n, den: 1n };
export const unity: Rational = { num: 1n, den: 1n };

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [large, small] = [a < 0n ? -a : a, b < 0n ? -b : b];
  while (small > 0n) [large, small] = [small, large % small];
  return large;
}

function isShort(value: bigint): boolean {
  return value <= BigInt(Number.MAX_SAFE_INTEGER) && value >= BigInt(Number.MIN_SAFE_INTEGER);
}

function bitLength(value: bigint): number {
  return (value < 0n ? -value : value).toString(16).length * 4;
}
