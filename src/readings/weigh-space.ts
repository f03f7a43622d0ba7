import type { Weigher } from '../evidence/weigher.ts';
import { allowTips } from './allow-tips.ts';
import {
  type HypothesisSpace,
  listTeeth,
  respondWithHelix,
  type ToothHypothesis,
} from './hypothesis-space.ts';
import { createPartFiller, type LinearPart } from './linear-part.ts';
import type { MeasuredLength } from './measured-length.ts';
import { allowsModule, listModuleRanges } from './module-ranges.ts';
import type { PitchHypothesis, RackHypothesis } from './pitch-prior.ts';
import type { NormalPart } from './tooth-prior.ts';
import type { ResponseMode } from './tooth-response.ts';

export interface WeighedPart extends LinearPart {
  /** log of prior weight times evidence, slips summed out */
  readonly log: number;
}

export interface WeighedSpace {
  readonly parts: readonly WeighedPart[];
  /** Probability of each of the weigher's slip patterns. */
  readonly patterns: Float64Array;
}

// A part this far below the best (natural log) is passed over: the bench shows what that costs.
const negligible = 11;
// A reading this many deviations off does not agree. Two of those and a hypothesis is out: one slips at most.
const farDeviations = 6.5;

/**
 * Weighs every hypothesis of the space against the lengths.
 *
 * Likely hypotheses come first, and each is held against an upper bound before it is weighed, so the cost follows
 * those that stay: a Gaussian's density is at most Π 1/√(2π noise), times exp(−½ of the greatest squared deviation
 * of one reading), or of the second greatest where the greatest may be a slip.
 *
 * @param extraLog log likelihood of what is not a length (a rolled trial gear), by module and angle
 */
export function weighSpace(
  space: HypothesisSpace,
  lengths: readonly MeasuredLength[],
  weigher: Weigher,
  extraLog: (module: number, pressureAngle: number) => number,
): WeighedSpace {
  const n = lengths.length;
  const pins = lengths.map((length) => length.of === 'over-pins');
  const hasPins = pins.includes(true);
  const sum = createSum(space, lengths, weigher);
  const likeliestPitch = Math.max(...space.pitches.map((pitch) => pitch.logWeight));
  for (const count of space.counts) {
    for (const rack of sortByWeight(space.racks)) {
      const head = Math.log(count.weight) + likeliestPitch + likeliestSystem(rack);
      for (const tooth of listTeeth(space, count, rack)) {
        if (sum.isHopeless(head + tooth.shift.logWeight)) continue;
        const responses = lengths.map((length, i) =>
          pins[i] ? [] : respondWithHelix(length, tooth, Number.NaN),
        );
        if (responses.some((modes, i) => modes.length === 0 && !pins[i])) continue;
        const ranges = listModuleRanges(space, tooth, responses, lengths, weigher, farDeviations);
        const allowed = allowTips(tooth.tooth, tooth.shift.spread, space.tipLosses);
        if (allowed.length === 0) continue;
        const losses = responses.some((modes) => modes.some((mode) => mode.byTipLoss !== 0))
          ? allowed
          : withoutTips(allowed);
        const plain = hasPins ? [] : listCombinations(responses);
        const [first, last] = n === 0 ? [0, space.pitches.length] : findIndexRange(space.pitches, ranges);
        for (let at = first; at < last; at++) {
          const pitch = space.pitches[at];
          const weight =
            pitch.logWeight + rack.logWeight[pitch.system] + tooth.shift.logWeight + Math.log(count.weight);
          if (sum.isHopeless(weight) || !allowsModule(ranges, pitch.module)) continue;
          const prior = weight + extraLog(pitch.module, tooth.tooth.pressureAngle);
          const combinations = hasPins
            ? listCombinations(
                responses.map((modes, i) =>
                  pins[i] ? respondWithHelix(lengths[i], tooth, pitch.module) : modes,
                ),
              )
            : plain;
          for (const { modes, logWeight } of combinations) {
            sum.add(pitch, tooth, losses, modes, prior + logWeight);
          }
        }
      }
    }
  }
  return sum.finish();
}

/** One part for all tip losses, where no reading feels the tips. */
function withoutTips(tipLosses: readonly NormalPart[]): readonly NormalPart[] {
  const weight = tipLosses.reduce((sum, part) => sum + Math.exp(part.logWeight), 0);
  return [{ logWeight: Math.log(weight), mean: 0, spread: 0 }];
}

function likeliestSystem(rack: RackHypothesis): number {
  return Math.max(...Object.values(rack.logWeight));
}

function sortByWeight(racks: readonly RackHypothesis[]): RackHypothesis[] {
  return [...racks].sort((a, b) => likeliestSystem(b) - likeliestSystem(a));
}

/** The sizes that any reading allows at all, as a range of indices. */
function findIndexRange(
  pitches: readonly PitchHypothesis[],
  ranges: readonly (readonly number[])[],
): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = 0;
  for (const range of ranges) {
    for (let k = 0; k < range.length; k += 2) {
      low = Math.min(low, range[k]);
      high = Math.max(high, range[k + 1]);
    }
  }
  return [findIndex(pitches, low), findIndex(pitches, high * (1 + 1e-12))];
}

/** Index of the first size of at least this module (bisection). */
function findIndex(pitches: readonly PitchHypothesis[], module: number): number {
  let low = 0;
  let high = pitches.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (pitches[middle].module < module) low = middle + 1;
    else high = middle;
  }
  return low;
}

interface Combination {
  readonly modes: readonly ResponseMode[];
  readonly logWeight: number;
}

/** Every choice of one mode a reading, with the sum of their log weights. */
function listCombinations(responses: readonly (readonly ResponseMode[])[]): Combination[] {
  if (responses.every((choices) => choices.length === 1)) {
    return [
      {
        modes: responses.map(([only]) => only),
        logWeight: responses.reduce((sum, [only]) => sum + only.logWeight, 0),
      },
    ];
  }
  let combinations: Combination[] = [{ modes: [], logWeight: 0 }];
  for (const choices of responses) {
    combinations = combinations.flatMap(({ modes, logWeight }) =>
      choices.map((mode) => ({ modes: [...modes, mode], logWeight: logWeight + mode.logWeight })),
    );
  }
  return combinations;
}

/** The running sum over hypotheses: keeps what matters, with the slips' shares. */
function createSum(space: HypothesisSpace, lengths: readonly MeasuredLength[], weigher: Weigher) {
  const n = lengths.length;
  const parts: WeighedPart[] = [];
  const patterns = new Float64Array(weigher.patterns.length);
  const filler = createPartFiller(weigher, space, lengths);
  const highest = highestDensity(lengths);
  const slipPenalty = highestSlip(lengths, weigher);
  const shifts = lengths.map((length, i) =>
    weigher.patterns
      .filter((pattern) => pattern.reading === i && pattern.repairedValue > 0)
      .map((pattern) => pattern.repairedValue - length.value),
  );
  let best = Number.NEGATIVE_INFINITY;
  let reference = Number.NaN;

  const isHopeless = (prior: number): boolean => prior + highest < best - negligible;

  /** Whether the diagonal leaves the part a chance. */
  const hasChance = (prior: number): boolean => {
    let greatest = 0;
    let second = 0;
    let at = -1;
    for (let i = 0; i < n; i++) {
      const square = (weigher.residual[i] * weigher.residual[i]) / weigher.covariance[i * n + i];
      if (square > greatest) {
        second = greatest;
        greatest = square;
        at = i;
      } else if (square > second) second = square;
    }
    const needed = best - negligible - prior - highest;
    if (-0.5 * greatest >= needed) return true;
    if (second > farDeviations * farDeviations) return false;
    if (-0.5 * second + slipPenalty >= needed) return true;
    // A repair is likelier than a plain wrong value, but only where the repaired value agrees.
    const variance = weigher.covariance[at * n + at];
    for (const shift of shifts[at]) {
      const moved = weigher.residual[at] + shift;
      if (moved * moved < farDeviations * farDeviations * variance) return true;
    }
    return false;
  };

  const add = (
    pitch: PitchHypothesis,
    tooth: ToothHypothesis,
    tipLosses: readonly NormalPart[],
    modes: readonly ResponseMode[],
    priorOfAll: number,
  ): void => {
    if (isHopeless(priorOfAll)) return;
    filler.chooseTooth({ pitch, tooth, modes });
    for (const tipLoss of tipLosses) {
      const prior = priorOfAll + tipLoss.logWeight;
      if (isHopeless(prior)) continue;
      filler.chooseTipLoss(tipLoss);
      if (!hasChance(prior)) continue;
      filler.fillCovariance();
      const log = weigher.weigh(best - negligible - prior) + prior;
      if (!(log > best - negligible)) continue;
      parts.push({ pitch, tooth, tipLoss, modes, prior, log });
      if (log > best) raiseBest(log);
      const floor = best - negligible - prior;
      const count = weigher.countLive();
      for (let k = 0; k < count; k++) {
        const pattern = weigher.live[k];
        const share = weigher.logPatterns[pattern];
        if (share > floor) patterns[pattern] += Math.exp(share + prior - reference);
      }
    }
  };

  const raiseBest = (log: number): void => {
    // Keep the sums within reach of the exponential.
    if (Number.isNaN(reference) || log - reference > 200) {
      const scale = Number.isNaN(reference) ? 0 : Math.exp(reference - log);
      for (let k = 0; k < patterns.length; k++) patterns[k] *= scale;
      reference = log;
    }
    best = log;
  };

  const finish = (): WeighedSpace => {
    const kept = parts.filter((part) => part.log > best - negligible);
    let total = 0;
    for (const weight of patterns) total += weight;
    for (let k = 0; k < patterns.length; k++) patterns[k] /= total || 1;
    return { parts: kept, patterns };
  };

  return { isHopeless, add, finish };
}

/** log of the highest density that the readings can have under any hypothesis. */
function highestDensity(lengths: readonly MeasuredLength[]): number {
  return lengths.reduce((sum, length) => sum - 0.5 * Math.log(2 * Math.PI * length.noise), 0);
}

/** log of the most that a plain wrong reading can make up for against that density. */
function highestSlip(lengths: readonly MeasuredLength[], weigher: Weigher): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const { kind, reading, logChance, variance } of weigher.patterns) {
    if (kind !== 'wrong') continue;
    most = Math.max(most, logChance + 0.5 * Math.log(lengths[reading].noise / variance));
  }
  return most;
}
