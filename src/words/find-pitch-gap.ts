import type { WheelReport } from '../job/identity-report.ts';

/** The widest difference in base pitch among the answers that are still likely, mm. */
export function findPitchGap(report: WheelReport): number {
  const pitches = report.candidates
    .filter((candidate) => candidate.probability >= 0.025)
    .map((candidate) => candidate.derived.basePitchMm);
  return Math.max(...pitches) - Math.min(...pitches);
}
