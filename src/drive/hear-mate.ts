import { sharedPitch } from '../../gear-library/mesh-priors.ts';
import { mateShift } from '../../gear-library/tooth-variation.ts';
import type { WheelEvidence } from '../readings/wheel-evidence.ts';
import type { DistanceWay } from './distance-ways.ts';
import { findSigns, listShiftTargets, type PairHelix, type ShiftTarget } from './pair-factor.ts';
import type { PitchLabels } from './pitch-labels.ts';
import type { ToothState } from './tooth-states.ts';
import { type Radius, weighMixed } from './weigh-mixed.ts';

/** What a wheel says to a mate: its own states, with all that lies behind it in the drive. */
export interface WheelMessage {
  readonly kind: WheelEvidence['kind'];
  /** By label and then by count; of a wheel that nothing is known of, made up for any label asked for. */
  statesOf(label: number): ReadonlyMap<number, readonly ToothState[]> | undefined;
  /** Labels that have states; undefined: every label alike */
  readonly labels: ReadonlySet<number> | undefined;
  /** Of a wheel that nothing is known of but that: the counts that it may have, whatever the label */
  readonly counts: readonly number[] | undefined;
  /** Its reference radius; undefined where nothing is known of it */
  readonly radius: Radius | undefined;
  /** No reading of its teeth: a shift of its own is not known */
  readonly isBare: boolean;
}

/** A pair's distances and slant, seen from the wheel that listens. */
export interface PairLink {
  readonly ways: readonly DistanceWay[];
  readonly helix: PairHelix;
  /** Whether shifts that cancel are likelier than chance, for want of a measured one. */
  readonly mayCancel: boolean;
}

/** A state after a mate has spoken. */
export interface HeardState extends ToothState {
  /** What the mate multiplied its weight by */
  readonly factor: number;
  /** The part of the factor that each of the link's ways has; empty without distances */
  readonly byWay: Float64Array;
  /** What the distance as read is expected to be off by, mm, where nothing slipped; NaN without one */
  readonly apart: number;
}

/**
 * Every state of a wheel with what one mate says of it: the label is the mate's with the chance of `sharedPitch`, and
 * the distance ties the sum of both shifts. A label's likelihood is its states' weight over the label's prior. The
 * shift's mean and variance are those of the mixture that comes out.
 */
export function hearMate(
  states: readonly ToothState[],
  kind: WheelEvidence['kind'],
  mate: WheelMessage,
  link: PairLink,
  labels: PitchLabels,
): HeardState[] {
  const { ways, helix } = link;
  const signs = findSigns(kind, mate.kind);
  const [own, other] = signs ?? [0, 0];
  const hasDistance = ways.length > 0 && signs !== undefined;
  const targets = new Map<number, readonly ShiftTarget[]>();
  const targetsOf = (label: number, a: number, b: number): readonly ShiftTarget[] => {
    const key = (label * mostTeeth + a) * mostTeeth + b;
    let found = targets.get(key);
    if (!found) {
      found = listShiftTargets(ways, labels.describe(label), [kind, mate.kind], [a, b], helix);
      targets.set(key, found);
    }
    return found;
  };
  const cancel = link.mayCancel ? cancelling.weight : 0;
  const listen = (state: ToothState): Heard => {
    const said = mate.statesOf(state.label);
    const byWay = new Float64Array(hasDistance ? ways.length : 0);
    const { module } = labels.describe(state.label);
    const radius = { mean: (module * state.teeth) / 2, variance: 0 };
    const mixed = weighMixed(hasDistance ? ways : [], [own, other], radius, mate.radius, byWay);
    const likelihood =
      sharedPitch.chance / (mate.labels === undefined ? 1 : labels.describe(state.label).prior);
    const sums = {
      weight: mixed,
      mean: mixed * state.mean,
      square: mixed * (state.variance + state.mean ** 2),
    };
    const add = (weight: number, mean: number, variance: number): void => {
      sums.weight += weight;
      sums.mean += weight * mean;
      sums.square += weight * (variance + mean * mean);
    };
    let apart = 0;
    let plain = 0;
    for (const [teeth, others] of said ?? []) {
      if (!hasDistance) {
        let weight = 0;
        for (const one of others) weight += one.weight;
        add(likelihood * weight, state.mean, state.variance);
        continue;
      }
      for (const target of targetsOf(state.label, state.teeth, teeth)) {
        // Beside a distance that hardly holds, it makes no difference how the mate's shifts are made up.
        for (const one of target.variance > wideVariance ? blur(others) : others) {
          const spread = own * own * state.variance + other * other * one.variance + target.variance;
          const gap = target.value - own * state.mean - other * one.mean;
          const square = (gap * gap) / spread;
          if (square < farSquare) {
            const weight =
              (likelihood * (1 - cancel) * one.weight * Math.exp(target.log - 0.5 * square)) /
              Math.sqrt(2 * Math.PI * spread);
            const gain = (own * state.variance) / spread;
            add(weight, state.mean + gain * gap, state.variance - own * gain * state.variance);
            byWay[target.way] += weight;
            if (target.way === 0) {
              plain += weight;
              apart += weight * (target.noise / spread) * gap * target.slope;
            }
          }
          if (cancel === 0) continue;
          const loose = cancelling.spread ** 2 + target.variance;
          const off = (target.value * target.value) / loose;
          if (off > farSquare) continue;
          const weight =
            (likelihood * cancel * one.weight * Math.exp(target.log - 0.5 * off)) /
            Math.sqrt(2 * Math.PI * loose);
          if (mate.isBare) add(weight, state.mean, state.variance);
          else add(weight, -own * other * one.mean, one.variance + cancelling.spread ** 2);
          byWay[target.way] += weight;
          if (target.way === 0) {
            plain += weight;
            apart += weight * (target.noise / loose) * target.value * target.slope;
          }
        }
      }
    }
    const mean = sums.mean / sums.weight;
    return {
      mean,
      variance: Math.max(0, sums.square / sums.weight - mean * mean),
      factor: sums.weight,
      byWay,
      apart: plain > 0 ? apart / plain : Number.NaN,
    };
  };
  const floor = negligible * states.reduce((most, state) => Math.max(most, state.weight), 0);
  // Racks that differ at the root alone, and overlapping cells of a free module, share their shifts.
  const known = new Map<number, Map<number, { state: ToothState; heard: Heard }>>();
  return states.map((state): HeardState => {
    if (state.weight <= floor) return change(state, unheard, 0);
    const key = state.label * mostTeeth + state.teeth;
    const byMean = known.get(key) ?? new Map<number, { state: ToothState; heard: Heard }>();
    known.set(key, byMean);
    let same = byMean.get(state.mean);
    if (same?.state.variance !== state.variance) {
      same = { state, heard: listen(state) };
      byMean.set(state.mean, same);
    }
    return change(state, same.heard, state.weight * same.heard.factor);
  });
}

/** Spelt out: spreading two objects into a third costs more than all the sums. */
function change({ label, teeth, part }: ToothState, heard: Heard, weight: number): HeardState {
  const { mean, variance, factor, byWay, apart } = heard;
  return { label, teeth, part, weight, mean, variance, factor, byWay, apart };
}

/** A mate's states of one label and count as one. */
function blur(states: readonly ToothState[]): readonly Pick<ToothState, 'weight' | 'mean' | 'variance'>[] {
  let weight = 0;
  let mean = 0;
  let square = 0;
  for (const one of states) {
    weight += one.weight;
    mean += one.weight * one.mean;
    square += one.weight * (one.variance + one.mean * one.mean);
  }
  mean /= weight;
  return [{ weight, mean, variance: Math.max(0, square / weight - mean * mean) }];
}

const unheard: Heard = { mean: 0, variance: 0, factor: 1, byWay: new Float64Array(0), apart: Number.NaN };

type Heard = Pick<HeardState, 'mean' | 'variance' | 'factor' | 'byWay' | 'apart'>;

/** States that other mates left that far behind the likeliest are not gone into. */
const negligible = 1e-9;
/** Modules squared. */
const wideVariance = 0.2;
/** Above any count a job may hold. */
const mostTeeth = 1100;
/** Deviations squared: a mate's state further off than that adds nothing to see. */
const farSquare = 80;

/** The share of pairs whose shifts cancel to keep the standard distance, and how nearly. */
const cancelling = mateShift.find((row) => row.relation === 'opposite') ?? { weight: 0, spread: 1 };
