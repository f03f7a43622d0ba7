import { findFrom } from './find-from.ts';

/**
 * Meets every pair of an entry of `rising` with one of `against` whose ratio lies within the factor `reach()` of
 * `wanted`, either way. Both lists ascend. `reach` may shrink while pairs are met, and is asked again at every step.
 * Yields how many entries and pairs were looked at since the last time, every few milliseconds.
 *
 * As `against` rises, so does the place in `rising` that fits it: two pointers see everything in one pass, and only
 * pairs that come near are ever looked at. The pass starts in the middle, where entries lie densest and the best that
 * is found first is already good, and goes up, then down.
 *
 * @param meet is given the places of the two entries, and returns what that cost, as so many pairs looked at
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
  let looked = 0;
  let cost = 0;
  for (const turn of [1, -1]) {
    let first = startFirst;
    for (let j = turn > 0 ? start : start - 1; j >= 0 && j < against.length; j += turn) {
      const target = wanted * against[j];
      while (first < rising.length && rising[first] < target) {
        first++;
        looked++;
      }
      while (first > 0 && rising[first - 1] >= target) {
        first--;
        looked++;
      }
      for (let i = first; i < rising.length && rising[i] <= target * reach(); i++) {
        looked++;
        cost += meet(i, j);
        if (looked + cost >= chunk) {
          yield looked;
          looked = 0;
          cost = 0;
        }
      }
      for (let i = first - 1; i >= 0 && rising[i] * reach() >= target; i--) {
        looked++;
        cost += meet(i, j);
        if (looked + cost >= chunk) {
          yield looked;
          looked = 0;
          cost = 0;
        }
      }
      looked++;
      if (looked + cost >= chunk) {
        yield looked;
        looked = 0;
        cost = 0;
      }
    }
  }
  yield looked;
}

// Some milliseconds of work.
const chunk = 500_000;
