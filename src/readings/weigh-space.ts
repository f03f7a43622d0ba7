import type { Weigher } from '../evidence/weigher.ts';
import {
  type HypothesisSpace,
  listTeeth,
  type Response,
  respondWithHelix,
  type ToothHypothesis,
} from './hypothesis-space.ts';
import { causeCount, fillWeigher, type LinearPart } from './linear-part.ts';
import type { MeasuredLength } from './measured-length.ts';
import type { NormalPart } from './tooth-prior.ts';

export interface WeighedPart extends LinearPart {
  /** log of prior weight times evidence, slips summed out */
  readonly log: number;
}

export interface WeighedSpace {
  readonly parts: readonly WeighedPart[];
  /** Probability of each of the weigher's slip patterns. */
  readonly patterns: Float64Array;
}

// A part this far below the best (natural log) can't matter, even ten thousand of them.
const negligible = 17;
// A reading this many deviations off does not agree; two of those and a hypothesis is out, since one slips at most.
const farDeviations = 7;

/**
 * Weighs every hypothesis of the space against the lengths. Hypotheses that two lengths contradict outright are
 * passed over, so the cost follows those that stay.
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
  const parts: WeighedPart[] = [];
  const patterns = new Float64Array(weigher.patterns.length);
  const loadings = new Float64Array(n * causeCount);
  const pinAt = lengths.map((length) => length.of === 'over-pins');
  let best = Number.NEGATIVE_INFINITY;
  let reference = Number.NaN;

  const weighPart = (part: LinearPart): void => {
    if (fillWeigher(weigher, loadings, space, lengths, part, farDeviations) > 1) return;
    const evidence = weigher.weigh();
    const log = evidence + part.prior;
    if (!(log > best - negligible)) return;
    parts.push({ ...part, log });
    if (log > best) {
      // Keep the sums within reach of the exponential.
      const scale = Number.isNaN(reference) ? 0 : Math.exp(reference - log);
      if (Number.isNaN(reference) || scale < 1e-100) {
        for (let k = 0; k < patterns.length; k++) patterns[k] *= scale;
        reference = log;
      }
      best = log;
    }
    for (let k = 0; k < patterns.length; k++) {
      const relative = weigher.logPatterns[k] + part.prior - reference;
      if (relative > best - reference - negligible) patterns[k] += Math.exp(relative);
    }
  };

  for (const count of space.counts) {
    for (const rack of space.racks) {
      const prior = Math.log(count.weight);
      for (const tooth of listTeeth(space, count, rack)) {
        const responses = lengths.map((length, i) =>
          pinAt[i] ? [] : respondWithHelix(length, tooth, Number.NaN),
        );
        if (responses.some((modes, i) => modes.length === 0 && !pinAt[i])) continue;
        const ranges = responses.map((modes, i) =>
          listModuleRanges(space, tooth, modes, lengths[i], weigher, i),
        );
        const losses = responses.some((modes) => modes.some((mode) => mode.byTipLoss !== 0))
          ? space.tipLosses
          : noTipLoss;
        for (const pitch of space.pitches) {
          const weight = pitch.logWeight + rack.logWeight[pitch.system] + tooth.shift.logWeight + prior;
          if (weight === Number.NEGATIVE_INFINITY || !fitsModule(ranges, pitch.module)) continue;
          const own = pinAt.includes(true)
            ? responses.map((modes, i) =>
                pinAt[i] ? respondWithHelix(lengths[i], tooth, pitch.module) : modes,
              )
            : responses;
          const base = weight + extraLog(pitch.module, tooth.tooth.pressureAngle);
          forEachCombination(own, (modes, modeLog) => {
            for (const tipLoss of losses) {
              weighPart({ pitch, tooth, tipLoss, modes, prior: base + modeLog + tipLoss.logWeight });
            }
          });
        }
      }
    }
  }
  let total = 0;
  const kept = parts.filter((part) => part.log > best - negligible);
  for (const part of kept) total += Math.exp(part.log - reference);
  for (let k = 0; k < patterns.length; k++) patterns[k] /= total || 1;
  return { parts: kept, patterns };
}

const noTipLoss: readonly NormalPart[] = [{ logWeight: 0, mean: 0, spread: 0 }];

/** Calls back for every choice of one mode a reading, with the sum of their log weights. */
function forEachCombination(
  responses: readonly (readonly Response[])[],
  take: (modes: readonly Response[], logWeight: number) => void,
): void {
  if (responses.every((modes) => modes.length === 1)) {
    take(
      responses.map((modes) => modes[0]),
      0,
    );
    return;
  }
  const chosen: Response[] = [];
  const choose = (i: number, logWeight: number): void => {
    if (i === responses.length) {
      take([...chosen], logWeight);
      return;
    }
    for (const mode of responses[i]) {
      chosen[i] = mode;
      choose(i + 1, logWeight + mode.logWeight);
    }
  };
  choose(0, 0);
}

/** Between which modules a reading lies within `farDeviations` of what a toothing can show, pairs low, high. */
function listModuleRanges(
  space: HypothesisSpace,
  tooth: ToothHypothesis,
  modes: readonly Response[],
  length: MeasuredLength,
  weigher: Weigher,
  index: number,
): readonly number[] {
  // A pin's size is absolute, so its reading is checked once the module is chosen.
  if (modes.length === 0) return everyModule;
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  let spread = 0;
  for (const mode of modes) {
    const bySpread = Math.hypot(
      tooth.shift.spread * mode.byShift,
      space.thinning.spread * mode.byThinning,
      space.tipLandSpread * mode.byTipLand,
      tooth.helixSpread * mode.byHelix,
      Math.sqrt(mode.variance),
      mode.value * (space.scaleSpread + freeCellSpread),
    );
    const thinned = space.thinning.mean * mode.byThinning;
    for (const loss of [0, greatestTipLoss]) {
      least = Math.min(least, mode.value + thinned + loss * mode.byTipLoss);
      greatest = Math.max(greatest, mode.value + thinned + loss * mode.byTipLoss);
    }
    spread = Math.max(spread, bySpread);
  }
  const absolute = Math.hypot(Math.sqrt(length.noise), length.zeroDeviation);
  const values = [length.value];
  // With one reading alone, nothing else would speak for what was meant.
  if (weigher.size === 1) {
    for (const pattern of weigher.patterns)
      if (pattern.reading === index && pattern.repairedValue > 0) values.push(pattern.repairedValue);
  }
  return values.flatMap((read) => {
    const value = read - length.offset - modes[0].offset;
    return [
      (value - farDeviations * absolute) / (greatest + farDeviations * spread),
      (value + farDeviations * absolute) / Math.max(1e-9, least - farDeviations * spread),
    ];
  });
}

const everyModule: readonly number[] = [0, Number.POSITIVE_INFINITY];
// Four deviations beyond the badly worn: more is no tooth.
const greatestTipLoss = 0.5;
const freeCellSpread = 0.009;

function fitsModule(ranges: readonly (readonly number[])[], module: number): boolean {
  let far = 0;
  for (const range of ranges) {
    let inside = false;
    for (let k = 0; k < range.length; k += 2) inside ||= module >= range[k] && module <= range[k + 1];
    if (!inside) far++;
  }
  return ranges.length === 1 ? far === 0 : far <= 1;
}
