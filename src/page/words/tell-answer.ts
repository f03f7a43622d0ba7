import { capitalize, namePitch, tellAngleOdds, tellAnswerOdds, type WheelReport } from '../../index.ts';

/** The answer about one gear, in the page's words: one sentence, the trade's word apart, odds, and what else stands. */
export interface AnswerWords {
  readonly sentence: string;
  /** The trade's word for the size, as `module` */
  readonly trade?: string | undefined;
  readonly odds?: string | undefined;
  readonly more: readonly string[];
}

export function tellAnswer(report: WheelReport | undefined): AnswerWords {
  const lead = report?.candidates[0];
  if (!report) return { sentence: "Can't tell yet.", more: [] };
  if (!lead) {
    return report.verdict === 'nothing-fits'
      ? {
          sentence: 'No gear I know gives these readings.',
          more: ['They contradict each other: take them again, one by one.'],
        }
      : { sentence: "Can't tell yet.", more: ['Every other reading is understood through the tooth count.'] };
  }
  const [size, trade] = splitTrade(namePitch(report.verdict === 'nothing-fits' ? lead : report.pitch[0]));
  if (report.verdict === 'nothing-fits') {
    return {
      sentence: 'No gear I know gives these readings.',
      more: [`The nearest would be ${size}, ${lead.teeth} teeth. Look at the readings again.`],
    };
  }
  const odds = tellAnswerOdds(report);
  const isOpen = report.verdict === 'undecided';
  return {
    sentence: isOpen
      ? `Can't tell yet. Most likely ${size}, ${lead.teeth} teeth.`
      : `${capitalize(size)}, ${lead.teeth} teeth.`,
    trade,
    odds,
    more: isOpen
      ? tellDoubt(report)
      : [...tellDoubt(report), tellAngle(report), ...tellShift(report), ...tellSame(report)],
  };
}

/** "metric size 0.5 (module)" → its two halves. */
export function splitTrade(name: string): [string, string | undefined] {
  const found = /^(.*) \(([^)]+)\)$/.exec(name);
  return found ? [found[1], found[2]] : [name, undefined];
}

function tellDoubt(report: WheelReport): string[] {
  if (report.suspect.length === 0) return [];
  return [
    report.suspect.length === 1 ? "One reading doesn't agree with the others." : "Some readings don't agree.",
  ];
}

function tellAngle(report: WheelReport): string {
  const [lead] = report.candidates;
  return `Flanks at ${lead.pressureAngleDeg}° (pressure angle): ${tellAngleOdds(report)}.`;
}

function tellShift(report: WheelReport): string[] {
  const [{ spec, specU }] = report.candidates;
  if (Math.abs(spec.profileShift) < 0.05) return [];
  const kind = spec.profileShift > 0 ? 'Fat teeth' : 'Thin teeth';
  const sign = spec.profileShift > 0 ? '+' : '−';
  return [
    `${kind}, ${sign}${Math.abs(spec.profileShift).toFixed(2)} (profile shift), give or take ${specU.profileShift.toFixed(2)}.`,
  ];
}

function tellSame(report: WheelReport): string[] {
  const same = report.sameTeeth.find((group) => group.includes(0));
  if (!same || same.length < 2) return [];
  const names = same
    .slice(0, 3)
    .map((index) => `${namePitch(report.candidates[index])}, ${report.candidates[index].pressureAngleDeg}°`);
  return [`Names for the same teeth, so it makes no difference which: ${names.join('; ')}.`];
}
