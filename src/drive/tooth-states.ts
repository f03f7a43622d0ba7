import type { SlipPattern } from '../evidence/weigher.ts';
import { causeCount, createPartFiller, sharedCauses } from '../readings/linear-part.ts';
import type { WeighedPart } from '../readings/weigh-space.ts';
import type { WeighedWheel } from '../readings/weigh-wheel.ts';
import { freeStep, type PitchLabels } from './pitch-labels.ts';

/** One way that a wheel's teeth may be, as far as its mates meet it. */
export interface ToothState {
  readonly label: number;
  readonly teeth: number;
  /** Probability given the wheel's own readings. */
  readonly weight: number;
  /** Profile shift given those readings, modules */
  readonly mean: number;
  readonly variance: number;
  /** Index of the part it stands for; −1 where several are taken together. */
  readonly part: number;
}

/**
 * A wheel's parts as states, likeliest first: one a part, or for a free module one a step that it may lie in.
 *
 * @param within of a wheel with little of its own, where its mates allow it to be: states elsewhere are not listed,
 * and those allowed are, however unlikely by themselves
 */
export function listToothStates(
  weighed: WeighedWheel,
  labels: PitchLabels,
  within?: ReadonlyMap<number, ReadonlySet<number>>,
): ToothState[] {
  const { space, lengths, weigher, parts } = weighed;
  const n = lengths.length;
  const filler = createPartFiller(weigher, space, lengths);
  const order = parts.map((_, i) => i).sort((a, b) => parts[b].log - parts[a].log);
  const best = order.length > 0 ? parts[order[0]].log : 0;
  const total = parts.reduce((sum, part) => sum + Math.exp(part.log - best), 0);
  const states: ToothState[] = [];
  const add = (state: ToothState): void => {
    if (within === undefined || within.get(state.label)?.has(state.teeth)) states.push(state);
  };
  let covered = 0;
  for (const index of order) {
    if (within === undefined && covered > total * (1 - leftOut)) break;
    const part = parts[index];
    const weight = Math.exp(part.log - best);
    covered += weight;
    const causes = n === 0 ? beforeReadings : settleCauses(weighed, filler, part);
    const { mean, spread } = part.tooth.shift;
    const state = {
      label: 0,
      teeth: part.tooth.count.teeth,
      weight: weight / total,
      mean: mean + spread * causes.shift,
      variance: spread ** 2 * causes.shiftVariance,
      part: index,
    };
    const angle = part.tooth.rack.pressureAngleDeg;
    if (part.pitch.spread === 0) {
      add({ ...state, label: labels.find(part.pitch, angle, part.pitch.module) });
      continue;
    }
    // Of a free module the cell's share of the scale is the module's own, the rest is shrinkage.
    const cell = part.pitch.spread;
    const share = cell / Math.hypot(cell, space.scaleSpread);
    const middle = share * cell * causes.scale;
    const variance = (share * cell) ** 2 * causes.scaleVariance + (1 - share ** 2) * cell ** 2;
    const together = share * cell * spread * causes.covariance;
    const deviation = Math.sqrt(variance);
    const first = Math.floor((middle - reach * deviation) / freeStep);
    const last = Math.ceil((middle + reach * deviation) / freeStep);
    for (let step = first; step < last; step++) {
      const from = normalBelow((step * freeStep - middle) / deviation);
      const chance = normalBelow(((step + 1) * freeStep - middle) / deviation) - from;
      if (chance < 1e-4) continue;
      const at = (step + 0.5) * freeStep;
      const label = labels.find(part.pitch, angle, part.pitch.module * Math.exp(at));
      if (within && !within.has(label)) continue;
      add({
        ...state,
        label,
        weight: state.weight * chance,
        mean: state.mean + (together / variance) * (at - middle),
        variance: Math.max(0, state.variance - together ** 2 / variance),
      });
    }
  }
  return states;
}

/** Parts that together hold all but this are passed on to the mates. */
const leftOut = 1e-5;
const reach = 3.7;

interface Causes {
  readonly shift: number;
  readonly shiftVariance: number;
  readonly scale: number;
  readonly scaleVariance: number;
  readonly covariance: number;
}

const beforeReadings: Causes = { shift: 0, shiftVariance: 1, scale: 0, scaleVariance: 1, covariance: 0 };

/** Shift and scale of a part given the readings under its own likeliest slip, in their standard deviations. */
function settleCauses(
  { lengths, weigher }: WeighedWheel,
  filler: ReturnType<typeof createPartFiller>,
  part: WeighedPart,
): Causes {
  const n = lengths.length;
  const { loadings } = filler;
  const fill = (): void => {
    filler.chooseTooth(part);
    filler.chooseTipLoss(part.tipLoss);
    filler.fillCovariance();
  };
  fill();
  weigher.weigh();
  const pattern = likeliestPattern(weigher);
  if (pattern.reading >= 0) {
    fill();
    if (pattern.kind === 'wrong') weigher.covariance[pattern.reading * (n + 1)] += pattern.variance;
    else weigher.residual[pattern.reading] += pattern.repairedValue - lengths[pattern.reading].value;
    weigher.weigh();
  }
  const { solved, inverseFactor } = weigher;
  let shift = 0;
  let scale = 0;
  let shiftVariance = 1;
  let scaleVariance = 1;
  let covariance = 0;
  for (let i = 0; i < n; i++) {
    shift += loadings[i * causeCount + sharedCauses.shift] * solved[i];
    scale += loadings[i * causeCount + sharedCauses.scale] * solved[i];
    let alongShift = 0;
    let alongScale = 0;
    for (let j = 0; j <= i; j++) {
      const entry = inverseFactor[i * n + j];
      alongShift += entry * loadings[j * causeCount + sharedCauses.shift];
      alongScale += entry * loadings[j * causeCount + sharedCauses.scale];
    }
    shiftVariance -= alongShift ** 2;
    scaleVariance -= alongScale ** 2;
    covariance -= alongShift * alongScale;
  }
  return {
    shift,
    scale,
    covariance,
    shiftVariance: Math.max(0, shiftVariance),
    scaleVariance: Math.max(0, scaleVariance),
  };
}

function likeliestPattern(weigher: WeighedWheel['weigher']): SlipPattern {
  let best = 0;
  for (let k = 1; k < weigher.countLive(); k++) {
    const pattern = weigher.live[k];
    if (weigher.logPatterns[pattern] > weigher.logPatterns[best]) best = pattern;
  }
  return weigher.patterns[best];
}

/**
 * Φ(x), within 1.2e-7 (the complementary error function as a Chebyshev fit: Press et al., Numerical Recipes,
 * section 6.2; value from memory).
 */
function normalBelow(x: number): number {
  const z = Math.abs(x) / Math.SQRT2;
  const t = 1 / (1 + 0.5 * z);
  const series = [
    -1.26551223, 1.00002368, 0.37409196, 0.09678418, -0.18628806, 0.27886807, -1.13520398, 1.48851587,
    -0.82215223, 0.17087277,
  ];
  let sum = 0;
  for (let k = series.length - 1; k >= 0; k--) sum = sum * t + series[k];
  const beyond = 0.5 * t * Math.exp(-z * z + sum);
  return x > 0 ? 1 - beyond : beyond;
}
