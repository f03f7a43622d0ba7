import type { Candidate } from './build-candidates.ts';

export type Verdict = 'certain' | 'likely' | 'undecided' | 'nothing-fits';

/** One size with its probability, angles and counts summed out. */
export interface PitchChance {
  readonly system: Candidate['system'];
  readonly size: number;
  readonly moduleMm: number;
  readonly probability: number;
}

/** Sizes, most probable first. */
export function sumPitches(candidates: readonly Candidate[]): PitchChance[] {
  const sums = new Map<string, PitchChance>();
  for (const { system, size, moduleMm, probability } of candidates) {
    const key = system === 'free' ? 'free' : `${system} ${size}`;
    const known = sums.get(key);
    // Of a free module the leading candidate's size stands for all: they come most probable first.
    sums.set(key, {
      ...(known ?? { system, size, moduleMm }),
      probability: (known?.probability ?? 0) + probability,
    });
  }
  return [...sums.values()].sort((a, b) => b.probability - a.probability);
}

const certainFrom = 0.99;
const likelyFrom = 0.8;

/** What a probability is called. Certain also asks that no reading is suspect. */
export function judge(probability: number, hasSuspect: boolean): Verdict {
  if (probability >= certainFrom && !hasSuspect) return 'certain';
  return probability >= likelyFrom ? 'likely' : 'undecided';
}

/** A free module leads and no listed size lies near it, or even the best leaves readings unexplained. */
export function fitsNothing(
  pitches: readonly PitchChance[],
  lead: Candidate | undefined,
  suspects: readonly number[],
): boolean {
  if (!lead) return true;
  const unexplained = lead.residuals.filter(
    (residual) => Math.abs(residual.sigmas) > farSigmas && !suspects.includes(residual.reading),
  );
  if (unexplained.length > 0) return true;
  if (pitches[0].system !== 'free') return false;
  const near = pitches.some(
    (pitch) =>
      pitch.system !== 'free' &&
      pitch.probability > 0.02 &&
      Math.abs(pitch.moduleMm / pitches[0].moduleMm - 1) < nearRatio,
  );
  return pitches[0].probability >= 0.5 && !near;
}

const namedFrom = 0.01;
const farSigmas = 4;
const nearRatio = 0.01;

/** Groups of candidates (by index) whose teeth are the same: base pitch within 0.1 %, base thickness within 0.02 mm. */
export function groupSameTeeth(
  candidates: readonly Candidate[],
  baseThickness: readonly number[],
): number[][] {
  const groups: number[][] = [];
  candidates.forEach((candidate, i) => {
    // What hardly anybody would name makes no second name.
    if (candidate.probability < namedFrom) return;
    const group = groups.find(([first]) => {
      const other = candidates[first];
      return (
        other.teeth === candidate.teeth &&
        Math.abs(other.derived.basePitchMm / candidate.derived.basePitchMm - 1) <= 0.001 &&
        Math.abs(baseThickness[first] - baseThickness[i]) <= 0.02
      );
    });
    if (group) group.push(i);
    else groups.push([i]);
  });
  return groups.filter((group) => group.length > 1);
}
