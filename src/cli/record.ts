import { parseJob, type RepairRecord, repairRecord, tellOdds } from '../index.ts';
import type { CommandOutput } from './command-output.ts';
import { tellNotices } from './tell-notices.ts';
import { wrapText } from './wrap-text.ts';

export interface RecordCommandOptions {
  readonly wheel: string;
  readonly process?: string;
  readonly material?: string;
  readonly date?: string;
}

/** The verb `record`: what failed, what it was, what was made, what proves it, and when to look again, on one page. */
export function recordCommand(bytes: Uint8Array, options: RecordCommandOptions): CommandOutput {
  const { job, notices } = parseJob(bytes);
  const record = repairRecord(job, {
    wheelId: options.wheel,
    process: options.process,
    material: options.material,
    date: options.date,
  });
  return { json: record, lines: tellRecord(record), notes: tellNotices(notices), exitCode: 0 };
}

function tellRecord(record: RepairRecord): string[] {
  const { wheel, failed, identity, made, check, lookAgain } = record;
  const part = (head: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ['', head, ...lines.flatMap((line) => wrapText(line, '  '))];
  const size = (change: (typeof made.changes)[number]): string =>
    change.to === null || change.to === change.from
      ? ''
      : `: ${change.from === null ? '' : `${change.from} to `}${change.to}${change.unit === '' ? '' : ` ${change.unit}`}`;
  return [
    `Repair record: ${record.title}, ${wheel.name}${record.date === null ? '' : `, ${record.date}`}`,
    ...part('What failed, and why', [
      `Seen: ${failed.seen.length === 0 ? 'nothing noted' : failed.seen.join(', ')}.${failed.material === null ? '' : ` Made of ${failed.material}.`}`,
      ...failed.causes.map(({ name, likelihood, test }) => `${likelihood}: ${name}. ${test}`),
    ]),
    ...part(
      'Readings',
      record.readings.map(({ what, read }) => `${what}: ${read}`),
    ),
    ...part('What it is', [
      `${identity.what}: ${identity.probability === null ? 'as given' : `${identity.verdict}, ${tellOdds(identity.probability)}`}.`,
    ]),
    ...part('What was made', [
      `${made.isTrial ? 'A trial part. ' : ''}${made.process}, ${made.material}, ${made.faceWidthMm} mm wide.`,
      ...made.changes.filter(({ isOn }) => isOn).map((change) => `${change.what}${size(change)}`),
    ]),
    ...part('The check', [
      ...check.rolled.map(
        ({ mate, after }) =>
          `Rolled against ${mate}, before it was made: ${after.verdict}${after.backlashLeastMm === null ? '' : `, play ${after.backlashLeastMm.toFixed(3)} mm`}.`,
      ),
      check.strength.margin === null
        ? 'Strength: no load known.'
        : `Strength: ${check.strength.verdict}, margin ${Number(check.strength.margin.value.toPrecision(2))} where ${check.strength.wanted} is wanted.`,
      'Measured after it was made: outside ______ span ______ bore ______ by ______',
    ]),
    ...part('Look again', [
      `${lookAgain.on ?? `${lookAgain.months} months after it was put in`}: ${lookAgain.reason}.${lookAgain.isStopgap ? ' This part is a stopgap.' : ''}`,
    ]),
    ...part('Take care', record.cautions),
  ];
}
