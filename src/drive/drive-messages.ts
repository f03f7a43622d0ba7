import { buildSpace } from '../readings/hypothesis-space.ts';
import type { CountChance } from '../readings/weigh-counts.ts';
import type { WeighedWheel } from '../readings/weigh-wheel.ts';
import type { Machine, WheelEvidence } from '../readings/wheel-evidence.ts';
import { collapseStates, type GroupedStates } from './collapse-states.ts';
import { listDistanceWays } from './distance-ways.ts';
import { type HeardState, hearMate, type PairLink, type WheelMessage } from './hear-mate.ts';
import { keepSilent } from './keep-silent.ts';
import { growMeshTree, type Join, type MeshTree } from './mesh-tree.ts';
import { type DriveWheel, findOwnStates, type OwnStates } from './own-states.ts';
import { isNearStandard, type PairHelix } from './pair-factor.ts';
import { createLabels, type PitchLabels } from './pitch-labels.ts';
import { listToothStates, type ToothState } from './tooth-states.ts';
import { type Support, weighInferred } from './weigh-inferred.ts';

/** A state list after every mate has spoken, with what each link made of each state. */
export interface HeardStates {
  readonly states: readonly ToothState[];
  readonly links: readonly {
    readonly join: Join;
    readonly link: PairLink;
    readonly message: WheelMessage;
    readonly heard: readonly HeardState[];
  }[];
}

/**
 * What the wheels of one drive say to each other, worked out when asked for and kept: belief passed along the tree of
 * meshes (Pearl, Probabilistic Reasoning in Intelligent Systems, 1988, chapter 4), sums over labels and counts exact,
 * shifts as Gaussian mixtures of which moments are kept.
 */
export interface DriveMessages {
  readonly labels: PitchLabels;
  treeOf(id: string): MeshTree;
  ownOf(id: string): OwnStates;
  evidenceOf(id: string): WheelEvidence;
  /** What a mate says, with all behind it but the listener. */
  messageTo(listener: string, mate: string): WheelMessage;
  linkOf(listener: string, mate: string): PairLink;
  /** A wheel with little or nothing measured, weighed where its mates allow. */
  weighWithin(id: string, counts: readonly CountChance[], support: Support): WeighedWheel;
  /** Where a wheel may be at all, by its mates and distances; undefined where no mate limits it. */
  supportOf(id: string, counts: readonly CountChance[]): Support | undefined;
  /** The states with what all mates say of them; `except` does not speak. */
  hearAll(id: string, states: readonly ToothState[], except?: string): HeardStates;
}

export function openMessages(
  machine: Machine,
  wheels: readonly DriveWheel[],
  joins: readonly Join[],
): DriveMessages {
  const labels = createLabels(machine);
  const byId = new Map(wheels.map((wheel) => [wheel.evidence.id, wheel]));
  const trees = new Map<string, MeshTree>();
  const owns = new Map<string, OwnStates>();
  const said = new Map<string, WheelMessage>();
  const speaking = new Set<string>();

  const wheelOf = (id: string): DriveWheel => {
    const wheel = byId.get(id);
    if (!wheel) throw new Error(`the drive has no wheel ${id}`);
    return wheel;
  };
  const evidenceOf = (id: string): WheelEvidence => wheelOf(id).evidence;

  const treeOf = (id: string): MeshTree => {
    const known = trees.get(id);
    if (known) return known;
    const tree = growMeshTree(id, joins);
    for (const one of tree.wheels) trees.set(one, tree);
    return tree;
  };

  const matesOf = (id: string): { mate: string; join: Join }[] =>
    treeOf(id).joins.flatMap((join) => {
      const [a, b] = join.wheels;
      return a === id ? [{ mate: b, join }] : b === id ? [{ mate: a, join }] : [];
    });

  const ownOf = (id: string): OwnStates => {
    let own = owns.get(id);
    if (!own) {
      own = findOwnStates(wheelOf(id), labels);
      owns.set(id, own);
    }
    return own;
  };

  const isBare = (id: string): boolean => {
    const { of } = ownOf(id);
    return of === 'bare';
  };

  const linkOf = (listener: string, mate: string): PairLink => {
    const found = matesOf(listener).find((one) => one.mate === mate);
    if (!found) throw new Error(`${listener} does not run against ${mate}`);
    const ways = listDistanceWays(found.join.distances);
    const hasOneDistance = (id: string): boolean =>
      matesOf(id).filter(({ join }) => join.distances.length > 0).length === 1;
    return {
      ways,
      helix: findHelix([evidenceOf(listener), evidenceOf(mate)]),
      mayCancel: [listener, mate].some((id) => isBare(id) && hasOneDistance(id)),
    };
  };

  const messageTo = (listener: string, mate: string): WheelMessage => {
    const key = `${mate} > ${listener}`;
    let message = said.get(key);
    if (!message) {
      speaking.add(key);
      message = speak(listener, mate);
      speaking.delete(key);
      said.set(key, message);
    }
    return message;
  };

  const speak = (listener: string, id: string): WheelMessage => {
    const own = ownOf(id);
    const { kind } = evidenceOf(id);
    const behind = matesOf(id).filter(({ mate }) => mate !== listener);
    if (own.of === 'measured' || own.of === 'spec') {
      const states = flatten(collapseStates(own.states));
      return explicit(
        labels,
        kind,
        false,
        behind.length === 0 ? states : hearAll(id, states, listener).states,
      );
    }
    if (own.of === 'fragment') {
      const support = supportOf(id, own.counts);
      if (!support) return keepSilent(kind, own.counts, labels);
      const weighed = weighWithin(id, own.counts, support);
      const states = listToothStates(weighed, labels, support);
      return explicit(labels, kind, false, hearAll(id, flatten(collapseStates(states)), listener).states);
    }
    const named = new Set<number>();
    for (const { mate } of behind) {
      for (const label of messageTo(id, mate).labels ?? []) named.add(label);
    }
    if (named.size === 0 && behind.some(({ join }) => join.distances.length > 0)) {
      for (const label of supportOf(id, own.counts)?.keys() ?? []) named.add(label);
    }
    if (named.size === 0) return keepSilent(kind, own.counts, labels);
    const made = keepSilent(kind, own.counts, labels);
    const states = [...named].flatMap((label) => {
      const { prior } = labels.describe(label);
      return [...(made.statesOf(label)?.values() ?? [])].flatMap((list) =>
        list.map((state) => ({ ...state, weight: state.weight * prior })),
      );
    });
    return explicit(labels, kind, true, hearAll(id, states, listener).states);
  };

  const hearAll = (id: string, states: readonly ToothState[], except?: string): HeardStates => {
    const { kind } = evidenceOf(id);
    let current = states;
    const links = matesOf(id)
      .filter(({ mate }) => mate !== except)
      .map(({ mate, join }) => {
        const link = linkOf(id, mate);
        const message = messageTo(id, mate);
        const heard = hearMate(current, kind, message, link, labels);
        current = heard;
        return { join, link, message, heard };
      });
    return { states: current, links };
  };

  const supportOf = (id: string, counts: readonly CountChance[]): Support | undefined => {
    const { kind } = evidenceOf(id);
    const found = new Map<number, ReadonlySet<number>>();
    const mates = matesOf(id).filter(({ mate }) => !speaking.has(`${mate} > ${id}`));
    const hasDistances = mates.some(({ join }) => join.distances.length > 0);
    const list = hasDistances || counts.length < fewCounts ? counts : thinOut(counts);
    const spoken = mates.map(({ mate }) => {
      const message = messageTo(id, mate);
      const { ways, helix } = linkOf(id, mate);
      return { message, helix, close: ways.filter((way) => way.variance <= 9 * ways[0].variance) };
    });
    const measured = spoken.filter(({ close }) => close.length > 0);
    const named = new Set(spoken.flatMap(({ message }) => listLikely(message)));
    // Where no teeth were measured, two counts and a distance still say the size; one count alone does not.
    const isCounted =
      counts.length <= fewCounts &&
      measured.some(({ message }) => message.counts !== undefined && message.counts.length <= fewCounts);
    for (const label of named.size > 0 || !isCounted ? named : labels.listAll()) {
      const described = labels.describe(label);
      const allowed = list.flatMap(({ teeth }) => {
        const isNear = measured.some(({ message, helix, close }) =>
          (message.counts ?? [...(message.statesOf(label)?.keys() ?? [])]).some((other) =>
            close.some((way) => isNearStandard(way, described, [kind, message.kind], [teeth, other], helix)),
          ),
        );
        return isNear || measured.length === 0 ? [teeth] : [];
      });
      if (allowed.length > 0) found.set(label, new Set(allowed));
    }
    return found.size === 0 ? undefined : found;
  };

  const weighWithin: DriveMessages['weighWithin'] = (id, counts, support) =>
    weighInferred(evidenceOf(id), counts, support, labels);

  return { labels, treeOf, ownOf, evidenceOf, messageTo, linkOf, weighWithin, supportOf, hearAll };
}

/** The labels that a mate names with some weight. */
function listLikely({ labels, statesOf }: WheelMessage): number[] {
  return [...(labels ?? [])].filter((label) => {
    let share = 0;
    for (const states of statesOf(label)?.values() ?? []) for (const one of states) share += one.weight;
    return share >= thinShare;
  });
}

/** A label that a mate gives less than that is not gone into; it counts among the rest. */
const thinShare = 1e-4;
/** So many counts can be gone through even where no distance narrows them. */
const fewCounts = 12;

/** A few counts that stand for all of them, with no distance to tell them apart: even ratios. */
function thinOut(counts: readonly CountChance[]): readonly CountChance[] {
  return Array.from(
    { length: fewCounts },
    (_, i) => counts[Math.floor(counts.length ** ((i + 1) / fewCounts)) - 1],
  );
}

function explicit(
  labels: PitchLabels,
  kind: WheelEvidence['kind'],
  isBare: boolean,
  states: readonly ToothState[],
): WheelMessage {
  const groups = collapseStates(states);
  let weight = 0;
  let mean = 0;
  let square = 0;
  for (const state of flatten(groups)) {
    const radius = (labels.describe(state.label).module * state.teeth) / 2;
    weight += state.weight;
    mean += state.weight * radius;
    square += state.weight * radius * radius;
  }
  mean /= weight;
  return {
    kind,
    isBare,
    counts: undefined,
    labels: new Set(groups.keys()),
    statesOf: (label) => groups.get(label),
    radius: { mean, variance: Math.max(0, square / weight - mean * mean) },
  };
}

function flatten(groups: GroupedStates): ToothState[] {
  return [...groups.values()].flatMap((byTeeth) => [...byTeeth.values()].flat());
}

/** β of a pair, from the first of the two that was measured; spur wheels otherwise. */
function findHelix(wheels: readonly WheelEvidence[]): PairHelix {
  for (const wheel of wheels) {
    const { helix, counts } = buildSpace(wheel);
    if (!helix || wheel.kind === 'rack') continue;
    const z = counts[0]?.teeth ?? 30;
    const factor = z / (z + (wheel.kind === 'internal' ? -2 : 2) * Math.cos(helix.atTip));
    return { angle: Math.abs(Math.atan(Math.tan(helix.atTip) * factor)), spread: helix.spread * factor };
  }
  return { angle: 0, spread: 0 };
}
