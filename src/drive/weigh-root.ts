import type { WeighedWheel } from '../readings/weigh-wheel.ts';
import type { DriveMessages } from './drive-messages.ts';
import { listToothStates, type ToothState } from './tooth-states.ts';

export interface Root {
  readonly weighed: WeighedWheel;
  readonly states: readonly ToothState[];
  /** Prior probability of all that has no state */
  readonly rest: number;
}

/** The wheel asked about, weighed part by part; undefined where neither it nor any mate limits it. */
export function weighRoot(messages: DriveMessages, id: string): Root | undefined {
  const own = messages.ownOf(id);
  if (own.of === 'measured') return { weighed: own.weighed, states: own.states, rest: 0 };
  if (own.of === 'spec') return undefined;
  const support = messages.supportOf(id, own.counts);
  if (!support) return undefined;
  const weighed = messages.weighWithin(id, own.counts, support);
  const states = listToothStates(weighed, messages.labels, support);
  const held =
    weighed.parts.reduce((sum, part) => sum + Math.exp(part.prior), 0) *
    states.reduce((sum, state) => sum + state.weight, 0);
  return states.length === 0 ? undefined : { weighed, states, rest: Math.max(0, 1 - held) };
}
