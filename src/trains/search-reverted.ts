import type { Wanted } from './fraction.ts';
import { joinPosts } from './join-posts.ts';
import type { BestList } from './keep-best.ts';
import type { PairChoice } from './list-half.ts';
import { isCoprime } from './pair-coprime.ts';
import { countCombinations, measurePosts } from './plan-groups.ts';
import { countDistinct } from './search-free.ts';
import type { Stride } from './search-progress.ts';
import type { Candidate, TrainQuestion } from './train-question.ts';

/**
 * Adds to `best` every reverted train that belongs there: for each sum of teeth, all pairs with that sum on posts that
 * are alike. Yields what it did; `searched` is 1 at the end.
 */
export function* searchReverted(
  question: TrainQuestion,
  wanted: Wanted,
  best: BestList<Candidate>,
): Generator<Stride, void, unknown> {
  const sums = listSums(question);
  const pairsInAll = sums.reduce((all, choices) => all + choices.length, 0);
  let done = 0;
  for (const choices of sums) {
    const posts = Array.from({ length: question.pairs }, () => choices);
    const part = choices.length / pairsInAll;
    for (const { steps, searched } of joinPosts(posts, true, wanted.value, best.reach, (train) => {
      if (!best.couldEnter(train, train.newWheelsAtLeast, train.teeth)) return 0;
      const pairs = train
        .picks()
        .map((pick) => choices[pick])
        .sort((a, b) => a.driver - b.driver);
      const drivers = pairs.map(({ driver }) => driver);
      const mates = pairs.map(({ driven }) => driven);
      const driven = [...mates].reverse();
      const { count, isShared } = countDistinct(drivers, driven);
      if (!isShared || question.allowsIdlers) {
        const { num, den, teeth } = train;
        best.add({ num, den, teeth, newWheels: count, drivers, driven, mates });
      }
      return costOfTrain;
    })) {
      yield { steps, searched: Math.min(done + part * searched, almostAll) };
    }
    done += part;
  }
  yield { steps: 0, searched: 1 };
}

/** The space and the work of a reverted search. */
export function measureReverted(question: TrainQuestion): { space: number; work: number } {
  let space = 0;
  let work = 0;
  for (const choices of listSums({ ...question, isHunting: false, allowsIdlers: true })) {
    const posts = Array.from({ length: question.pairs }, () => choices);
    space += countCombinations(posts, true);
    work += measurePosts(posts, true);
  }
  return { space, work };
}

/** For each sum of teeth that two counts give, the pairs that give it, by rising driver. */
function listSums({ counts, isHunting = false, allowsIdlers = false }: TrainQuestion): PairChoice[][] {
  const sums = new Map<number, PairChoice[]>();
  for (const driver of counts) {
    for (const driven of counts) {
      if (driver === driven && !allowsIdlers) continue;
      if (isHunting && !isCoprime(driver, driven)) continue;
      const choices = sums.get(driver + driven) ?? [];
      choices.push({ driver, driven, newWheels: [driver, driven] });
      sums.set(driver + driven, choices);
    }
  }
  // Those with most pairs first: what they find lets most of the others be passed over.
  return [...sums.values()].sort((a, b) => b.length - a.length);
}

/** Rounding must not call a search done before it is. */
const almostAll = 1 - 1e-9;

// Roughly: it only spaces the yields.
const costOfTrain = 40;
