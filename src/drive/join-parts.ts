import type { WeighedPart } from '../readings/weigh-space.ts';
import type { WeighedWheel } from '../readings/weigh-wheel.ts';
import type { ToothState } from './tooth-states.ts';

/**
 * A weighed wheel's parts with what its mates say put into them: their weights, and the shift as one more reading.
 *
 * @param before the wheel's own states
 * @param after the same states, in the same order, after the mates spoke
 */
export function joinParts(
  { parts }: WeighedWheel,
  before: readonly ToothState[],
  after: readonly ToothState[],
): WeighedPart[] {
  const sums = new Map<number, { before: Moments; after: Moments }>();
  before.forEach((state, i) => {
    const sum = sums.get(state.part) ?? { before: { ...none }, after: { ...none } };
    sums.set(state.part, sum);
    add(sum.before, state);
    add(sum.after, after[i]);
  });
  return [...sums].map(([index, sum]): WeighedPart => {
    const part = parts[index];
    const log = part.log + Math.log(Math.max(1e-300, sum.after.weight / sum.before.weight));
    const seen = findSeen(sum.before, sum.after);
    return seen ? { ...part, log, shiftSeen: seen } : { ...part, log };
  });
}

interface Moments {
  weight: number;
  mean: number;
  square: number;
}

const none: Moments = { weight: 0, mean: 0, square: 0 };

function add(sum: Moments, { weight, mean, variance }: ToothState): void {
  sum.weight += weight;
  sum.mean += weight * mean;
  sum.square += weight * (variance + mean * mean);
}

/** The reading of the shift that turns one Gaussian into the other; undefined where the second is no narrower. */
function findSeen(
  before: Moments,
  after: Moments,
): { readonly value: number; readonly variance: number } | undefined {
  if (!(after.weight > 0)) return undefined;
  const from = { mean: before.mean / before.weight, square: before.square / before.weight };
  const to = { mean: after.mean / after.weight, square: after.square / after.weight };
  const variance = from.square - from.mean ** 2;
  const narrowed = to.square - to.mean ** 2;
  if (!(variance > 0) || !(narrowed > 0) || narrowed > variance * 0.999) return undefined;
  const own = 1 / (1 / narrowed - 1 / variance);
  return { value: own * (to.mean / narrowed - from.mean / variance), variance: own };
}
