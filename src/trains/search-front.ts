import { roundings } from './compare-misses.ts';
import { aimAt, type Fraction } from './fraction.ts';
import { isTakenTwice } from './is-taken-twice.ts';
import { joinPosts } from './join-posts.ts';
import { keepFront } from './keep-front.ts';
import { numberWheels } from './number-wheels.ts';
import { countCombinations, measurePosts } from './plan-groups.ts';
import { runSearch } from './run-search.ts';
import type { PostChoice } from './search-posts.ts';
import type { SearchProgress } from './search-progress.ts';
import { tellRatio } from './tell-ratio.ts';

/** A choice, and what it costs by each criterion: least is best. */
export interface CostedChoice extends PostChoice {
  readonly costs: readonly number[];
}

export interface FrontQuestion<Choice extends CostedChoice> {
  /** Input speed over output speed: driven over drivers */
  readonly wanted: Fraction;
  /** For each pair of shafts, in order from the input, the pairs of wheels that its distance allows */
  readonly posts: readonly (readonly Choice[])[];
  /** Farthest that |found/wanted - 1| may be, below 1 */
  readonly tolerance: number;
  /** How the costs of a train's choices come together, criterion by criterion */
  readonly criteria: readonly ('sum' | 'greatest')[];
}

export interface FrontTrain<Choice extends CostedChoice> {
  /** In the order of the posts */
  readonly choices: readonly Choice[];
  readonly ratio: { readonly num: number; readonly den: number };
  /** Found over wanted, less 1: positive, the output is slower */
  readonly errorRelative: number;
  readonly costs: readonly number[];
}

export interface FrontAnswer<Choice extends CostedChoice> {
  /** Whether these are all that no train beats; else they are what no train so far beats */
  readonly proven: boolean;
  /** By rising |ln(found/wanted)| */
  readonly trains: readonly FrontTrain<Choice>[];
  readonly visited: number;
  readonly space: number;
  readonly searched: number;
}

/**
 * The trade-offs where the shafts stay where they are: every train within the tolerance that no other beats, being as
 * good by the ratio's error and by each cost, and better by one at least. Of trains that are equal in all of them one
 * is kept: that with the fewest teeth, then that whose choices come first in the lists. Exact. Yields before it starts
 * and every few milliseconds; whoever answers `'stop'` gets the best so far.
 */
export function* searchFront<Choice extends CostedChoice>(
  question: FrontQuestion<Choice>,
): Generator<SearchProgress<FrontAnswer<Choice>>, FrontAnswer<Choice>, 'stop' | undefined> {
  const { posts, tolerance, criteria } = question;
  const wanted = aimAt(question.wanted);
  const front = keepFront(wanted);
  const reach = (1 + roundings) / (1 - tolerance);
  const join = function* () {
    const numbered = numberWheels(posts);
    yield* joinPosts(
      numbered,
      false,
      wanted.value,
      () => reach,
      (train) => {
        const { num, den, teeth } = train;
        const error = Math.abs(Number(num) / (Number(den) * wanted.value) - 1);
        if (error > tolerance + roundings) return 0;
        const picks = train.picks();
        if (isTakenTwice(picks.map((pick, post) => numbered[post][pick].takes))) return costOfTrain;
        const costs = criteria.map((criterion, c) =>
          picks.reduce((total, pick, post) => {
            const cost = posts[post][pick].costs[c];
            return criterion === 'sum' ? total + cost : Math.max(total, cost);
          }, startOf[criterion]),
        );
        front.add({ num, den, teeth, costs, picks });
        return costOfTrain;
      },
    );
  };
  return yield* runSearch(
    { space: countCombinations(posts, false), work: measurePosts(posts, false) },
    join,
    (standing, proven) => ({
      proven,
      trains: front.list().map((train) => ({
        choices: train.picks.map((pick, post) => posts[post][pick]),
        ...tellRatio(train, wanted),
        costs: train.costs,
      })),
      ...standing,
    }),
  );
}

const startOf = { sum: 0, greatest: Number.NEGATIVE_INFINITY };

// Roughly: it only spaces the yields.
const costOfTrain = 10;
