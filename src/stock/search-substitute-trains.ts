import { Fail } from '../fail.ts';
import type { RollingProof } from '../rolling/rolling-proof.ts';
import { type CostedChoice, searchFront } from '../trains/search-front.ts';
import { searchPosts } from '../trains/search-posts.ts';
import { listPairChoices, type PairChoice } from './list-pair-choices.ts';
import type { PairQuestion, WheelPool } from './list-wheel-groups.ts';
import type { Roll } from './need.ts';
import type { PostsPlan } from './plan-posts.ts';
import type { Verdict } from './prove-wheel.ts';

/** A train of wheels on the posts as they are. */
export interface SubstituteTrain {
  readonly pairs: readonly TrainPair[];
  readonly ratio: { readonly num: number; readonly den: number };
  /** Found over wanted, less 1: positive, the output is slower */
  readonly errorRelative: number;
  readonly newParts: number;
  /** Times by which the finest made wheel is too fine for the process, less 1; 0 where none is */
  readonly fineness: number;
  /** Sum of the changed and unchanged pairs' backlash by their numbers, mm */
  readonly backlash: number;
  readonly verdict: Verdict;
  readonly isOnFront: boolean;
}

export interface TrainPair {
  readonly question: PairQuestion;
  readonly choice: PairChoice;
  readonly proof: RollingProof;
}

export interface SubstituteTrains {
  /** Within the tolerance, what turns first, by the ratio's error; then the nearest that are not */
  readonly trains: readonly SubstituteTrain[];
  /** Whether no train on these posts is nearer to the ratio, and none on the front beaten */
  readonly isProven: boolean;
  readonly space: number;
  readonly visited: number;
  readonly searched: number;
  /** How many pairs each post allows */
  readonly choices: readonly number[];
}

export interface TrainSearchProgress {
  readonly searched: number;
  readonly space: number;
  /** Steps that the search will take, roughly */
  readonly work: number;
}

/** Trains looked at closely: more are not read, and each is rolled. Of one ratio the first stands for all. */
const closest = 5;
const looked = 60;
const onFront = 8;

interface Choice extends CostedChoice {
  readonly pair: PairChoice;
}

/**
 * The trains that keep a drive's ratio while its posts stay: the nearest by exact search, and the front of trade-offs
 * within the tolerance (ratio, new parts, how fine the made teeth are, backlash), each rolled pair by pair. On the front
 * backlash counts in steps of 0.05 mm and fineness in tenths, so that it stays short enough to read.
 *
 * Yields what has been searched; whoever answers `'stop'` gets the best so far, not proven.
 */
export function* searchSubstituteTrains(
  plan: PostsPlan,
  pool: WheelPool,
  roll: Roll,
): Generator<TrainSearchProgress, SubstituteTrains, 'stop' | undefined> {
  const posts = plan.posts.map((question) => listPairChoices(question, pool).map(asChoice));
  let isStopped = false;
  const nearest = searchPosts({ wanted: plan.wanted, posts, top: looked });
  let step = nearest.next();
  while (!step.done) {
    const { searched, space, work } = step.value;
    const answer = yield { searched: searched / 2, space, work };
    isStopped ||= answer === 'stop';
    step = nearest.next(isStopped ? 'stop' : undefined);
  }
  const best = step.value;
  const front = searchFront({
    wanted: plan.wanted,
    posts,
    tolerance: Math.min(0.5, plan.tolerance),
    criteria: ['sum', 'greatest', 'sum'],
  });
  let other = front.next();
  while (!other.done) {
    const { searched, space, work } = other.value;
    const answer = isStopped ? 'stop' : yield { searched: (1 + searched) / 2, space, work };
    isStopped ||= answer === 'stop';
    other = front.next(isStopped ? 'stop' : undefined);
  }
  const tradeOffs = other.value;

  const proofs = new Map<string, RollingProof>();
  const rollChoice = (question: PairQuestion, choice: PairChoice): RollingProof | undefined => {
    const key = JSON.stringify([question.centerDistance, choice.driver.spec, choice.driven.spec]);
    const known = proofs.get(key);
    if (known) return known;
    const at = { mm: question.centerDistance, u: question.uncertainty };
    try {
      const proof = roll({ spec: choice.driver.spec }, { spec: choice.driven.spec }, at);
      proofs.set(key, proof);
      return proof;
    } catch (error) {
      // A wheel that is in the drive may be one whose outline can't exist: no train stands on it.
      if (error instanceof Fail) return undefined;
      throw error;
    }
  };
  const seen = new Set<string>();
  const trains: SubstituteTrain[] = [];
  const add = (
    found: (typeof best.trains)[number] | (typeof tradeOffs.trains)[number],
    isOnFront: boolean,
  ): void => {
    const key = found.choices.map((choice, post) => posts[post].indexOf(choice)).join(' ');
    if (seen.has(key)) return;
    seen.add(key);
    const pairs = found.choices.flatMap(({ pair }, post): TrainPair[] => {
      const question = plan.posts[post];
      const proof = rollChoice(question, pair);
      return proof ? [{ question, choice: pair, proof }] : [];
    });
    if (pairs.length < found.choices.length) return;
    trains.push({
      pairs,
      ratio: found.ratio,
      errorRelative: found.errorRelative,
      newParts: pairs.reduce((sum, { choice }) => sum + choice.newParts, 0),
      fineness: Math.max(...pairs.map(({ choice }) => choice.fineness)),
      backlash: pairs.reduce((sum, { choice }) => sum + choice.backlash, 0),
      verdict: worstOf(pairs.map(({ proof }) => proof.verdict)),
      isOnFront,
    });
  };
  for (const train of tradeOffs.trains.slice(0, onFront)) add(train, true);
  const ratios = new Set<string>();
  for (const train of best.trains) {
    if (ratios.size >= closest) break;
    const ratio = `${train.ratio.num}/${train.ratio.den}`;
    if (ratios.has(ratio)) continue;
    ratios.add(ratio);
    add(train, false);
  }
  return {
    trains: trains.sort(
      (a, b) =>
        rankOf(a, plan) - rankOf(b, plan) ||
        Math.abs(a.errorRelative) - Math.abs(b.errorRelative) ||
        a.newParts - b.newParts,
    ),
    isProven: best.proven && tradeOffs.proven,
    space: best.space,
    visited: best.visited + tradeOffs.visited,
    searched: best.proven ? (1 + tradeOffs.searched) / 2 : best.searched / 2,
    choices: posts.map(({ length }) => length),
  };
}

function asChoice(pair: PairChoice): Choice {
  const wheels = [pair.driver, pair.driven];
  return {
    pair,
    driver: pair.driver.spec.teeth,
    driven: pair.driven.spec.teeth,
    newWheels: wheels
      .filter(({ from }) => from !== 'present')
      .map(({ from, part, spec }) =>
        from === 'part' ? `part ${part?.id}` : `made ${spec.module} ${spec.teeth} ${spec.profileShift}`,
      ),
    takes: wheels.flatMap(({ isSingle, part }) => (isSingle && part ? [part.id] : [])),
    costs: [pair.newParts, Math.round(pair.fineness * 10) / 10, Math.round(pair.backlash * 20) / 20],
  };
}

function rankOf(train: SubstituteTrain, plan: PostsPlan): number {
  const isWithin = Math.abs(train.errorRelative) <= plan.tolerance * (1 + 1e-9);
  return (isWithin ? 0 : 2) + (train.verdict === 'turns' ? 0 : 1);
}

function worstOf(verdicts: readonly Verdict[]): Verdict {
  return verdicts.includes('jams') ? 'jams' : verdicts.includes('rough') ? 'rough' : 'turns';
}
