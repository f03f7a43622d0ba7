import type { WheelReport } from '../job/identity-report.ts';
import { tellOdds } from './tell-odds.ts';

/** How likely the leading answer's pressure angle is, whatever the size, as `19 in 20`. */
export function tellAngleOdds(report: WheelReport): string {
  const [lead] = report.candidates;
  let chance = 0;
  for (const candidate of report.candidates) {
    if (candidate.pressureAngleDeg === lead.pressureAngleDeg) chance += candidate.probability;
  }
  return tellOdds(chance);
}
