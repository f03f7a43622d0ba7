/** A ratio of whole numbers, both above 0. Not always in lowest terms. */
export interface Fraction {
  readonly num: bigint;
  readonly den: bigint;
}

/** The same ratio in lowest terms. */
export function reduceFraction({ num, den }: Fraction): Fraction {
  let a = num;
  let b = den;
  while (b !== 0n) [a, b] = [b, a % b];
  return { num: num / a, den: den / a };
}

/** A wanted ratio, exactly and as the nearest double. */
export interface Wanted extends Fraction {
  readonly value: number;
}

export function aimAt({ num, den }: Fraction): Wanted {
  return { num, den, value: Number(num) / Number(den) };
}
