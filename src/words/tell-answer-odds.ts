import type { WheelReport } from '../job/identity-report.ts';
import { tellOdds } from './tell-odds.ts';

/** How likely what an answer names is: the size, and with it the count where nobody counted. */
export function tellAnswerOdds(report: WheelReport): string {
  const [lead] = report.candidates;
  if (!report.countInferred || !lead) return tellOdds(report.pitch[0]?.probability ?? 0);
  let chance = 0;
  for (const { system, size, teeth, probability } of report.candidates) {
    const isSame = system === lead.system && (system === 'free' || size === lead.size);
    if (isSame && teeth === lead.teeth) chance += probability;
  }
  return tellOdds(chance);
}
