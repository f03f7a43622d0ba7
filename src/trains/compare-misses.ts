import type { Fraction, Wanted } from './fraction.ts';

/** A whole number: as a number where that is exact (up to 2^53), else as a bigint. */
export type Product = number | bigint;

/** A ratio that was found: what the driven wheels multiply to over what the drivers do. */
export interface Found {
  readonly num: Product;
  readonly den: Product;
}

/**
 * Which of two found ratios misses the wanted one by less, |ln(found/wanted)|: negative for the first, positive for
 * the second, 0 only where both miss by exactly the same. Doubles decide where they can, whole numbers otherwise.
 */
export function compareMisses(one: Found, other: Found, wanted: Wanted): number {
  const miss = measureMiss(one, wanted.value);
  const otherMiss = measureMiss(other, wanted.value);
  if (Math.abs(miss - otherMiss) > roundings * Math.max(miss, otherMiss)) return miss - otherMiss;
  if (isSame(one, other)) return 0;
  const [greater, lesser] = spread(one, wanted);
  const [otherGreater, otherLesser] = spread(other, wanted);
  const left = greater * otherLesser;
  const right = otherGreater * lesser;
  return left < right ? -1 : left > right ? 1 : 0;
}

/** max(found/wanted, wanted/found) in double precision: it grows with |ln| and needs no logarithm. */
export function measureMiss({ num, den }: Found, wanted: number): number {
  const part = Number(num) / (Number(den) * wanted);
  return part >= 1 ? part : 1 / part;
}

/** A dozen operations round in two misses, each by 2^-53 of its result at most; three times that. */
export const roundings = 4e-15;

function isSame(one: Found, other: Found): boolean {
  if (typeof one.num !== 'number' || typeof one.den !== 'number') return false;
  if (typeof other.num !== 'number' || typeof other.den !== 'number') return false;
  const left = one.num * other.den;
  return left <= Number.MAX_SAFE_INTEGER && left === one.den * other.num;
}

function spread({ num, den }: Found, wanted: Fraction): [bigint, bigint] {
  const found = BigInt(num) * wanted.den;
  const aim = BigInt(den) * wanted.num;
  return found > aim ? [found, aim] : [aim, found];
}
