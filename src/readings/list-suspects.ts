import type { SlipPattern } from '../evidence/weigher.ts';
import type { Candidate } from './build-candidates.ts';
import type { MeasuredLength } from './measured-length.ts';
import type { WheelEvidence } from './wheel-evidence.ts';

export interface Suspect {
  /** Index of the reading; −1 for the caliper's zero and for what stands elsewhere in the job. */
  readonly reading: number;
  readonly of: string;
  readonly probability: number;
  readonly repair?: {
    readonly kind: SlipPattern['kind'] | 'count-off-by-one';
    readonly value?: number;
    readonly unit?: 'mm' | 'teeth';
  };
}

/** Below this a reading is not worth a second look. */
export const suspectFrom = 0.1;

/** The readings of a wheel that may be slips, likeliest first, each with the kindest way to put it right. */
export function listSuspects(
  wheel: WheelEvidence,
  lengths: readonly MeasuredLength[],
  patterns: readonly SlipPattern[],
  weights: Float64Array,
  candidates: readonly Candidate[],
): Suspect[] {
  const suspects: Suspect[] = lengths.map((length, i): Suspect => {
    let probability = 0;
    let best = -1;
    patterns.forEach((pattern, k) => {
      if (pattern.reading !== i) return;
      probability += weights[k];
      if (best < 0 || weights[k] > weights[best]) best = k;
    });
    const kindest = patterns[best];
    return {
      reading: length.index,
      of: length.of,
      probability,
      ...(kindest.kind === 'wrong'
        ? {}
        : { repair: { kind: kindest.kind, value: kindest.repairedValue, unit: 'mm' as const } }),
    };
  });
  patterns.forEach((pattern, k) => {
    if (pattern.kind === 'zero-not-set') {
      suspects.push({ reading: -1, of: 'zero', probability: weights[k], repair: { kind: 'zero-not-set' } });
    }
  });
  const counted = wheel.readings.findIndex(
    (reading) => reading.of === 'teeth' && reading.count !== undefined,
  );
  if (counted >= 0) {
    const reading = wheel.readings[counted];
    const count = reading.of === 'teeth' ? reading.count : undefined;
    const off = candidates.filter((candidate) => candidate.teeth !== count);
    const probability = off.reduce((sum, candidate) => sum + candidate.probability, 0);
    if (off.length > 0) {
      suspects.push({
        reading: counted,
        of: 'teeth',
        probability,
        repair: { kind: 'count-off-by-one', value: off[0].teeth, unit: 'teeth' },
      });
    }
  }
  return suspects
    .filter((one) => one.probability >= suspectFrom)
    .sort((a, b) => b.probability - a.probability);
}
