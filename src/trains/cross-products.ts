import { findFrom } from './find-from.ts';
import { canList, countMultisets, listProducts } from './list-products.ts';
import type { Products } from './products.ts';
import { splitProduct } from './split-product.ts';

/**
 * The products of more counts than one list holds: an outer list times an inner one, each run gathered and sorted when
 * it is asked for. The greatest counts of a product come from the outer list, the rest from the inner one, so every
 * way is there once.
 */
export function crossProducts(counts: readonly number[], size: number): Products {
  const { innerSize, outerSize, outerCounts } = planCross(counts, size);
  const inner = listProducts(counts, innerSize).values;
  const outer = listProducts(outerCounts, outerSize).values;
  // No inner count is greater than any outer one, so neither is the inner mean.
  const limits = outer.map((product) => product ** (innerSize / outerSize) * (1 + slack));
  const isThinned = outerCounts.length < counts.length;
  const isExact = counts[counts.length - 1] ** size <= Number.MAX_SAFE_INTEGER;
  const { single, double } = listPlain(isExact ? counts : [], size);

  const startOf = (k: number, from: number): number => findFrom(inner, from / outer[k]);
  const endOf = (k: number, to: number): number => findFrom(inner, Math.min(to / outer[k], limits[k]));
  const count = (from: number, to: number): number => {
    let entries = 0;
    for (let k = 0; k < outer.length; k++) entries += Math.max(0, endOf(k, to) - startOf(k, from));
    return entries;
  };
  return {
    least: counts[0] ** size,
    greatest: counts[counts.length - 1] ** size,
    isListed: false,
    isExact,
    coverage: countMultisets(outerCounts.length, outerSize) / countMultisets(counts.length, outerSize),
    count,
    take(from, to) {
      const all = new Float64Array(count(from, to));
      let end = 0;
      for (let k = 0; k < outer.length; k++) {
        const stop = endOf(k, to);
        for (let i = startOf(k, from); i < stop; i++) all[end++] = outer[k] * inner[i];
      }
      all.sort();
      let kept = 0;
      for (let k = 0; k < end; k++) if (k === 0 || all[k] !== all[k - 1]) all[kept++] = all[k];
      const values = all.subarray(0, kept);
      return {
        values,
        leastDistinct: (place) => {
          const value = values[place];
          return !isExact || single.has(value) ? 1 : double.has(value) ? 2 : 3;
        },
        leastTeeth: (place) => leastSum(values[place], size),
      };
    },
    splitSteps: 100 + outer.length,
    split(value) {
      const ways: number[][] = [];
      for (let k = 0; k < outer.length; k++) {
        const rest = Math.round(value / outer[k]);
        if (rest > limits[k] || outer[k] * rest !== value) continue;
        const place = findFrom(inner, rest);
        if (inner[place] !== rest) continue;
        const lesser = splitProduct(rest, innerSize, counts);
        for (const greater of splitProduct(outer[k], outerSize, outerCounts)) {
          for (const way of lesser) {
            const isInOrder = way[innerSize - 1] <= greater[0];
            // With outer counts left out, the way that is in order may not be there; then any stands, even twice.
            if (isInOrder) ways.push([...way, ...greater]);
            else if (isThinned) ways.push([...way, ...greater].sort((a, b) => a - b));
          }
        }
      }
      return ways;
    },
  };
}

/** How a product of more counts than one list holds is taken apart; fewer outer counts where even those are too many. */
export function planCross(
  counts: readonly number[],
  size: number,
): { readonly innerSize: number; readonly outerSize: number; readonly outerCounts: readonly number[] } {
  let innerSize = size - 1;
  while (!canList(counts, innerSize)) innerSize--;
  const outerSize = size - innerSize;
  let outerCounts = counts;
  while (countMultisets(outerCounts.length, outerSize) > mostOuter || !canList(outerCounts, outerSize)) {
    outerCounts = outerCounts.filter((_, k) => k % 2 === 0 || k === outerCounts.length - 1);
  }
  return { innerSize, outerSize, outerCounts };
}

/** A sum of counts with a given product is least where all are equal. */
export function leastSum(product: number, size: number): number {
  return Math.ceil(size * product ** (1 / size) * (1 - slack));
}

// Looked through once for every run, so some milliseconds a run.
const mostOuter = 250_000;

/** For powers and roots, which are not exact. */
const slack = 1e-9;

/** The products that one count alone gives, and those that two give. */
function listPlain(counts: readonly number[], size: number): { single: Set<number>; double: Set<number> } {
  const single = new Set(counts.map((count) => count ** size));
  const double = new Set<number>();
  for (const a of counts) {
    for (const b of counts) {
      for (let k = 1; k < size; k++) double.add(a ** k * b ** (size - k));
    }
  }
  return { single, double };
}
