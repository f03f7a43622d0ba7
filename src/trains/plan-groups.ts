import { countMultisets } from './list-products.ts';

/**
 * Splits posts into two groups whose combinations are listed and held against each other, and an outer group for what
 * would make those lists too long. The posts with most choices come first, each to the shorter list.
 */
export function planGroups(posts: readonly { readonly length: number }[], isAlike: boolean): Groups {
  const order = posts.map((_, post) => post).sort((a, b) => posts[b].length - posts[a].length || a - b);
  const groups: { outer: number[]; left: number[]; right: number[] } = { outer: [], left: [], right: [] };
  const count = (group: readonly number[]): number =>
    countCombinations(
      group.map((post) => posts[post]),
      isAlike,
    );
  for (const post of order) {
    const shorter = count(groups.left) <= count(groups.right) ? groups.left : groups.right;
    shorter.push(post);
    if (shorter.length > 1 && count(shorter) > mostListed) groups.outer.push(shorter.pop() ?? post);
  }
  return groups;
}

/** Posts by their places. */
export interface Groups {
  readonly outer: readonly number[];
  readonly left: readonly number[];
  readonly right: readonly number[];
}

/** How many combinations are listed, and how many entries of theirs a join passes at least. */
export function measurePosts(posts: readonly { readonly length: number }[], isAlike: boolean): number {
  const { outer, left, right } = planGroups(posts, isAlike);
  const count = (group: readonly number[]): number =>
    countCombinations(
      group.map((post) => posts[post]),
      isAlike,
    );
  return count(outer) * (count(left) + count(right));
}

/** How many ways there are to take one choice for each post; of posts that are alike, order aside. */
export function countCombinations(posts: readonly { readonly length: number }[], isAlike: boolean): number {
  if (isAlike && posts.length > 0) return countMultisets(posts[0].length, posts.length);
  return posts.reduce((ways, { length }) => ways * length, 1);
}

// A quarter of a second to list and sort.
const mostListed = 250_000;
