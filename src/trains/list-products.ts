/** All products of so many tooth counts, ascending, each once. */
export interface ProductList {
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
  const teethSpan = spanTeeth(counts, size);
  const greatest = counts[counts.length - 1] ** size;
  const { values, keys } = greatest <= mostMarked ? markProducts(counts, size) : sortProducts(counts, size);
  // Filled by a loop: typed arrays made from an iteration take twice as long as all the rest.
  const leastDistinct = new Uint8Array(keys.length);
  const leastTeeth = new Uint16Array(keys.length);
  for (let k = 0; k < keys.length; k++) {
    leastDistinct[k] = Math.floor(keys[k] / teethSpan);
    leastTeeth[k] = keys[k] - leastDistinct[k] * teethSpan;
  }
  return { values, leastDistinct, leastTeeth };
}

/** Whether the products of so many counts can be listed: few enough for memory, and exact as doubles with their key. */
export function canList(counts: readonly number[], size: number): boolean {
  const greatest = counts[counts.length - 1] ** size;
  return (
    countMultisets(counts.length, size) <= mostListed &&
    (greatest + 1) * (size + 1) * spanTeeth(counts, size) <= Number.MAX_SAFE_INTEGER
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

// One bit each comes to 32 MB. Four counts of 120 and three of 600 stay below.
const mostMarked = 2 ** 28;

/** One more than the counts can add up to. A key is the number of different counts times this, plus their sum. */
function spanTeeth(counts: readonly number[], size: number): number {
  return size * counts[counts.length - 1] + 1;
}

interface KeyedProducts {
  readonly values: Float64Array;
  readonly keys: Float64Array;
}

/** Marks each product in a row of bits, reads them off in order, and goes through the products again for their keys. */
function markProducts(counts: readonly number[], size: number): KeyedProducts {
  const marks = new Uint32Array(((counts[counts.length - 1] ** size) >>> 5) + 1);
  visitProducts(counts, size, (product) => {
    marks[product >>> 5] |= 1 << (product & 31);
  });
  const before = new Uint32Array(marks.length);
  let total = 0;
  for (let word = 0; word < marks.length; word++) {
    before[word] = total;
    total += countBits(marks[word]);
  }
  const values = new Float64Array(total);
  for (let word = 0; word < marks.length; word++) {
    let place = before[word];
    for (let rest = marks[word]; rest !== 0; rest &= rest - 1) {
      values[place++] = 32 * word + countBits((rest & -rest) - 1);
    }
  }
  const keys = new Float64Array(total).fill(Number.POSITIVE_INFINITY);
  visitProducts(counts, size, (product, key) => {
    const word = product >>> 5;
    const place = before[word] + countBits(marks[word] & ((1 << (product & 31)) - 1));
    if (key < keys[place]) keys[place] = key;
  });
  return { values, keys };
}

/** Sorts numbers that hold product and key, which brings the least key of each product to its front. */
function sortProducts(counts: readonly number[], size: number): KeyedProducts {
  const keySpan = (size + 1) * spanTeeth(counts, size);
  const packed = new Float64Array(countMultisets(counts.length, size));
  let end = 0;
  visitProducts(counts, size, (product, key) => {
    packed[end++] = product * keySpan + key;
  });
  packed.sort();
  let kept = 0;
  let before = 0;
  for (const one of packed) {
    const product = Math.floor(one / keySpan);
    if (product === before) continue;
    before = product;
    packed[kept++] = one;
  }
  const values = packed.slice(0, kept).map((one) => Math.floor(one / keySpan));
  return { values, keys: values.map((product, k) => packed[k] - product * keySpan) };
}

function visitProducts(
  counts: readonly number[],
  size: number,
  visit: (product: number, key: number) => void,
): void {
  const teethSpan = spanTeeth(counts, size);
  const descend = (from: number, left: number, product: number, key: number): void => {
    for (let k = from; k < counts.length; k++) {
      const count = counts[k];
      const isRepeat = k === from && left < size;
      const nextKey = key + count + (isRepeat ? 0 : teethSpan);
      if (left === 1) visit(product * count, nextKey);
      else descend(k, left - 1, product * count, nextKey);
    }
  };
  descend(0, size, 1, 0);
}

/** Set bits of 32: Hacker's Delight, section 5-1. */
function countBits(word: number): number {
  let bits = word - ((word >>> 1) & 0x55555555);
  bits = (bits & 0x33333333) + ((bits >>> 2) & 0x33333333);
  return Math.imul((bits + (bits >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
