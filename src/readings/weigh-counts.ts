import { slipRates } from '../../gear-library/slips.ts';
import type { Reading, TeethReading } from './wheel-evidence.ts';

/** A tooth count that the readings allow, with its weight (summing to 1) and whether it is a miscount. */
export interface CountChance {
  readonly teeth: number;
  readonly weight: number;
  /** The count as read is off by one. */
  readonly slip: boolean;
}

/**
 * The tooth counts that the `teeth` readings allow: all counted; teeth left and how many seem gone; or an angle
 * over a number of pitches. Several such readings multiply. Empty when nothing was counted.
 *
 * An angle of θ over p pitches says z = 360° p/θ with u(z) = z u(θ)/θ; a count carries the chance of being off by
 * one either way (gear-library/slips).
 */
export function weighCounts(readings: readonly Reading[]): CountChance[] {
  const counts = readings.filter((reading): reading is TeethReading => reading.of === 'teeth');
  if (counts.length === 0) return [];
  const logs = new Map<number, number>();
  const slips = new Map<number, boolean>();
  counts.forEach((reading, index) => {
    const chances = chancesOf(reading);
    for (const { teeth, weight, slip } of chances) {
      if (index > 0 && !logs.has(teeth)) continue;
      logs.set(teeth, (logs.get(teeth) ?? 0) + Math.log(weight));
      slips.set(teeth, (slips.get(teeth) ?? false) || slip);
    }
    for (const teeth of [...logs.keys()]) {
      if (!chances.some((chance) => chance.teeth === teeth)) logs.delete(teeth);
    }
  });
  const kept = [...logs].filter(([teeth]) => teeth >= leastTeeth);
  const greatest = Math.max(...kept.map(([, log]) => log));
  const weights = kept.map(([, log]) => Math.exp(log - greatest));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return kept
    .map(([teeth], i) => ({ teeth, weight: weights[i] / total, slip: slips.get(teeth) ?? false }))
    .filter((chance) => chance.weight > 1e-4)
    .sort((a, b) => b.weight - a.weight);
}

const leastTeeth = 4;

function chancesOf(reading: TeethReading): CountChance[] {
  const off = reading.chance === undefined ? slipRates['count-off-by-one'].chance : 1 - reading.chance;
  if (reading.count !== undefined) {
    return [
      { teeth: reading.count, weight: 1 - off, slip: false },
      { teeth: reading.count - 1, weight: off / 2, slip: true },
      { teeth: reading.count + 1, weight: off / 2, slip: true },
    ];
  }
  if (reading.left !== undefined) {
    const missing = reading.missing && reading.missing.length > 0 ? reading.missing : [0];
    const weights = new Map<number, { weight: number; slip: boolean }>();
    for (const gone of missing) weights.set(reading.left + gone, { weight: 1 / missing.length, slip: false });
    // A guess of what is gone can be one off at either end of its range.
    for (const edge of [Math.min(...missing) - 1, Math.max(...missing) + 1]) {
      if (edge >= 0) weights.set(reading.left + edge, { weight: guessOff, slip: true });
    }
    return [...weights].map(([teeth, { weight, slip }]) => ({ teeth, weight, slip }));
  }
  if (reading.pitches !== undefined && reading.overDeg !== undefined) {
    const mean = (360 * reading.pitches) / reading.overDeg;
    const spread = Math.max(0.05, (mean * (reading.uDeg ?? defaultAngleDeg)) / reading.overDeg);
    const chances: CountChance[] = [];
    for (let teeth = Math.ceil(mean - 4 * spread); teeth <= mean + 4 * spread; teeth++) {
      chances.push({ teeth, weight: Math.exp(-0.5 * ((teeth - mean) / spread) ** 2), slip: false });
    }
    if (chances.length === 0) chances.push({ teeth: Math.round(mean), weight: 1, slip: false });
    return chances;
  }
  return [];
}

// A guess at missing teeth that misses its own range: one in twenty at each end.
const guessOff = 0.05;
// An angle read off a picture, degrees, where the reading does not say.
const defaultAngleDeg = 2;
