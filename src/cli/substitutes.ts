import {
  Fail,
  type PartsFile,
  parseJob,
  parseParts,
  type SubstitutesReport,
  searchSubstitutes,
} from '../index.ts';
import type { CommandOutput } from './command-output.ts';
import { reportSubstitutes } from './report-substitutes.ts';
import { tellNotices } from './tell-notices.ts';

export interface SubstitutesCommandOptions {
  readonly wheel?: string;
  readonly parts?: string;
  readonly change?: string;
}

/**
 * The verb `substitutes`: what can go where a wheel was. The answer is no where nothing fits a wheel that was asked
 * about and no train either. Rows of the parts file that could not be read are named on standard error and left out.
 */
export function substitutesCommand(
  bytes: Uint8Array,
  partsBytes: Uint8Array | undefined,
  options: SubstitutesCommandOptions,
  progress: (text: string) => void,
): CommandOutput {
  const { job, notices } = parseJob(bytes);
  const file = partsBytes === undefined ? undefined : parseParts(partsBytes);
  if (file) checkColumns(file, options.parts ?? '');
  const report = run(
    searchSubstitutes(job, {
      ...(options.wheel === undefined ? {} : { wheelId: options.wheel }),
      ...(file === undefined ? {} : { parts: file.parts }),
      ...(options.change === undefined ? {} : { change: options.change.split(',').map((id) => id.trim()) }),
    }),
    progress,
  );
  const isSolved = report.trains?.rows.some(({ fits }) => fits) === true;
  const isNo =
    report.wheels.length === 0 ||
    (!isSolved && report.wheels.some(({ rows }) => !rows.some(({ fits }) => fits)));
  return {
    json: file
      ? { ...report, parts: { read: file.parts.length, badRows: file.badRows, notices: file.notices } }
      : report,
    lines:
      report.wheels.length === 0
        ? ['The job has no wheels yet. Add the one that is broken, and what it runs against.']
        : reportSubstitutes(report),
    notes: [...tellNotices(notices), ...(file ? tellParts(file) : [])],
    exitCode: isNo ? 1 : 0,
  };
}

function checkColumns(file: PartsFile, path: string): void {
  if (file.columns.length > 0) return;
  throw new Fail(
    'bad-value',
    '--parts',
    `no line of ${path} names its columns`,
    'Begin the file with a line such as: teeth,module,bore,width,material,where kept',
    { path },
  );
}

function run(
  search: ReturnType<typeof searchSubstitutes>,
  progress: (text: string) => void,
): SubstitutesReport {
  const started = Date.now();
  let told = started;
  let isWarned = false;
  let step = search.next();
  while (!step.done) {
    const { wheelId, done, of, space = 0, work = 0 } = step.value;
    if (work > long && !isWarned) {
      isWarned = true;
      progress(
        `trains: ${space.toPrecision(2)} to search; after ${patience / 1000} s you get the best so far. Narrow it with --change.\n`,
      );
    }
    if (Date.now() - told >= quiet) {
      told = Date.now();
      progress(
        wheelId === null
          ? `trains: ${done} % of ${space.toPrecision(2)} searched\n`
          : `${wheelId}: rolled ${done} of ${of}\n`,
      );
    }
    step = search.next(wheelId === null && Date.now() - started > patience ? 'stop' : undefined);
  }
  return step.value;
}

/** Milliseconds without a word: what is over sooner needs none. */
const quiet = 1500;
/** Milliseconds after which a search for trains ends with the best so far, and says how to narrow it. */
const patience = 30_000;
/** Steps of a search worth a warning: some ten seconds. */
const long = 3e8;

function tellParts({ parts, badRows, notices }: PartsFile): string[] {
  const bad = badRows
    .slice(0, most)
    .map(
      ({ line, text, reason, remedy }) =>
        `parts file, line ${line}: ${reason}. ${remedy} It says: ${clip(text)}`,
    );
  const words = notices.slice(0, most).map(({ line, message }) => `parts file, line ${line}: ${message}`);
  const more = Math.max(0, badRows.length - most) + Math.max(0, notices.length - most);
  return [
    ...(badRows.length === 0
      ? []
      : [`parts file: ${parts.length} parts read, ${badRows.length} rows left out`]),
    ...bad,
    ...words,
    ...(more > 0 ? [`parts file: and ${more} more of these`] : []),
  ];
}

const most = 10;

function clip(text: string): string {
  const line = text.split('\n')[0];
  return line.length > 70 ? `${line.slice(0, 70)}…` : line;
}
