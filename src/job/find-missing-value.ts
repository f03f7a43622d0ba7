import type { Wheel } from './job-schema.ts';

export type JobReading = NonNullable<Wheel['readings']>[number];

/**
 * The field that a reading still needs before it says anything, as the job file names it; undefined where it says
 * something. A list with an empty form for every reading is a job too, and none of those count as taken.
 *
 * @example findMissingValue({ of: 'span', mm: 7.7 }) = 'teeth'
 */
export function findMissingValue(reading: JobReading): string | undefined {
  switch (reading.of) {
    case undefined:
      return 'of';
    case 'teeth': {
      const isSwept = reading.pitches !== undefined && reading.overDeg !== undefined;
      return reading.count === undefined && reading.left === undefined && !isSwept ? 'count' : undefined;
    }
    case 'helix-angle':
      return reading.deg === undefined ? 'deg' : undefined;
    case 'hand-roll':
      return reading.felt === undefined ? 'felt' : undefined;
    case 'bore':
      return reading.mm === undefined && reading.goesMm === undefined ? 'mm' : undefined;
    case 'center-distance': {
      const overPosts = reading.overPostsMm ?? reading.betweenPostsMm;
      const isSum = overPosts !== undefined && reading.postsMm !== undefined;
      return reading.mm === undefined && !isSum ? 'mm' : undefined;
    }
    case 'span':
      if (reading.mm !== undefined && reading.teeth === undefined) return 'teeth';
      return reading.mm === undefined ? 'mm' : undefined;
    case 'over-pins':
      if (reading.mm !== undefined && reading.pinMm === undefined) return 'pinMm';
      return reading.mm === undefined ? 'mm' : undefined;
    default:
      return reading.mm === undefined ? 'mm' : undefined;
  }
}
