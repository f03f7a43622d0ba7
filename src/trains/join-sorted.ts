import { findFrom } from './find-from.ts';

/**
 * Meets every pair of an entry of `rising` with one of `against` whose ratio lies within the factor `reach()` of
 * `wanted`, either way. Both lists ascend. `reach` may shrink while pairs are met, and is asked again at every step.
 * Yields how many pairs were looked at since the last time, every few milliseconds.
 *
 * As `against` rises, so does the place in `rising` that fits it: two pointers see everything in one pass, and only
 * pairs that come near are ever looked at. The pass starts in the middle, where entries lie densest and the best that
 * is found first is already good, and goes up, then down.
 *
 * @param meet is given the places of the two entries, and returns what looking at the pair cost, in steps
 */
export function* joinSorted(
  rising: Float64Array,
  against: Float64Array,
  wanted: number,
  reach: () => number,
  meet: (place: number, placeAgainst: number) => number,
): Generator<number, void, unknown> {
  const middle = findFrom(against, rising[rising.length >>> 1] / wanted);
  const start = Math.min(middle, against.length - 1);
  const startFirst = findFrom(rising, wanted * against[start]);
  let steps = 0;
  for (const turn of [1, -1]) {
    let first = startFirst;
    for (let j = turn > 0 ? start : start - 1; j >= 0 && j < against.length; j += turn) {
      const target = wanted * against[j];
      while (first < rising.length && rising[first] < target) {
        first++;
        steps++;
      }
      while (first > 0 && rising[first - 1] >= target) {
        first--;
        steps++;
      }
      for (let i = first; i < rising.length && rising[i] <= target * reach(); i++) {
        steps += 1 + meet(i, j);
        if (steps >= chunk) {
          yield steps;
          steps = 0;
        }
      }
      for (let i = first - 1; i >= 0 && rising[i] * reach() >= target; i--) {
        steps += 1 + meet(i, j);
        if (steps >= chunk) {
          yield steps;
          steps = 0;
        }
      }
      steps++;
      if (steps >= chunk) {
        yield steps;
        steps = 0;
      }
    }
  }
  yield steps;
}

// Some milliseconds of work.
const chunk = 500_000;
