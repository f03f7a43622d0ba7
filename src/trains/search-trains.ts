import { planCross } from './cross-products.ts';
import { aimAt } from './fraction.ts';
import { keepBest } from './keep-best.ts';
import { canList, countMultisets } from './list-products.ts';
import { runSearch } from './run-search.ts';
import { searchFree } from './search-free.ts';
import type { SearchProgress } from './search-progress.ts';
import { measureReverted, searchReverted } from './search-reverted.ts';
import { tellRatio } from './tell-ratio.ts';
import type { Candidate, TrainQuestion } from './train-question.ts';

export interface FoundTrain {
  /** Ascending */
  readonly drivers: readonly number[];
  /** One for each driver: its mate, where hunting or reverted asks for a certain one, else ascending */
  readonly driven: readonly number[];
  /** Input speed over output speed in lowest terms; as the nearest doubles where beyond 2^53 */
  readonly ratio: { readonly num: number; readonly den: number };
  /** Found over wanted, less 1: positive, the output is slower */
  readonly errorRelative: number;
}

export interface TrainAnswer {
  /** Whether nothing better exists; else these are the best so far */
  readonly proven: boolean;
  /** Best first: least |ln(found/wanted)|, fewest distinct counts, fewest teeth, drivers and then driven ascending */
  readonly trains: readonly FoundTrain[];
  /** Products listed and looked at, and pairs of them that came near */
  readonly visited: number;
  /** All trains that the question allows, before any cancels */
  readonly space: number;
  /** Share of the space that was settled */
  readonly searched: number;
}

export type TrainProgress = SearchProgress<TrainAnswer>;

/**
 * The best trains for a ratio, found by exact search: nothing is skipped that could be better. Yields before it
 * starts, saying how large the search is, and then every few milliseconds; whoever answers `'stop'` gets the best so
 * far. The question must make sense (findTrains checks it).
 *
 * All products of driven wheels are held against all products of drivers as two sorted lists (meet in the middle), so
 * the work grows with the number of products, the root of the number of trains.
 */
export function* searchTrains(
  question: TrainQuestion,
): Generator<TrainProgress, TrainAnswer, 'stop' | undefined> {
  const wanted = aimAt(question.wanted);
  const best = keepBest<Candidate>(wanted, question.top, question.tolerance);
  const { space, work } = question.isReverted ? measureReverted(question) : measureFree(question);
  return yield* runSearch(
    { space, work },
    () => (question.isReverted ? searchReverted(question, wanted, best) : searchFree(question, wanted, best)),
    (standing, proven) => ({
      proven,
      trains: best.list().map((train) => ({
        drivers: train.drivers,
        driven: train.mates,
        ...tellRatio(train, wanted),
      })),
      ...standing,
    }),
  );
}

function measureFree({ counts, pairs }: TrainQuestion): { space: number; work: number } {
  const ways = countMultisets(counts.length, pairs);
  if (canList(counts, pairs)) return { space: ways ** 2, work: 2 * ways };
  const { innerSize, outerSize, outerCounts } = planCross(counts, pairs);
  const entries = countMultisets(outerCounts.length, outerSize) * countMultisets(counts.length, innerSize);
  return { space: ways ** 2, work: 2 * entries };
}
