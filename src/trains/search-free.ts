import { leastSum } from './cross-products.ts';
import type { Wanted } from './fraction.ts';
import { joinSorted } from './join-sorted.ts';
import type { BestList } from './keep-best.ts';
import { countMultisets } from './list-products.ts';
import { multiplyCounts } from './multiply-counts.ts';
import { openProducts } from './open-products.ts';
import { pairCoprime } from './pair-coprime.ts';
import type { ProductRun, Products } from './products.ts';
import type { Stride } from './search-progress.ts';
import type { Candidate, TrainQuestion } from './train-question.ts';

/**
 * Adds to `best` every train that belongs there, of drivers and driven that any count may be. Products of drivers are
 * taken run by run, each against the run of driven products that the ratio calls for; where one list holds them all
 * there is one run. Yields what it did; `searched` is 1 at the end where all was looked at.
 *
 * @param mostInRun how many products are gathered and sorted at a time
 */
export function* searchFree(
  question: TrainQuestion,
  wanted: Wanted,
  best: BestList<Candidate>,
  products: Products = openProducts(question.counts, question.pairs),
  mostInRun = usualRun,
): Generator<Stride, void, unknown> {
  const { counts, pairs } = question;
  const most = products.isListed ? Number.POSITIVE_INFINITY : mostInRun;
  const end = products.greatest * margin;
  const entries = products.count(0, end);
  const share = products.coverage ** 2;
  const middle = Math.min(
    Math.max(Math.sqrt((products.least * products.greatest) / wanted.value), products.least),
    products.greatest,
  );
  let searched = 0;

  /** Drivers in [from, to) against all driven that come within `reach` of the ratio. */
  function* search(from: number, to: number, reach: number): Generator<Stride, void, unknown> {
    const last = Math.min(wanted.value * to * reach * margin, end);
    let start = Math.max((wanted.value * from) / reach / margin, products.least);
    if (start >= last || products.count(start, last) === 0) return;
    const drivers = products.take(from, to);
    if (!products.isListed) yield { steps: products.count(from, to), searched };
    while (start < last) {
      const stop = findRunEnd(products, start, last, most);
      const driven = products.take(start, stop);
      if (!products.isListed) yield { steps: products.count(start, stop), searched };
      const meet = prepareMeeting(question, products, best, drivers, driven);
      for (const steps of joinSorted(driven.values, drivers.values, wanted.value, best.reach, meet)) {
        yield { steps, searched };
      }
      start = stop;
    }
  }

  if (products.isListed) {
    yield { steps: countMultisets(counts.length, pairs), searched };
  } else {
    // A first sample where products lie densest: what it finds keeps every later run narrow.
    yield* search(middle, findRunEnd(products, middle, end, mostInSample), 1);
  }
  let done = 0;
  // From the middle up, then what is below: a search that is stopped has seen the dense part.
  for (const [low, high] of [
    [products.isListed ? products.least : middle, end],
    [products.least, products.isListed ? products.least : middle],
  ]) {
    for (let from = low; from < high; ) {
      const to = findRunEnd(products, from, high, most);
      yield* search(from, to, best.reach());
      done += products.count(from, to);
      searched = Math.min((share * done) / entries, almostAll);
      yield { steps: 0, searched };
      from = to;
    }
  }
  yield { steps: 0, searched: share };
}

/** Rounding must not call a search done before it is. */
const almostAll = 1 - 1e-9;

/** How far a run from `from` may go with `most` values at most. */
function findRunEnd(products: Products, from: number, end: number, most: number): number {
  if (products.count(from, end) <= most) return end;
  let factor = end / from;
  do factor = Math.sqrt(factor);
  while (factor > margin && products.count(from, from * factor) > most);
  return from * factor;
}

// 32 MB of doubles, half a second to sort.
const usualRun = 4_000_000;

const mostInSample = 200_000;

/** Wider than any rounding of a product or a bound, and narrow enough to cost nothing. */
const margin = 1 + 1e-12;

/** What is done where a product of driven wheels comes near enough to one of drivers: their trains are built and added. */
function prepareMeeting(
  { pairs, allowsIdlers = false, isHunting = false }: TrainQuestion,
  products: Products,
  best: BestList<Candidate>,
  driverRun: ProductRun,
  drivenRun: ProductRun,
): (place: number, placeAgainst: number) => number {
  const couldEnter = (i: number, j: number): boolean => {
    const num = drivenRun.values[i];
    const den = driverRun.values[j];
    if (allowsIdlers) {
      const newWheels = Math.max(drivenRun.leastDistinct(i), driverRun.leastDistinct(j));
      return best.couldEnter({ num, den }, newWheels, leastSum(num, pairs) + leastSum(den, pairs));
    }
    // Nothing stands on both sides, so what is least on each adds up.
    const newWheels = drivenRun.leastDistinct(i) + driverRun.leastDistinct(j);
    return best.couldEnter({ num, den }, newWheels, drivenRun.leastTeeth(i) + driverRun.leastTeeth(j));
  };

  return (i, j) => {
    if (products.isExact && !couldEnter(i, j)) return 0;
    const drivenWays = rankWays(products.split(drivenRun.values[i]));
    const driverWays = rankWays(products.split(driverRun.values[j]));
    for (const [drivers, driverDistinct, driverTeeth] of driverWays) {
      for (const [driven, drivenDistinct, drivenTeeth] of drivenWays) {
        const found = { num: multiplyCounts(driven), den: multiplyCounts(drivers) };
        const teeth = driverTeeth + drivenTeeth;
        const apart = driverDistinct + drivenDistinct;
        if (!allowsIdlers && !best.couldEnter(found, apart, teeth)) {
          // All that follow for these drivers have the same ratio, if it is exact, and as many wheels and teeth or more.
          if (products.isExact) break;
          continue;
        }
        const distinct = countDistinct(drivers, driven);
        if (distinct.isShared && !allowsIdlers) continue;
        if (!best.couldEnter(found, distinct.count, teeth)) continue;
        const mates = isHunting ? pairCoprime(drivers, driven) : driven;
        if (mates) best.add({ ...found, newWheels: distinct.count, teeth, drivers, driven, mates });
      }
    }
    return 2 * products.splitSteps + driverWays.length * drivenWays.length;
  };
}

type Way = readonly [counts: readonly number[], distinct: number, teeth: number];

/** Ways with what ranks them, the fewest different counts and then the fewest teeth first. */
function rankWays(ways: readonly (readonly number[])[]): Way[] {
  return ways
    .map((counts): Way => [counts, countDistinct(counts, []).count, sum(counts)])
    .sort((a, b) => a[1] - b[1] || a[2] - b[2]);
}

/** How many different counts two ascending lists hold, and whether any stands in both. */
export function countDistinct(
  one: readonly number[],
  other: readonly number[],
): { readonly count: number; readonly isShared: boolean } {
  let count = 0;
  let isShared = false;
  let i = 0;
  let j = 0;
  while (i < one.length || j < other.length) {
    const value = Math.min(one[i] ?? Number.POSITIVE_INFINITY, other[j] ?? Number.POSITIVE_INFINITY);
    if (one[i] === value && other[j] === value) isShared = true;
    while (one[i] === value) i++;
    while (other[j] === value) j++;
    count++;
  }
  return { count, isShared };
}

function sum(counts: readonly number[]): number {
  let total = 0;
  for (const count of counts) total += count;
  return total;
}
