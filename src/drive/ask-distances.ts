import { distancePlay } from '../../gear-library/tooth-variation.ts';
import { findExpectedInformation } from '../evidence/expected-information.ts';
import { measureLength } from '../readings/measured-length.ts';
import type { NextReading } from '../readings/next-readings.ts';
import type { DriveMessages } from './drive-messages.ts';
import { expectDistance, findSigns } from './pair-factor.ts';
import type { ToothState } from './tooth-states.ts';

/** Distances of a wheel that nobody measured yet. */
export function askDistances(
  messages: DriveMessages,
  id: string,
  states: readonly ToothState[],
): NextReading[] {
  return messages.treeOf(id).joins.flatMap(({ wheels, distances }): NextReading[] => {
    if (!wheels.includes(id) || distances.length > 0) return [];
    const mate = wheels[0] === id ? wheels[1] : wheels[0];
    return [
      {
        of: 'center-distance',
        mate,
        gainBits: expectFromDistance(messages, id, mate, states),
        why: 'meshing wheels share one pitch, so the distance of the posts speaks',
      },
    ];
  });
}

/**
 * How many bits the distance to a mate, not yet measured, is expected to give about a wheel's label and count.
 *
 * @param states of the wheel with all that is known so far
 */
function expectFromDistance(
  messages: DriveMessages,
  id: string,
  mate: string,
  states: readonly ToothState[],
): number {
  const { labels, evidenceOf, messageTo, linkOf } = messages;
  const said = messageTo(id, mate);
  const kinds = [evidenceOf(id).kind, said.kind] as const;
  const signs = findSigns(...kinds);
  if (!signs) return 0;
  const { helix } = linkOf(id, mate);
  const { noise, zeroDeviation } = measureLength(evidenceOf(id), { of: 'center-distance' }, -1, 0, undefined);
  const weights: number[] = [];
  const classes: number[] = [];
  const means: number[] = [];
  const deviations: number[] = [];
  const numbers = new Map<string, number>();
  const total = states.reduce((sum, state) => sum + state.weight, 0);
  for (const state of states) {
    if (state.weight < thin * total) continue;
    const label = labels.describe(state.label);
    const others = [...(said.statesOf(state.label) ?? [])];
    const whole = others.reduce((sum, [, list]) => sum + list.reduce((part, one) => part + one.weight, 0), 0);
    for (const [teeth, list] of others) {
      for (const one of list) {
        const weight = (state.weight / total) * (one.weight / whole);
        if (weight < thin) continue;
        const shifts = signs[0] * state.mean + signs[1] * one.mean;
        const mean = expectDistance(label, kinds, [state.teeth, teeth], shifts, helix);
        if (mean === undefined) continue;
        const loose =
          signs[0] ** 2 * state.variance + signs[1] ** 2 * one.variance + distancePlay.spread ** 2;
        const key = `${label.system} ${label.isFree ? '' : label.size} ${label.pressureAngleDeg} ${state.teeth}`;
        const number = numbers.get(key) ?? numbers.size;
        numbers.set(key, number);
        weights.push(weight);
        classes.push(number);
        means.push(mean);
        deviations.push(Math.sqrt(noise + zeroDeviation ** 2 + label.module ** 2 * loose));
      }
    }
  }
  if (numbers.size < 2) return 0;
  const covered = weights.reduce((sum, weight) => sum + weight, 0);
  return findExpectedInformation(
    weights.map((weight) => weight / covered),
    classes,
    numbers.size,
    means,
    deviations,
  );
}

const thin = 1e-3;
