import { compareMisses, type Found, measureMiss, type Product, roundings } from './compare-misses.ts';
import type { Wanted } from './fraction.ts';

/** A train, and what its place depends on. Lists are in the order in which they are compared. */
export interface Ranked extends Found {
  /** How many different wheels must be got for it */
  readonly newWheels: number;
  readonly teeth: number;
  readonly drivers: readonly number[];
  readonly driven: readonly number[];
  /** Tells apart what is equal in everything else */
  readonly picks?: readonly number[];
}

export interface BestList<T extends Ranked> {
  /** Found over wanted, or its inverse, of anything that can still enter: this at most, rounding allowed for */
  readonly reach: () => number;
  /**
   * Whether a train that is known by its ratio alone, and by least values of the next two, could enter. Never says
   * no wrongly; the products must be exact.
   */
  readonly couldEnter: (found: Found, newWheelsAtLeast: number, teethAtLeast: number) => boolean;
  readonly add: (train: T) => void;
  readonly list: () => readonly T[];
}

/**
 * Keeps the best `top` of the trains that are added, best first: least |ln(found/wanted)|, then fewest new wheels,
 * then fewest teeth, then drivers, driven and picks ascending. Nothing enters that is off by more than `tolerance`,
 * |found/wanted - 1|, nor a train that is there already.
 */
export function keepBest<T extends Ranked>(
  wanted: Wanted,
  top: number,
  tolerance = Number.POSITIVE_INFINITY,
): BestList<T> {
  const kept: T[] = [];
  const widest = tolerance < 1 ? 1 / (1 - tolerance) : Number.POSITIVE_INFINITY;
  let reach = widest * (1 + roundings);
  let last: (Found & Pick<Ranked, 'newWheels' | 'teeth'>) | undefined;

  const isWithin = ({ num, den }: Found): boolean => {
    if (tolerance === Number.POSITIVE_INFINITY) return true;
    if (tolerance === 0) return BigInt(num) * wanted.den === BigInt(den) * wanted.num;
    return (
      Math.abs(Number(num) / (Number(den) * wanted.value) - 1) <= tolerance * (1 + roundings) + roundings
    );
  };
  return {
    reach: () => reach,
    couldEnter(found, newWheelsAtLeast, teethAtLeast) {
      if (!isWithin(found)) return false;
      if (!last) return true;
      const order =
        compareMisses(found, last, wanted) || newWheelsAtLeast - last.newWheels || teethAtLeast - last.teeth;
      return order <= 0;
    },
    add(train) {
      if (!isWithin(train)) return;
      let place = kept.length;
      while (place > 0) {
        const order = compareRanked(train, kept[place - 1], wanted);
        if (order === 0) return;
        if (order > 0) break;
        place--;
      }
      if (place >= top) return;
      kept.splice(place, 0, train);
      if (kept.length > top) kept.pop();
      if (kept.length < top) return;
      const { num, den, newWheels, teeth } = kept[top - 1];
      last = { ...lowerTerms(num, den), newWheels, teeth };
      reach = Math.min(widest, measureMiss(last, wanted.value)) * (1 + roundings);
    },
    list: () => kept,
  };
}

/** In lowest terms most comparisons stay within exact doubles. */
function lowerTerms(num: Product, den: Product): Found {
  if (typeof num !== 'number' || typeof den !== 'number') return { num, den };
  let a = num;
  let b = den;
  while (b !== 0) [a, b] = [b, a % b];
  return { num: num / a, den: den / a };
}

function compareRanked(one: Ranked, other: Ranked, wanted: Wanted): number {
  return (
    compareMisses(one, other, wanted) ||
    one.newWheels - other.newWheels ||
    one.teeth - other.teeth ||
    compareLists(one.drivers, other.drivers) ||
    compareLists(one.driven, other.driven) ||
    compareLists(one.picks ?? [], other.picks ?? [])
  );
}

function compareLists(one: readonly number[], other: readonly number[]): number {
  for (let k = 0; k < one.length; k++) if (one[k] !== other[k]) return one[k] - other[k];
  return 0;
}
