import { methods } from '../../gear-library/reading-uncertainty.ts';
import { findExpectedInformation } from '../evidence/expected-information.ts';
import { listMeasuredLengths } from '../readings/measured-length.ts';
import type { NextReading } from '../readings/next-readings.ts';
import { listRacks } from '../readings/pitch-prior.ts';
import { askDistances } from './ask-distances.ts';
import type { DriveMessages } from './drive-messages.ts';
import type { ToothState } from './tooth-states.ts';

/** What has been answered about a wheel that is lost, beside its readings. */
export interface LostAnswers {
  readonly noCrumbs: boolean;
  readonly hasPost: boolean;
  readonly hasRows: boolean;
  /** The speed that was wanted is known, or known not to be known */
  readonly hasSpeed: boolean;
  /** Its count doesn't change the speed */
  readonly isIdler: boolean;
}

/**
 * What to look for of a wheel that is lost, in the order in which a bench gives it up: crumbs in the grease, its
 * post, which neighbors it touched, the distances, one row of teeth or two, and only where rivals remain the speed.
 *
 * @param states of the wheel with all that is known so far
 */
export function askLost(
  messages: DriveMessages,
  id: string,
  states: readonly ToothState[],
  answers: LostAnswers,
): NextReading[] {
  const asks: NextReading[] = [];
  const { joins } = messages.treeOf(id);
  const evidence = messages.evidenceOf(id);
  const mates = joins.filter(({ wheels }) => wheels.includes(id));
  if (!answers.noCrumbs && listMeasuredLengths(evidence).length === 0) {
    asks.push({
      of: 'crumbs',
      gainBits: expectFromCrumb(messages, states),
      why: 'a single tooth in the grease has the depth of all of them: put it in as a tooth depth',
    });
  }
  if (!answers.hasPost) {
    asks.push({
      of: 'post',
      gainBits: 0,
      why: 'its diameter is the bore, its free height the length, a groove for a clip says what held it',
    });
  }
  if (mates.length === 0) {
    asks.push({
      of: 'neighbors',
      gainBits: 0,
      why: 'bright tracks on the neighbors show which ones it touched, at what height and how wide',
    });
  }
  asks.push(...askDistances(messages, id, states));
  if (!answers.hasRows) {
    asks.push({
      of: 'rows',
      gainBits: 0,
      why: 'tracks at two heights mean a gear of two wheels, each with its own count',
    });
  }
  const open = entropyOfCounts(states);
  const isMeasured = mates.length > 0 && mates.every(({ distances }) => distances.length > 0);
  if (isMeasured && open.bits >= worthAsking && !answers.isIdler && !answers.hasSpeed) {
    asks.push({
      of: 'speed-wanted',
      gainBits: open.bits,
      why: 'turns of the output, speed of the tape or belt, seconds for a stroke: whichever you know, or "don\'t know"',
    });
  }
  return asks;
}

/** Rivals for the count are left where another tooth more or less is no rare thing. */
const worthAsking = 0.1;

/** The entropy of the count; a speed known to a per cent tells single teeth apart up to about 100. */
function entropyOfCounts(states: readonly ToothState[]): { bits: number } {
  const sums = new Map<number, number>();
  let total = 0;
  for (const { teeth, weight } of states) {
    sums.set(teeth, (sums.get(teeth) ?? 0) + weight);
    total += weight;
  }
  let bits = 0;
  for (const sum of sums.values()) if (sum > 0) bits -= (sum / total) * Math.log2(sum / total);
  return { bits };
}

/** What the depth of one tooth is expected to say about the label. */
function expectFromCrumb({ labels }: DriveMessages, states: readonly ToothState[]): number {
  const shares = new Map<string, { weight: number; label: number }>();
  let total = 0;
  for (const { label, weight } of states) {
    const { system, size, pressureAngleDeg, isFree } = labels.describe(label);
    const key = isFree ? `${label}` : `${system} ${size} ${pressureAngleDeg}`;
    const known = shares.get(key);
    shares.set(key, { weight: (known?.weight ?? 0) + weight, label });
    total += weight;
  }
  const racks = listRacks({});
  const weights: number[] = [];
  const classes: number[] = [];
  const means: number[] = [];
  const deviations: number[] = [];
  [...shares.values()].forEach(({ weight, label }, number) => {
    if (weight < 1e-3 * total) return;
    const { system, module, pressureAngleDeg } = labels.describe(label);
    const own = racks.filter((one) => one.pressureAngleDeg === pressureAngleDeg);
    const whole = own.reduce((sum, one) => sum + Math.exp(one.logWeight[system]), 0);
    for (const { rack, logWeight } of own) {
      const share = Math.exp(logWeight[system]) / whole;
      if (!(share > 0)) continue;
      weights.push((weight / total) * share);
      classes.push(number);
      means.push(module * (rack.addendum + rack.dedendum) + rack.extraDedendum);
      deviations.push(Math.hypot(methods['tooth-depth'].uMm, tipsDiffer * module));
    }
  });
  if (weights.length < 2) return 0;
  return findExpectedInformation(weights, classes, shares.size, means, deviations);
}

/** Modules: how tips of made wheels differ, as one deviation. */
const tipsDiffer = 0.06;
