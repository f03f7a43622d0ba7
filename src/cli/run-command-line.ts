import { Command, CommanderError } from 'commander';
import { version } from '../../package.json';
import {
  changeKeys,
  describeFail,
  Fail,
  makers,
  papers,
  partFormats,
  processes,
  sheetFormats,
} from '../index.ts';
import type { CalibrateCommandOptions } from './calibrate.ts';
import type { CheckCommandOptions } from './check.ts';
import type { CommandOutput } from './command-output.ts';
import type { CouponCommandOptions } from './coupon.ts';
import { type IdentifyOptions, identifyCommand } from './identify.ts';
import type { MakeCommandOptions } from './make.ts';
import { readInput, readParts } from './read-input.ts';
import type { RecordCommandOptions } from './record.ts';
import { defaultPort, type ServeOptions, serveCommand } from './serve.ts';
import type { SubstitutesCommandOptions } from './substitutes.ts';
import type { TrainOptions } from './train.ts';
import { wrapText } from './wrap-text.ts';

/** Where a command line reads from and writes to. */
export interface Streams {
  readonly standardInput: AsyncIterable<Uint8Array>;
  readonly print: (text: string) => void;
  readonly printError: (text: string) => void;
}

/**
 * Runs one command line and returns its exit code: 0 answered, 1 the answer is no, 2 bad input or usage. This is
 * the one place that prints. With `--json` standard output gets exactly one document: the answer, or
 * `{ "error": … }`; words for people and what was noticed go to standard error.
 */
export async function runCommandLine(words: readonly string[], streams: Streams): Promise<0 | 1 | 2> {
  const isJson = words.includes('--json');
  let output: CommandOutput | undefined;
  const program = buildProgram(streams, (result) => {
    output = result;
  });
  try {
    await program.parseAsync([...words], { from: 'user' });
  } catch (error) {
    if (error instanceof CommanderError && error.exitCode === 0) return 0;
    const fail = error instanceof CommanderError ? explainUsage(error) : error;
    if (!(fail instanceof Fail)) throw error;
    if (isJson) streams.print(toJson({ error: describeFail(fail) }));
    streams.printError(tellFail(fail));
    return exitCodeOf(fail);
  }
  if (!output) return 0;
  for (const note of output.notes) streams.printError(`${wrapText(note, 'Note: ').join('\n')}\n`);
  streams.print(isJson ? toJson(output.json) : `${output.lines.join('\n')}\n`);
  return output.exitCode;
}

function buildProgram(streams: Streams, finish: (output: CommandOutput) => void): Command {
  const program = new Command('sparetooth')
    .description('From caliper readings of a broken gear to what it is, how sure that is, and a part file.')
    .version(version, '--version', 'print the version')
    .helpOption('--help', 'print this help')
    .configureOutput({ writeOut: streams.print, writeErr: () => {}, getOutHelpWidth: () => 80 })
    .exitOverride()
    .addHelpText('after', `\n${exitCodes}`);
  const read = (path: string): Promise<Uint8Array> => readInput(path, streams.standardInput);
  program
    .command('identify')
    .description('What each wheel is, how sure that is, and what to measure next.')
    .argument('<JOB>', 'job file; - is standard input')
    .option('--wheel <ID>', 'this wheel only')
    .option('--json', 'print one JSON document and nothing else')
    .action(async (path: string, options: IdentifyOptions) => {
      finish(identifyCommand(await read(path), options));
    });
  program
    .command('drive')
    .description('Ratio, direction, the speed of every shaft, and every mesh checked and rolled.')
    .argument('<JOB>', 'job file; - is standard input')
    .option('--json', 'print one JSON document and nothing else')
    .action(async (path: string) => {
      const { driveCommand } = await import('./drive.ts');
      finish(driveCommand(await read(path)));
    });
  program
    .command('substitutes')
    .description('What can go where a broken wheel was: your own spares, what is sold, what can be made.')
    .argument('<JOB>', 'job file; - is standard input')
    .option('--wheel <ID>', 'this wheel only; else all that are damaged or lost')
    .option('--parts <FILE>', 'your own parts, a CSV file')
    .option('--change <IDS>', 'wheels that other trains may change; else the broken ones and their mates')
    .option('--json', 'print one JSON document and nothing else')
    .action(async (path: string, options: SubstitutesCommandOptions) => {
      const { substitutesCommand } = await import('./substitutes.ts');
      const bytes = await read(path);
      const parts = options.parts === undefined ? undefined : await readParts(options.parts);
      finish(substitutesCommand(bytes, parts, options, streams.printError));
    });
  program
    .command('train')
    .description('The best trains for a ratio, input speed over output speed.')
    .requiredOption('--ratio <R>', 'such as 12.5, 12/7 or 1:6.931')
    .requiredOption('--pairs <K>', 'meshing pairs, 1 to 8')
    .requiredOption('--teeth <COUNTS>', 'counts a wheel may have: 12-120, or 20,24,30-40')
    .option('--top <N>', 'how many trains', '20')
    .option('--tolerance <PERCENT>', 'none that is farther off')
    .option('--reverted', 'all pairs on the same two axes, at one module')
    .option('--hunting', 'no pair shares a factor')
    .option('--idlers', 'a count may stand on both sides')
    .option('--seconds <N>', 'after so long, the best so far; 30 where left out')
    .option('--json', 'print one JSON document and nothing else')
    .action(async (options: TrainOptions) => {
      const { trainCommand } = await import('./train.ts');
      finish(await trainCommand(options, streams.printError));
    });
  program
    .command('make')
    .description('The part files of one wheel, with an allowance for a machine where one is given.')
    .argument('<JOB>', 'job file; - is standard input')
    .requiredOption('--wheel <ID>', 'the wheel to make')
    .requiredOption('--out <DIR>', 'folder for the files; made where it is missing')
    .option(
      '--as <FORMATS>',
      `${[...partFormats, ...sheetFormats].map(({ key }) => key).join(',')}; all where left out`,
    )
    .option(
      '--compensation <FILE>',
      'what your machine adds, to be taken back; usual: what is typical for it',
    )
    .option('--paper <SIZE>', `paper of the sheet: ${Object.keys(papers).join(' or ')}`, 'a4')
    .option('--process <KEY>', `design it to last, made by: ${processes.map(({ key }) => key).join(', ')}`)
    .option('--material <KEY>', 'of what; chosen by process and warmth where left out')
    .option('--off <KEYS>', `changes not to make: ${changeKeys.join(', ')}`)
    .option(
      '--for <KEY>',
      `just what they need, a message and a list: ${makers.map(({ key }) => key).join(', ')}`,
    )
    .option('--alone', 'this wheel alone, where others are one piece with it')
    .option('--force', 'replace files that are there')
    .option('--json', 'print one JSON document and nothing else')
    .action(async (path: string, options: MakeCommandOptions) => {
      const { makeCommand } = await import('./make.ts');
      finish(await makeCommand(await read(path), options, read));
    });
  program
    .command('check')
    .description('Whether the part that was made for a wheel fits, and what to change in the next.')
    .argument('<JOB>', 'job file with the part in "made" of the wheel; - is standard input')
    .requiredOption('--wheel <ID>', 'the wheel that it was made for')
    .option('--json', 'print one JSON document and nothing else')
    .action(async (path: string, options: CheckCommandOptions) => {
      const { checkCommand } = await import('./check.ts');
      finish(checkCommand(await read(path), options));
    });
  program
    .command('coupon')
    .description('A small part to print and measure, that tells what your machine adds.')
    .requiredOption('--process <KEY>', `how it will be made: ${processes.map(({ key }) => key).join(', ')}`)
    .requiredOption('--out <DIR>', 'folder for the files; made where it is missing')
    .option('--force', 'replace files that are there')
    .option('--json', 'print one JSON document and nothing else')
    .action(async (options: CouponCommandOptions) => {
      const { couponCommand } = await import('./coupon.ts');
      finish(await couponCommand(options));
    });
  program
    .command('calibrate')
    .description('What a machine adds, from the readings of its coupons.')
    .argument('<FILE>', 'compensation file with the readings; - is standard input')
    .option('--out <DIR>', 'folder for the same file with the figures in it')
    .option('--force', 'replace files that are there')
    .option('--json', 'print one JSON document and nothing else')
    .action(async (path: string, options: CalibrateCommandOptions) => {
      const { calibrateCommand } = await import('./calibrate.ts');
      finish(await calibrateCommand(await read(path), options));
    });
  program
    .command('record')
    .description('One page on a repair: what failed, what it was, what was made, when to look again.')
    .argument('<JOB>', 'job file; - is standard input')
    .requiredOption('--wheel <ID>', 'the wheel that was replaced')
    .option('--process <KEY>', `how it was made: ${processes.map(({ key }) => key).join(', ')}`)
    .option('--material <KEY>', 'of what')
    .option('--date <DATE>', 'when it was put in, as 2026-11-25')
    .option('--json', 'print one JSON document and nothing else')
    .action(async (path: string, options: RecordCommandOptions) => {
      const { recordCommand } = await import('./record.ts');
      finish(recordCommand(await read(path), options));
    });
  program
    .command('serve')
    .description('The page in your browser: served on this machine, to this machine only.')
    .option('--port <N>', 'where it is served; never another than this', String(defaultPort))
    .action(async (options: ServeOptions) => {
      finish(await serveCommand(options, streams.print));
    });
  return program;
}

const exitCodes = [
  'Exit code 0: answered. 1: the job is readable, but the answer is no.',
  '2: bad input; the message names the field, what was wrong and what to do.',
].join('\n');

function explainUsage(error: CommanderError): Fail {
  const message = error.message.replace(/^error: /, '').trim();
  const isBare = error.code === 'commander.help';
  return new Fail(
    'bad-usage',
    '',
    isBare ? 'no command was given' : message,
    'Try: sparetooth identify JOB, or sparetooth --help.',
  );
}

function tellFail(fail: Fail): string {
  const all = (fail.details.all as { field: string; message: string }[] | undefined) ?? [];
  const others = all.slice(1, 6).flatMap(({ field, message }) => wrapText(`${field}: ${message}`, '  also '));
  const more = all.length > 6 ? [`  and ${all.length - 6} more`] : [];
  const lead = fail.field === '' ? '' : `${fail.field}: `;
  return `${[...wrapText(lead + fail.message), ...wrapText(fail.remedy, '  '), ...others, ...more].join('\n')}\n`;
}

/** The answer is no, where the job could be read but nothing can be made from what it says. */
function exitCodeOf(fail: Fail): 1 | 2 {
  return fail.code === 'not-identified' || fail.code === 'too-fine' ? 1 : 2;
}

function toJson(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
