import type { Found } from './compare-misses.ts';
import { type Fraction, reduceFraction } from './fraction.ts';

/** A found ratio in lowest terms, as the nearest doubles where beyond 2^53, and found over wanted less 1. */
export function tellRatio(
  { num, den }: Found,
  wanted: Fraction,
): { readonly ratio: { readonly num: number; readonly den: number }; readonly errorRelative: number } {
  const exact = { num: BigInt(num), den: BigInt(den) };
  const ratio = reduceFraction(exact);
  const aim = exact.den * wanted.num;
  return {
    ratio: { num: Number(ratio.num), den: Number(ratio.den) },
    // Subtracted as whole numbers: in doubles an error of 1e-14 would be mostly rounding.
    errorRelative: Number(exact.num * wanted.den - aim) / Number(aim),
  };
}
