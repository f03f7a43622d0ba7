import { compareMisses, type Found } from './compare-misses.ts';
import type { Wanted } from './fraction.ts';

/** A train with its costs; of trains equal in ratio's error and costs, fewer teeth and then lower places come first. */
export interface CostedTrain extends Found {
  readonly costs: readonly number[];
  readonly teeth: number;
  readonly picks: readonly number[];
}

export interface Front {
  readonly add: (train: CostedTrain) => void;
  /** By rising |ln(found/wanted)|, then by costs */
  readonly list: () => readonly CostedTrain[];
}

/** Keeps, of the trains that are added, those that no other beats: as good in all respects and better in one. */
export function keepFront(wanted: Wanted): Front {
  let kept: CostedTrain[] = [];
  return {
    add(train) {
      for (const other of kept) {
        if (!isNoDearer(other.costs, train.costs)) continue;
        const order = compareMisses(other, train, wanted);
        if (order > 0) continue;
        if (order < 0 || !isNoDearer(train.costs, other.costs) || comesFirst(other, train)) return;
      }
      kept = kept.filter(
        (other) => !isNoDearer(train.costs, other.costs) || compareMisses(train, other, wanted) > 0,
      );
      kept.push(train);
    },
    list: () => [...kept].sort((a, b) => compareMisses(a, b, wanted) || compareLists(a.costs, b.costs)),
  };
}

function isNoDearer(one: readonly number[], other: readonly number[]): boolean {
  for (let k = 0; k < one.length; k++) if (one[k] > other[k]) return false;
  return true;
}

function comesFirst(one: CostedTrain, other: CostedTrain): boolean {
  return (one.teeth - other.teeth || compareLists(one.picks, other.picks)) <= 0;
}

function compareLists(one: readonly number[], other: readonly number[]): number {
  for (let k = 0; k < one.length; k++) if (one[k] !== other[k]) return one[k] - other[k];
  return 0;
}
