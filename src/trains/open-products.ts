import { crossProducts } from './cross-products.ts';
import { findFrom } from './find-from.ts';
import { canList, listProducts } from './list-products.ts';
import type { Products } from './products.ts';
import { splitProduct } from './split-product.ts';

/** The products of `size` counts out of `counts`, which ascend: as one list where that fits, else as a list times a list. */
export function openProducts(counts: readonly number[], size: number): Products {
  if (!canList(counts, size)) return crossProducts(counts, size);
  const { values, leastDistinct, leastTeeth } = listProducts(counts, size);
  return {
    least: values[0],
    greatest: values[values.length - 1],
    isListed: true,
    isExact: true,
    coverage: 1,
    count: (from, to) => findFrom(values, to) - findFrom(values, from),
    take(from, to) {
      const start = findFrom(values, from);
      return {
        values: values.subarray(start, findFrom(values, to)),
        leastDistinct: (place) => leastDistinct[start + place],
        leastTeeth: (place) => leastTeeth[start + place],
      };
    },
    // Roughly: it only spaces the yields.
    splitSteps: 100,
    split: (value) => splitProduct(value, size, counts),
  };
}
