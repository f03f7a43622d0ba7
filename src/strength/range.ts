/** A number with how far it may be off: what is usual between the lowest and the highest that the data allow. */
export interface Range {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** The product of ranges of positive numbers: lows with lows, highs with highs. */
export function multiply(...factors: readonly Range[]): Range {
  return factors.reduce(
    (product, one) => ({
      value: product.value * one.value,
      low: product.low * one.low,
      high: product.high * one.high,
    }),
    exactly(1),
  );
}

/** One range over another: its low over the other's high, and the reverse. The other must be above 0. */
export function divide(one: Range, other: Range): Range {
  return { value: one.value / other.value, low: one.low / other.high, high: one.high / other.low };
}

export function exactly(value: number): Range {
  return { value, low: value, high: value };
}

/** The lesser of two ranges, number by number. */
export function lesser(one: Range, other: Range): Range {
  return {
    value: Math.min(one.value, other.value),
    low: Math.min(one.low, other.low),
    high: Math.min(one.high, other.high),
  };
}
