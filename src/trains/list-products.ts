/** All products of so many tooth counts, ascending, each once. */
export interface ProductList {
  readonly size: number;
  readonly values: Float64Array;
  /** Of the counts that multiply to a value: the fewest different ones, and the least sum among those with as few */
  readonly leastDistinct: Uint8Array;
  readonly leastTeeth: Uint16Array;
}

/**
 * Every product of `size` tooth counts (repeats allowed) out of `counts`, which ascend. The products must fit
 * `canList`.
 */
export function listProducts(counts: readonly number[], size: number): ProductList {
  const { teethSpan, keySpan } = packing(counts, size);
  const packed = new Float64Array(countMultisets(counts.length, size));
  let end = 0;
  const descend = (from: number, left: number, product: number, key: number, isFirst: boolean): void => {
    for (let k = from; k < counts.length; k++) {
      const count = counts[k];
      const isNew = isFirst || k > from;
      const nextKey = key + count + (isNew ? teethSpan : 0);
      if (left === 1) packed[end++] = product * count * keySpan + nextKey;
      else descend(k, left - 1, product * count, nextKey, false);
    }
  };
  if (size === 0) packed[end++] = keySpan;
  else descend(0, size, 1, 0, true);
  // One number holds product and key, so that sorting brings the least key of each product to the front.
  packed.sort();
  let kept = 0;
  let before = 0;
  for (let k = 0; k < packed.length; k++) {
    const product = Math.floor(packed[k] / keySpan);
    if (product === before) continue;
    before = product;
    packed[kept++] = packed[k];
  }
  const values = new Float64Array(kept);
  const leastDistinct = new Uint8Array(kept);
  const leastTeeth = new Uint16Array(kept);
  for (let k = 0; k < kept; k++) {
    const product = Math.floor(packed[k] / keySpan);
    const key = packed[k] - product * keySpan;
    values[k] = product;
    leastDistinct[k] = Math.floor(key / teethSpan);
    leastTeeth[k] = key % teethSpan;
  }
  return { size, values, leastDistinct, leastTeeth };
}

/** Whether the products of so many counts can be listed: few enough for memory, and exact as doubles with their key. */
export function canList(counts: readonly number[], size: number): boolean {
  const greatest = counts[counts.length - 1] ** size;
  return (
    countMultisets(counts.length, size) <= mostListed &&
    (greatest + 1) * packing(counts, size).keySpan <= Number.MAX_SAFE_INTEGER
  );
}

/** How many ways there are to take `size` out of `kinds`, repeats allowed, order aside. */
export function countMultisets(kinds: number, size: number): number {
  let ways = 1;
  for (let k = 0; k < size; k++) ways = (ways * (kinds + k)) / (k + 1);
  return Math.round(ways);
}

// 80 MB of doubles, and about a second to sort.
const mostListed = 10_000_000;

function packing(counts: readonly number[], size: number): { teethSpan: number; keySpan: number } {
  const teethSpan = size * counts[counts.length - 1] + 1;
  return { teethSpan, keySpan: (size + 1) * teethSpan };
}
