import type { Candidate } from './build-candidates.ts';
import type { Verdict } from './judge.ts';
import type { NextReading } from './next-readings.ts';

/** Why there is nothing more to learn with this kit, and what to do instead. */
export type Ending = 'same-teeth' | 'either-runs-slowly' | 'make-both' | 'stop-here';

/**
 * The ending, where no reading that is left would tell more than `leastGain` bits; undefined where one would.
 *
 * Same teeth: all that is left differs in name only. Either runs slowly: base pitches within 0.6 % and base
 * thickness near, a judgment. Make both: two to four rivals a trial plate can tell apart. Else stop here.
 */
export function chooseEnding(
  candidates: readonly Candidate[],
  sameTeeth: readonly (readonly number[])[],
  next: readonly NextReading[],
  verdict: Verdict,
): Ending | undefined {
  if (candidates.length === 0 || next.some((reading) => reading.gainBits >= leastGain)) return undefined;
  if (verdict === 'nothing-fits') return 'stop-here';
  const rivals = listRivals(candidates);
  const same = sameTeeth.find((group) => group.includes(0));
  if (rivals.length < 2) return undefined;
  if (same && rivals.every((rival) => same.includes(candidates.indexOf(rival)))) return 'same-teeth';
  const pitches = rivals.map((rival) => rival.derived.basePitchMm);
  if (Math.max(...pitches) / Math.min(...pitches) - 1 < nearPitch) return 'either-runs-slowly';
  return rivals.length <= 4 ? 'make-both' : 'stop-here';
}

/** The candidates that together hold nineteen in twenty, but not those below one in forty. */
export function listRivals<T extends Pick<Candidate, 'probability'>>(candidates: readonly T[]): T[] {
  const rivals: T[] = [];
  let covered = 0;
  for (const candidate of candidates) {
    if (candidate.probability < 0.025 || covered > 0.95) break;
    rivals.push(candidate);
    covered += candidate.probability;
  }
  return rivals;
}

const leastGain = 0.02;
const nearPitch = 0.006;
