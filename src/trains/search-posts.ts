import { aimAt, type Fraction } from './fraction.ts';
import { isTakenTwice } from './is-taken-twice.ts';
import { joinPosts } from './join-posts.ts';
import { keepBest, type Ranked } from './keep-best.ts';
import { numberWheels } from './number-wheels.ts';
import { countCombinations, measurePosts } from './plan-groups.ts';
import { runSearch } from './run-search.ts';
import type { SearchProgress } from './search-progress.ts';
import { tellRatio } from './tell-ratio.ts';

/** A pair that may stand on a post's pair of shafts. Callers add what they need to know it by; it comes back as it is. */
export interface PostChoice {
  readonly driver: number;
  readonly driven: number;
  /** Names of the wheels that must be got for it; a name that comes again in a train is the same kind of wheel */
  readonly newWheels: readonly string[];
  /** Names of pieces of which only one is there, so that a train takes each once at most */
  readonly takes?: readonly string[];
}

export interface PostsQuestion<Choice extends PostChoice> {
  /** Input speed over output speed: driven over drivers */
  readonly wanted: Fraction;
  /** For each pair of shafts, in order from the input, the pairs of wheels that its distance allows */
  readonly posts: readonly (readonly Choice[])[];
  readonly top: number;
  /** Farthest that |found/wanted - 1| may be */
  readonly tolerance?: number;
}

export interface PostsTrain<Choice extends PostChoice> {
  /** In the order of the posts */
  readonly choices: readonly Choice[];
  readonly ratio: { readonly num: number; readonly den: number };
  /** Found over wanted, less 1: positive, the output is slower */
  readonly errorRelative: number;
  /** How many different wheels must be got */
  readonly newWheels: number;
  readonly teeth: number;
}

export interface PostsAnswer<Choice extends PostChoice> {
  readonly proven: boolean;
  /** Best first: least |ln(found/wanted)|, fewest different new wheels, fewest teeth, drivers, driven, places in the lists */
  readonly trains: readonly PostsTrain<Choice>[];
  readonly visited: number;
  readonly space: number;
  readonly searched: number;
}

/**
 * The best trains where the shafts stay where they are: one choice for each post, found by exact search. Yields before
 * it starts, saying how large the search is, and then every few milliseconds; whoever answers `'stop'` gets the best so
 * far. A post without choices leaves no train.
 */
export function* searchPosts<Choice extends PostChoice>(
  question: PostsQuestion<Choice>,
): Generator<SearchProgress<PostsAnswer<Choice>>, PostsAnswer<Choice>, 'stop' | undefined> {
  const { posts, top, tolerance } = question;
  const wanted = aimAt(question.wanted);
  const best = keepBest<PostCandidate>(wanted, top, tolerance);
  const join = function* () {
    const numbered = numberWheels(posts);
    yield* joinPosts(numbered, false, wanted.value, best.reach, (train) => {
      if (!best.couldEnter(train, train.newWheelsAtLeast, train.teeth)) return 0;
      const picks = train.picks();
      const chosen = picks.map((pick, post) => numbered[post][pick]);
      if (isTakenTwice(chosen.map(({ takes }) => takes))) return costOfTrain;
      const { num, den, teeth } = train;
      const newWheels = new Set(chosen.flatMap((choice) => choice.newWheels)).size;
      const drivers = chosen.map(({ driver }) => driver);
      const driven = chosen.map((choice) => choice.driven);
      best.add({ num, den, teeth, newWheels, drivers, driven, picks });
      return costOfTrain;
    });
  };
  return yield* runSearch(
    { space: countCombinations(posts, false), work: measurePosts(posts, false) },
    join,
    (standing, proven) => ({
      proven,
      trains: best.list().map((train) => ({
        choices: train.picks.map((pick, post) => posts[post][pick]),
        ...tellRatio(train, wanted),
        newWheels: train.newWheels,
        teeth: train.teeth,
      })),
      ...standing,
    }),
  );
}

interface PostCandidate extends Ranked {
  readonly picks: readonly number[];
}

// Roughly: it only spaces the yields.
const costOfTrain = 40;
