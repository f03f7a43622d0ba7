import type { Residual } from '../readings/build-candidates.ts';
import type { FromTheDrive } from '../readings/conclude-identity.ts';
import { type Suspect, suspectFrom } from '../readings/list-suspects.ts';
import { keyOf } from '../readings/settle-parts.ts';
import type { WeighedWheel } from '../readings/weigh-wheel.ts';
import type { HeardStates } from './drive-messages.ts';
import type { ToothState } from './tooth-states.ts';

/**
 * The shaft distances of a wheel as its answer shows them: what each was expected to be, by candidate, and which may
 * be slips. A distance that stands with another wheel or with the mesh has no row of its own here, but may be suspect.
 *
 * @param states of the wheel after all have spoken, in the order of `heard`
 */
export function listDistanceDoubts(
  id: string,
  weighed: WeighedWheel,
  heard: HeardStates,
  states: readonly ToothState[],
): Pick<FromTheDrive, 'suspects' | 'residualsOf'> {
  const suspects: Suspect[] = [];
  const residuals = new Map<string, Residual[]>();
  const keys = new Map<number, string>();
  const total = states.reduce((sum, state) => sum + state.weight, 0);
  for (const { join, link, heard: said } of heard.links) {
    if (link.ways.length === 0) continue;
    const byWay = new Float64Array(link.ways.length);
    const apart = new Map<string, { weight: number; sum: number }>();
    states.forEach((state, i) => {
      const one = said[i];
      if (state.weight <= 0) return;
      for (let way = 0; way < byWay.length; way++) {
        byWay[way] += (state.weight / total) * ((one.byWay[way] ?? 0) / one.factor);
      }
      if (Number.isNaN(one.apart)) return;
      const key = keys.get(state.part) ?? keyOf(weighed.parts[state.part]);
      keys.set(state.part, key);
      const sum = apart.get(key) ?? { weight: 0, sum: 0 };
      apart.set(key, { weight: sum.weight + state.weight, sum: sum.sum + state.weight * one.apart });
    });
    join.distances.forEach(({ length, wheel }, k) => {
      let probability = 0;
      let likeliest = -1;
      link.ways.forEach((way, index) => {
        if (way.slipped !== k) return;
        probability += byWay[index];
        if (likeliest < 0 || byWay[index] > byWay[likeliest]) likeliest = index;
      });
      const repair = likeliest < 0 ? undefined : link.ways[likeliest].repair;
      if (probability >= suspectFrom) {
        suspects.push({
          reading: wheel === id ? length.index : -1,
          of: 'center-distance',
          probability,
          ...(repair ? { repair: { kind: repair.kind, value: repair.value, unit: 'mm' as const } } : {}),
        });
      }
      if (wheel !== id) return;
      for (const [key, { weight, sum }] of apart) {
        const expected = link.ways[0].value - sum / weight;
        const rows = residuals.get(key) ?? [];
        residuals.set(key, rows);
        rows.push({
          reading: length.index,
          of: 'center-distance',
          read: length.value,
          expected,
          unit: 'mm',
          sigmas: (length.value - expected) / Math.hypot(Math.sqrt(length.noise), length.zeroDeviation),
        });
      }
    });
  }
  return { suspects, residualsOf: (key) => residuals.get(key) ?? [] };
}
