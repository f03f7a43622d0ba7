import type { SlipPattern, Weigher } from '../evidence/weigher.ts';
import type { HypothesisSpace } from './hypothesis-space.ts';
import { causeCount, createPartFiller, type LinearPart, sharedCauses } from './linear-part.ts';
import type { MeasuredLength } from './measured-length.ts';
import type { WeighedPart } from './weigh-space.ts';

/** A part after all readings: its probability and what the readings say about the shared causes. */
export interface SettledPart extends LinearPart {
  readonly probability: number;
  /** Class of identity: parts of one system, size, angle and count share it. */
  readonly candidate: number;
  /** Means of the shared causes given the readings, in their standard deviations. */
  readonly causeMeans: Float64Array;
  /** L⁻¹ · loadings, n × causeCount: what a new reading's variance loses is the square of its product with these. */
  readonly reduced: Float64Array;
  /** Expected value of each reading, its own noise apart. */
  readonly expected: Float64Array;
}

// The rest of the probability is too thin to move a mean or a gain.
const coverage = 0.9995;
const mostParts = 600;

/**
 * The most probable parts with the shared causes' means and covariances given the readings, as if the slip pattern
 * given were known. Probabilities sum to 1 over the parts kept.
 */
export function settleParts(
  space: HypothesisSpace,
  lengths: readonly MeasuredLength[],
  weigher: Weigher,
  parts: readonly WeighedPart[],
  pattern: SlipPattern,
): SettledPart[] {
  const n = lengths.length;
  const mended = lengths.map((length, i) =>
    i === pattern.reading && pattern.kind !== 'wrong' ? { ...length, value: pattern.repairedValue } : length,
  );
  const sorted = keepMostProbable(parts);
  const filler = createPartFiller(weigher, space, mended);
  const { loadings } = filler;
  const candidates = new Map<string, number>();
  const settled = sorted.map(({ part, probability }): SettledPart => {
    filler.chooseTooth(part);
    filler.chooseTipLoss(part.tipLoss);
    filler.fillCovariance();
    if (pattern.kind === 'wrong') weigher.covariance[pattern.reading * (n + 1)] += pattern.variance;
    weigher.weigh();
    const { solved, inverseFactor } = weigher;
    const causeMeans = new Float64Array(causeCount);
    const reduced = new Float64Array(n * causeCount);
    const expected = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      for (let f = 0; f < causeCount; f++) causeMeans[f] += loadings[i * causeCount + f] * solved[i];
      for (let j = 0; j <= i; j++) {
        for (let f = 0; f < causeCount; f++) {
          reduced[i * causeCount + f] += inverseFactor[i * n + j] * loadings[j * causeCount + f];
        }
      }
      const own =
        mended[i].noise +
        part.pitch.module ** 2 * part.modes[i].variance +
        (pattern.kind === 'wrong' && pattern.reading === i ? pattern.variance : 0);
      expected[i] = mended[i].value - own * solved[i];
    }
    const alone = {
      ...part,
      probability,
      candidate: numberOf(candidates, part),
      causeMeans,
      reduced,
      expected,
    };
    return part.shiftSeen === undefined ? alone : seeShift(alone, part.shiftSeen, loadings);
  });
  return settled;
}

/** The part with its shift seen from elsewhere too: one more reading, of the shift itself. */
function seeShift(
  part: SettledPart,
  seen: NonNullable<LinearPart['shiftSeen']>,
  loadings: Float64Array,
): SettledPart {
  const { mean, spread } = part.tooth.shift;
  if (spread === 0) return part;
  const at = sharedCauses.shift;
  const covariance = new Float64Array(causeCount);
  covariance[at] = 1;
  for (let i = 0; i < part.reduced.length; i += causeCount) {
    for (let f = 0; f < causeCount; f++) covariance[f] -= part.reduced[i + f] * part.reduced[i + at];
  }
  const variance = covariance[at] + seen.variance / spread ** 2;
  const apart = (seen.value - mean) / spread - part.causeMeans[at];
  const root = Math.sqrt(variance);
  const reduced = new Float64Array(part.reduced.length + causeCount);
  reduced.set(part.reduced);
  const causeMeans = new Float64Array(causeCount);
  for (let f = 0; f < causeCount; f++) {
    reduced[part.reduced.length + f] = covariance[f] / root;
    causeMeans[f] = part.causeMeans[f] + (covariance[f] / variance) * apart;
  }
  const expected = part.expected.map((value, i) => {
    let along = 0;
    for (let f = 0; f < causeCount; f++) along += loadings[i * causeCount + f] * covariance[f];
    return value + (along / variance) * apart;
  });
  return { ...part, causeMeans, reduced, expected };
}

function keepMostProbable(parts: readonly WeighedPart[]): { part: WeighedPart; probability: number }[] {
  const sorted = [...parts].sort((a, b) => b.log - a.log);
  if (sorted.length === 0) return [];
  const weights = sorted.map((part) => Math.exp(part.log - sorted[0].log));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  let covered = 0;
  let count = 0;
  while (count < sorted.length && count < mostParts && covered < coverage * total)
    covered += weights[count++];
  return sorted.slice(0, count).map((part, i) => ({ part, probability: weights[i] / covered }));
}

/** The identity a part belongs to, as a key: system, size, angle and count. */
export function keyOf(part: LinearPart): string {
  const { pressureAngleDeg } = part.tooth.rack;
  return nameCandidate({ ...part.pitch, pressureAngleDeg, teeth: part.tooth.count.teeth });
}

/** The same key from a candidate's own fields. */
export function nameCandidate(one: {
  readonly system: string;
  readonly size: number;
  readonly pressureAngleDeg: number;
  readonly teeth: number;
}): string {
  const size = one.system === 'free' ? 'any' : one.size;
  return `${one.system} ${size} ${one.pressureAngleDeg} ${one.teeth}`;
}

function numberOf(candidates: Map<string, number>, part: LinearPart): number {
  const key = keyOf(part);
  const known = candidates.get(key);
  if (known !== undefined) return known;
  candidates.set(key, candidates.size);
  return candidates.size - 1;
}

/** Mean and variance of one shared cause of a settled part, in its own units of standard deviation. */
export function causeMoments(
  part: SettledPart,
  cause: keyof typeof sharedCauses,
): { mean: number; variance: number } {
  const f = sharedCauses[cause];
  let variance = 1;
  for (let i = f; i < part.reduced.length; i += causeCount) variance -= part.reduced[i] ** 2;
  return { mean: part.causeMeans[f], variance: Math.max(0, variance) };
}
