import type { ToothState } from './tooth-states.ts';

/** States by label and then count. */
export type GroupedStates = ReadonlyMap<number, ReadonlyMap<number, readonly ToothState[]>>;

/**
 * The states of a wheel as its mates need them: those of one label and count whose shifts lie close are one, mean and
 * variance kept, and those too unlikely to matter are gone. Weights sum to 1.
 */
export function collapseStates(states: readonly ToothState[]): GroupedStates {
  const total = states.reduce((sum, state) => sum + state.weight, 0);
  const cells = new Map<string, { state: ToothState; weight: number; mean: number; square: number }>();
  for (const state of states) {
    const { label, teeth, weight, mean, variance } = state;
    const width = variance < 0.0016 ? 0.02 : 0.05;
    const kind = variance < 0.0004 ? 0 : variance < 0.0036 ? 1 : 2;
    const key = `${label} ${teeth} ${kind} ${Math.round(mean / width)}`;
    const cell = cells.get(key);
    if (cell) {
      cell.weight += weight;
      cell.mean += weight * mean;
      cell.square += weight * (variance + mean * mean);
    } else {
      cells.set(key, { state, weight, mean: weight * mean, square: weight * (variance + mean * mean) });
    }
  }
  const groups = new Map<number, Map<number, ToothState[]>>();
  for (const { state, weight, mean: sum, square } of cells.values()) {
    if (weight < negligible * total) continue;
    const mean = sum / weight;
    const { label, teeth } = state;
    const byTeeth = groups.get(label) ?? new Map<number, ToothState[]>();
    groups.set(label, byTeeth);
    const list = byTeeth.get(teeth) ?? [];
    byTeeth.set(teeth, list);
    const variance = Math.max(0, square / weight - mean * mean);
    list.push({ label, teeth, weight: weight / total, mean, variance, part: -1 });
  }
  return groups;
}

const negligible = 1e-6;
