import { concludeIdentity, type Identity, withoutAnswer } from '../readings/conclude-identity.ts';
import { identifyWheel } from '../readings/identify-wheel.ts';
import type { PitchChance } from '../readings/judge.ts';
import { sumPatterns } from '../readings/sum-patterns.ts';
import type { CountChance } from '../readings/weigh-counts.ts';
import type { Machine, WheelEvidence } from '../readings/wheel-evidence.ts';
import { askDistances } from './ask-distances.ts';
import { askLost, type LostAnswers } from './ask-lost.ts';
import { askMates } from './ask-mates.ts';
import { type WantedCounts, weighByRatio } from './count-by-ratio.ts';
import { type DriveMessages, type HeardStates, openMessages } from './drive-messages.ts';
import { joinParts } from './join-parts.ts';
import { listDistanceDoubts } from './list-distance-doubts.ts';
import type { Join } from './mesh-tree.ts';
import type { DriveWheel } from './own-states.ts';
import { findSigns } from './pair-factor.ts';
import type { ToothState } from './tooth-states.ts';
import { weighMixed } from './weigh-mixed.ts';
import { weighRoot } from './weigh-root.ts';

/** The wheels of a drive that run against each other, with all that is known of each and of their distances. */
export interface JointDrive {
  readonly machine: Machine;
  readonly wheels: readonly JointWheel[];
  readonly joins: readonly Join[];
  readonly wanted: WantedCounts | undefined;
}

export interface JointWheel extends DriveWheel {
  readonly isLost: boolean;
  readonly answers: LostAnswers;
  /** More to say of it in the answer */
  readonly notes: readonly string[];
}

/** An identity that its mates had a say in. */
export interface JointIdentity extends Identity {
  /** The wheels that were weighed together with it */
  readonly jointWith: readonly string[];
}

/**
 * Identifies the wheels of a drive together: wheels that mesh share system, size and angle (but for mixed pitches),
 * and a shaft distance ties their counts and shifts. A wheel that is lost takes its count from distances and, where
 * the speed wanted is known and its count changes it, from that.
 *
 * Every wheel's answer has the form of `identifyWheel`. Approximations: the caliper's zero and slips are taken as
 * each wheel's own; racks are not shared; of shifts, moments are passed on.
 */
export function openJoint(drive: JointDrive): (id: string) => JointIdentity {
  const joinsOf = new Map<string, Join[]>();
  for (const join of drive.joins) {
    for (const id of join.wheels) joinsOf.set(id, [...(joinsOf.get(id) ?? []), join]);
  }
  const shared = new Map<string, DriveMessages>();
  return (id) => {
    const known = shared.get(id);
    const near = known ? [] : findNear(id, joinsOf);
    const isWhole = near.length <= mostTogether;
    const kept = new Set(isWhole ? near : near.slice(0, nearest));
    const messages =
      known ??
      openMessages(
        drive.machine,
        drive.wheels.filter(
          ({ evidence }) => kept.has(evidence.id) || drive.wanted?.exponents.has(evidence.id),
        ),
        [...new Set([...kept].flatMap((one) => joinsOf.get(one) ?? []))].filter(({ wheels }) =>
          wheels.every((one) => kept.has(one)),
        ),
      );
    if (!known && isWhole) for (const one of near) shared.set(one, messages);
    const tree = messages.treeOf(id);
    const notes = tree.leftOut.map(
      ({ wheels: [a, b] }) =>
        `the meshes form a loop: that of ${a} with ${b} was left out of the reckoning, as the weakest`,
    );
    if (!isWhole)
      notes.push(`more than ${mostTogether} gears run together: the nearest ${nearest} speak for it`);
    return {
      ...identifyJoined(drive, messages, id, notes),
      jointWith: tree.wheels.filter((one) => one !== id),
    };
  };
}

/** So many wheels in one train are weighed together; in a longer one those nearest to the one asked about. */
const mostTogether = 24;
const nearest = 9;

/** The wheels that joins connect with one, nearest first, itself among them; no more than shows that they are many. */
function findNear(id: string, joinsOf: ReadonlyMap<string, readonly Join[]>): string[] {
  const near = [id];
  const seen = new Set(near);
  for (let at = 0; at < near.length && near.length <= mostTogether; at++) {
    for (const { wheels } of joinsOf.get(near[at]) ?? []) {
      for (const one of wheels) {
        if (seen.has(one)) continue;
        seen.add(one);
        near.push(one);
      }
    }
  }
  return near;
}

function identifyJoined(
  drive: JointDrive,
  messages: DriveMessages,
  id: string,
  said: readonly string[],
): Identity {
  const wheel = drive.wheels.find((one) => one.evidence.id === id);
  if (!wheel) throw new Error(`the drive has no wheel ${id}`);
  const own = messages.ownOf(id);
  const isCounted = own.of === 'measured' || (own.of === 'bare' && own.isCounted);
  if (own.of === 'spec' || (!isCounted && !wheel.isLost)) return identifyWheel(wheel.evidence);
  const notes = [...said, ...wheel.notes];
  const isLost = (one: string): boolean =>
    drive.wheels.some(({ evidence, isLost: gone }) => gone && evidence.id === one);
  const found = weighRoot(messages, id);
  if (!found) {
    const next = askLost(messages, id, [], wheel.answers);
    return isCounted ? identifyWheel(wheel.evidence) : { ...withoutAnswer(id), next, notes };
  }
  const { weighed, rest } = found;
  const speed = drive.wanted && weighByRatio(drive.wanted, id, (one) => countsOf(messages, one));
  const heard = messages.hearAll(id, found.states);
  const states = speed
    ? heard.states.map((state) => ({ ...state, weight: state.weight * speed(state.teeth) }))
    : heard.states;
  // What no mate names may have any count, so the speed speaks of it by its average.
  const byChance = speed
    ? countsOf(messages, id).reduce((sum, one) => sum + one.weight * speed(one.teeth), 0)
    : 1;
  const left = leaveRest(wheel.evidence.kind, rest, heard, states, byChance);
  const hasDistance = heard.links.some(({ link }) => link.ways.length > 0);
  if (!isCounted && !hasDistance) {
    const next = askLost(messages, id, states, wheel.answers);
    return { ...withoutAnswer(id), pitch: sumLabels(messages, states, left), next, notes };
  }
  const parts = joinParts(weighed, found.states, states);
  const doubts = listDistanceDoubts(id, weighed, heard, states);
  return concludeIdentity(
    { ...weighed, parts, patterns: sumPatterns(weighed, parts) },
    {
      rest: left,
      isCountInferred: !isCounted,
      isLost: wheel.isLost,
      ...doubts,
      notes,
      listNext: (isCertain) =>
        wheel.isLost
          ? askLost(messages, id, states, wheel.answers)
          : [...askDistances(messages, id, states), ...(isCertain ? [] : askMates(messages, id, isLost))],
    },
  );
}

/** What is left for labels and counts that no mate names: there every mate's pitch would be another one. */
function leaveRest(
  kind: WheelEvidence['kind'],
  rest: number,
  { links }: HeardStates,
  states: readonly ToothState[],
  factor: number,
): number {
  let other = (factor * rest) / Math.max(1e-12, 1 - rest);
  for (const { link, message } of links) {
    const signs = findSigns(kind, message.kind) ?? [0, 0];
    other *= weighMixed(link.ways, signs, undefined, message.radius);
  }
  const total = states.reduce((sum, state) => sum + state.weight, 0);
  return other / (other + total);
}

/** Sizes with their chances, from states alone. */
function sumLabels(
  { labels }: DriveMessages,
  states: readonly ToothState[],
  left: number,
): readonly PitchChance[] {
  const sums = new Map<string, PitchChance>();
  const total = states.reduce((sum, state) => sum + state.weight, 0);
  for (const { label, weight } of [...states].sort((a, b) => b.weight - a.weight)) {
    const { system, size, module, isFree } = labels.describe(label);
    const key = isFree ? 'free' : `${system} ${size}`;
    const known = sums.get(key) ?? { system, size, moduleMm: module, probability: 0 };
    sums.set(key, { ...known, probability: known.probability + (weight / total) * (1 - left) });
  }
  return [...sums.values()]
    .filter((one) => one.probability >= 0.0005)
    .sort((a, b) => b.probability - a.probability);
}

function countsOf(messages: DriveMessages, id: string): readonly CountChance[] {
  const own = messages.ownOf(id);
  if (own.of === 'measured') return own.weighed.space.counts;
  if (own.of === 'spec') return [{ teeth: own.states[0].teeth, weight: 1, slip: false }];
  return own.counts;
}
