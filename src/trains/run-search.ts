import type { SearchProgress, Stride } from './search-progress.ts';

/** How far a search is: what it looked at, and the share of its space that is settled. */
export interface Standing {
  readonly visited: number;
  readonly space: number;
  readonly searched: number;
}

/**
 * Runs a search stride by stride. It yields before any work is done, saying how large the search is, and after every
 * stride but the last; whoever answers `'stop'` gets the best so far.
 *
 * @param start begins the work; not called where the space is empty
 * @param answer what there is at a standing, and whether that is proven
 */
export function* runSearch<Answer>(
  size: { readonly space: number; readonly work: number },
  start: () => Iterable<Stride>,
  answer: (standing: Standing, isProven: boolean) => Answer,
): Generator<SearchProgress<Answer>, Answer, 'stop' | undefined> {
  const { space, work } = size;
  let standing: Standing = { visited: 0, space, searched: 0 };
  const progress = (): SearchProgress<Answer> => {
    const at = standing;
    return { ...at, work, best: () => answer(at, false) };
  };
  if ((yield progress()) === 'stop') return answer(standing, false);
  if (space === 0) return answer(standing, true);
  for (const { steps, searched } of start()) {
    standing = { visited: standing.visited + steps, space, searched };
    if (searched < 1 && (yield progress()) === 'stop') return answer(standing, false);
  }
  return answer(standing, standing.searched === 1);
}
