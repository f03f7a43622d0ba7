import type { Found } from './compare-misses.ts';
import { joinSorted } from './join-sorted.ts';
import { type Combination, eachCombination, listHalf, type PairChoice } from './list-half.ts';
import { multiplyCounts } from './multiply-counts.ts';
import { countCombinations, planGroups } from './plan-groups.ts';
import type { Stride } from './search-progress.ts';

/** One choice for each post, and what they come to together. */
export interface PostTrain extends Found {
  readonly teeth: number;
  /** Fewer different new wheels than this it can't need */
  readonly newWheelsAtLeast: number;
  /** The choice of each post, by its place in the post's list */
  readonly picks: () => readonly number[];
}

/**
 * Offers every train with one choice for each post whose ratio lies within the factor `reach()` of the wanted one.
 * Two groups of posts are listed as all their combinations, sorted, and held against each other; posts that would make
 * a list too long are gone through one combination at a time. Every post has a choice.
 *
 * @param isAlike all posts share one list, and their order doesn't matter; then a train may be offered several times
 * @param offer takes a train and returns what that cost, as so many pairs looked at
 */
export function* joinPosts(
  posts: readonly (readonly PairChoice[])[],
  isAlike: boolean,
  wanted: number,
  reach: () => number,
  offer: (train: PostTrain) => number,
): Generator<Stride, void, unknown> {
  if (!isWithinReach(posts, wanted, reach())) {
    yield { steps: 1, searched: 1 };
    return;
  }
  const groups = planGroups(posts, isAlike);
  const pick = (group: readonly number[]): (readonly PairChoice[])[] => group.map((post) => posts[post]);
  const lefts = listHalf(pick(groups.left), isAlike, false);
  const rights = listHalf(pick(groups.right), isAlike, true);
  yield { steps: lefts.values.length + rights.values.length, searched: 0 };
  const outerCount = countCombinations(pick(groups.outer), isAlike);
  let done = 0;
  for (const outer of eachCombination(pick(groups.outer), isAlike)) {
    const meet = (i: number, j: number): number => {
      const left = lefts.rows[i];
      const right = rights.rows[j];
      const picks = (): readonly number[] => {
        const all = posts.map(() => 0);
        const put = (group: readonly number[], row: Combination): void => {
          for (let k = 0; k < group.length; k++) all[group[k]] = row.picks[k];
        };
        put(groups.outer, outer);
        put(groups.left, left);
        put(groups.right, right);
        return all;
      };
      return offer({
        ...multiplyExactly(posts, [outer, left, right], picks),
        teeth: outer.teeth + left.teeth + right.teeth,
        newWheelsAtLeast: Math.max(outer.newWheels, left.newWheels, right.newWheels),
        picks,
      });
    };
    const searched = done / outerCount;
    const rest = (wanted * outer.den) / outer.num;
    for (const steps of joinSorted(lefts.values, rights.values, rest, reach, meet)) yield { steps, searched };
    done++;
  }
  yield { steps: 0, searched: 1 };
}

/** Whether the least and the greatest ratio that the posts can give leave the wanted one in between, or near. */
function isWithinReach(posts: readonly (readonly PairChoice[])[], wanted: number, reach: number): boolean {
  let least = 1;
  let greatest = 1;
  for (const choices of posts) {
    const ratios = choices.map(({ driver, driven }) => driven / driver);
    least *= Math.min(...ratios);
    greatest *= Math.max(...ratios);
  }
  return least <= wanted * reach * margin && greatest * reach * margin >= wanted;
}

// Wider than the rounding of sixteen operations.
const margin = 1 + 1e-12;

function multiplyExactly(
  posts: readonly (readonly PairChoice[])[],
  [outer, left, right]: readonly [Combination, Combination, Combination],
  picks: () => readonly number[],
): Found {
  const num = outer.num * left.num * right.num;
  const den = outer.den * left.den * right.den;
  if (num <= Number.MAX_SAFE_INTEGER && den <= Number.MAX_SAFE_INTEGER) return { num, den };
  const chosen = picks().map((pick, post) => posts[post][pick]);
  return {
    num: multiplyCounts(chosen.map(({ driven }) => driven)),
    den: multiplyCounts(chosen.map(({ driver }) => driver)),
  };
}
