import type { Fraction } from '../../src/trains/fraction.ts';
import type { TrainQuestion } from '../../src/trains/train-question.ts';

export interface TriedTrain {
  readonly drivers: readonly number[];
  /** Ascending */
  readonly driven: readonly number[];
}

/** The same question answered by trying every train, with whole numbers alone and no code of the search. */
export function tryAllTrains(question: TrainQuestion): TriedTrain[] {
  const { wanted, counts, pairs, top, tolerance } = question;
  const sides = listMultisets(counts, pairs);
  const fitting: (TriedTrain & { num: bigint; den: bigint })[] = [];
  for (const drivers of sides) {
    for (const driven of sides) {
      if (!question.allowsIdlers && driven.some((count) => drivers.includes(count))) continue;
      const isFit = (order: readonly number[]): boolean =>
        (!question.isHunting || order.every((count, k) => gcd(count, drivers[k]) === 1)) &&
        (!question.isReverted || order.every((count, k) => count + drivers[k] === order[0] + drivers[0]));
      if ((question.isHunting || question.isReverted) && !listOrders(driven).some(isFit)) continue;
      const num = driven.reduce((product, count) => product * BigInt(count), 1n);
      const den = drivers.reduce((product, count) => product * BigInt(count), 1n);
      const off = Number(num * wanted.den - den * wanted.num) / Number(den * wanted.num);
      if (tolerance !== undefined && Math.abs(off) > tolerance) continue;
      fitting.push({ drivers, driven, num, den });
    }
  }
  return fitting
    .sort(
      (a, b) =>
        compareMisses(a, b, wanted) ||
        new Set([...a.drivers, ...a.driven]).size - new Set([...b.drivers, ...b.driven]).size ||
        add(a.drivers) + add(a.driven) - add(b.drivers) - add(b.driven) ||
        compareLists(a.drivers, b.drivers) ||
        compareLists(a.driven, b.driven),
    )
    .slice(0, top)
    .map(({ drivers, driven }) => ({ drivers, driven }));
}

/** |ln(num/den over wanted)|, one beside the other, in whole numbers. */
export function compareMisses(a: Fraction, b: Fraction, wanted: Fraction): number {
  const spread = ({ num, den }: Fraction): [bigint, bigint] => {
    const [one, other] = [num * wanted.den, den * wanted.num];
    return one > other ? [one, other] : [other, one];
  };
  const [more, less] = spread(a);
  const [otherMore, otherLess] = spread(b);
  const difference = more * otherLess - otherMore * less;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

export function listMultisets(counts: readonly number[], size: number): number[][] {
  if (size === 0) return [[]];
  return counts.flatMap((count, k) =>
    listMultisets(counts.slice(k), size - 1).map((others) => [count, ...others]),
  );
}

export function compareLists(a: readonly number[], b: readonly number[]): number {
  const k = a.findIndex((value, place) => value !== b[place]);
  return k < 0 ? 0 : a[k] - b[k];
}

export function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

function listOrders(counts: readonly number[]): number[][] {
  if (counts.length === 0) return [[]];
  return counts.flatMap((count, k) =>
    listOrders([...counts.slice(0, k), ...counts.slice(k + 1)]).map((others) => [count, ...others]),
  );
}

function add(counts: readonly number[]): number {
  return counts.reduce((sum, count) => sum + count, 0);
}
