import type { Takings } from './wheel-evidence.ts';

/**
 * Several takings of one length as one value: their mean, the random part's standard uncertainty of that mean, and
 * the index of a taking that lies far from the others (undefined where none does).
 *
 * The spread of the takings counts beside what the instrument is known for: s² = (ν u² + Σ(y − ȳ)²)/(ν + n − 1),
 * the variance under a scaled inverse χ² prior worth ν = 4 takings (Gelman et al., Bayesian Data Analysis, 2.6);
 * the mean of n takings has s²/n. One taking has u itself.
 *
 * @param instrument standard uncertainty of one taking, mm
 * @example combineTakings([12.44, 12.46, 12.43], 0.015) = { mean: 12.4433, deviation: 0.0087, farOff: undefined }
 */
export function combineTakings(
  takings: Takings,
  instrument: number,
): { readonly mean: number; readonly deviation: number; readonly farOff: number | undefined } {
  const list = typeof takings === 'number' ? [takings] : takings;
  const n = list.length;
  let mean = 0;
  for (const value of list) mean += value / n;
  let squares = 0;
  for (const value of list) squares += (value - mean) ** 2;
  const variance = (priorTakings * instrument ** 2 + squares) / (priorTakings + n - 1);
  return { mean, deviation: Math.sqrt(variance / n), farOff: findFarOff(list, instrument) };
}

const priorTakings = 4;

// Five times the instrument's own spread, and at least 0.1 mm: what a person would take again.
function findFarOff(list: readonly number[], instrument: number): number | undefined {
  if (list.length < 3) return undefined;
  const sorted = [...list].sort((a, b) => a - b);
  const median = sorted[sorted.length >> 1];
  const limit = Math.max(5 * instrument, 0.1);
  const index = list.findIndex((value) => Math.abs(value - median) > limit);
  return index < 0 ? undefined : index;
}
