/**
 * The driven counts in an order that pairs each with a driver it shares no factor with, so that every tooth of one
 * meets every tooth of the other before a meeting repeats (a hunting tooth); the least such order, or undefined.
 *
 * @example pairCoprime([12, 25], [24, 35]) = [35, 24]
 */
export function pairCoprime(
  drivers: readonly number[],
  driven: readonly number[],
): readonly number[] | undefined {
  const left = [...driven].sort((a, b) => a - b);
  const mates: number[] = [];
  const pair = (k: number): boolean => {
    if (k === drivers.length) return true;
    for (let i = 0; i < left.length; i++) {
      const count = left[i];
      if ((i > 0 && count === left[i - 1]) || !isCoprime(drivers[k], count)) continue;
      left.splice(i, 1);
      mates.push(count);
      if (pair(k + 1)) return true;
      mates.pop();
      left.splice(i, 0, count);
    }
    return false;
  };
  return pair(0) ? mates : undefined;
}

export function isCoprime(one: number, other: number): boolean {
  let a = one;
  let b = other;
  while (b !== 0) [a, b] = [b, a % b];
  return a === 1;
}
