import type { PartChange } from './part-design.ts';
import type { DesignReport, MarginReport, RolledReport } from './report-design.ts';
import { shortName } from './short-name.ts';

/** A design in plain words. */
export interface ToldDesign {
  /** How it is made, of what, how it sits, what proves it and what governs */
  readonly lead: readonly string[];
  /** Every change with its reason, those that are made first */
  readonly made: readonly string[];
  readonly left: readonly string[];
  /** What stands against the part as it is, the weightiest first */
  readonly warnings: readonly string[];
}

/** What a design comes to, in sentences. */
export function tellDesign(report: DesignReport): ToldDesign {
  const made = report.changes.filter(({ isOn }) => isOn);
  const left = report.changes.filter(({ isOn }) => !isOn);
  return {
    lead: [
      `Made by ${article(report.process.name)}, of ${shortName(report.material)}.`,
      ...report.rolled.map(({ mate, before, after }) => tellRolled(mate, before, after)),
      tellMargin(report.strength.after, report.strength.before),
      ...report.notes,
      `Look at it again after ${report.lookAgain.months} months: ${report.lookAgain.reason}.${report.lookAgain.isStopgap ? ' It is a stopgap.' : ''}`,
    ],
    made: made.map((change) => `${tellStep(change)}. ${change.why}`),
    left: left.map(
      (change) =>
        `${tellStep(change)}: ${change.withdrawn === undefined ? 'switched off.' : `not made. ${change.withdrawn}`} ${change.why}`,
    ),
    warnings: listWarnings(report),
  };
}

function listWarnings(report: DesignReport): string[] {
  const said: string[] = [];
  const heat = report.changes.find(({ key, isOn }) => key === 'material' && !isOn);
  if (heat) said.push(heat.why);
  for (const { mate, after } of report.rolled) {
    if (after.verdict !== 'turns')
      said.push(`With "${mate}" it ${verdicts[after.verdict]} at their distance.`);
  }
  const { after } = report.strength;
  if (after.verdict === 'fails' || after.verdict === 'doubtful') said.push(tellMargin(after));
  const { wall } = report;
  if (wall?.verdict === 'too-thin')
    said.push(
      `The wall between root and bore is ${show(wall.mm)} mm; ${show(wall.leastMm)} mm and half a tooth's depth are the least.`,
    );
  for (const key of ['bore', 'tip-land', 'weakest-link'] as const) {
    const change = report.changes.find((one) => one.key === key && one.withdrawn !== undefined);
    if (change?.withdrawn) said.push(`${tellStep(change)}: not made. ${change.withdrawn}`);
  }
  if (report.lookAgain.isStopgap)
    said.push(
      `A stopgap: ${shortName(report.material)} ${report.lookAgain.reason.replace(/^it /, '')}. Look again after ${report.lookAgain.months} months.`,
    );
  return said;
}

function tellStep({ what, from, to, unit }: PartChange): string {
  const name = what.charAt(0).toUpperCase() + what.slice(1);
  if (to === null || from === to) return name;
  const size = (value: number | string): string => `${value}${unit === '' ? '' : ` ${unit}`}`;
  return from === null ? `${name}: ${size(to)}` : `${name}: ${size(from)} to ${size(to)}`;
}

const verdicts = { turns: 'turns', rough: 'runs rough', jams: 'jams' } as const;

function tellRolled(mate: string, before: RolledReport, after: RolledReport): string {
  const play = (one: RolledReport): string =>
    one.backlashLeastMm === null
      ? 'loose'
      : one.backlashLeastMm < 0
        ? `${show(-one.backlashLeastMm)} mm too tight`
        : `${show(one.backlashLeastMm)} mm of play`;
  return `Rolled against "${mate}": it ${verdicts[after.verdict]} with ${play(after)} and ${show(after.contactRatio)} teeth sharing the load; a copy ${verdicts[before.verdict]} with ${play(before)}.`;
}

const criteria = {
  'root-running': 'bending at the root while it runs',
  'root-stall': 'bending at the root in a stall',
  'flank-running': 'pressure on the flanks',
} as const;

function tellMargin(after: MarginReport, before?: MarginReport): string {
  if (after.governs === null || after.margin === null)
    return `No load is known. Its teeth bear about ${show(after.carriesStallN.value)} N once, in a stall (${show(after.carriesStallN.low)} to ${show(after.carriesStallN.high)}): give the motor's torque to have it judged.`;
  const was =
    before?.margin && before.governs === after.governs ? `, ${show(before.margin.value)} as a copy` : '';
  const verdict = {
    holds: 'It should hold',
    doubtful: 'It may hold, but not surely',
    fails: 'It is likely to break',
  }[after.verdict === 'no-load' ? 'doubtful' : after.verdict];
  return `${verdict}: ${criteria[after.governs]} governs, with a margin of ${show(after.margin.value)} (${show(after.margin.low)} to ${show(after.margin.high)}${was}) where ${after.wanted} is wanted.`;
}

function article(name: string): string {
  return `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`;
}

/** Two digits that count, three from 100 on. */
function show(value: number): string {
  return String(Number(value.toPrecision(Math.abs(value) >= 100 ? 3 : 2)));
}
