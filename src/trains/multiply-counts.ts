import type { Product } from './compare-misses.ts';

/** The product of tooth counts, exactly. */
export function multiplyCounts(counts: readonly number[]): Product {
  let product = 1;
  for (const count of counts) product *= count;
  if (product <= Number.MAX_SAFE_INTEGER) return product;
  return counts.reduce((exact, count) => exact * BigInt(count), 1n);
}
