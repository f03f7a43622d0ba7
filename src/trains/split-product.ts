import { findFrom } from './find-from.ts';

/**
 * Every way to write `product` as `size` tooth counts out of `counts` (which ascend; repeats allowed), each ascending.
 * Exact for products up to 2^53.
 */
export function splitProduct(product: number, size: number, counts: readonly number[]): number[][] {
  const ways: number[][] = [];
  const taken: number[] = [];
  const descend = (rest: number, left: number, from: number): void => {
    if (left === 0) {
      if (rest === 1) ways.push([...taken]);
      return;
    }
    if (left === 1) {
      const place = findFrom(counts, rest);
      if (place >= from && counts[place] === rest) ways.push([...taken, rest]);
      return;
    }
    for (let k = from; k < counts.length; k++) {
      const count = counts[k];
      if (count ** left > rest) return;
      if (rest % count !== 0) continue;
      taken.push(count);
      descend(rest / count, left - 1, k);
      taken.pop();
    }
  };
  descend(product, size, 0);
  return ways;
}
