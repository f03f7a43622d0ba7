import {
  Fail,
  type FoundCompensation,
  findCompensation,
  make,
  parseCompensation,
  parseJob,
} from '../index.ts';
import type { CommandOutput } from './command-output.ts';
import { reportPart } from './report-part.ts';
import { tellNotices } from './tell-notices.ts';
import { writeFiles } from './write-files.ts';

export interface MakeCommandOptions {
  readonly wheel: string;
  readonly out: string;
  readonly as?: string;
  readonly process?: string;
  readonly compensation?: string;
  readonly force?: boolean;
}

/** The verb `make`: writes the part files of one wheel, all or none, and says what their maker has to know. */
export async function makeCommand(
  bytes: Uint8Array,
  options: MakeCommandOptions,
  read: (path: string) => Promise<Uint8Array>,
): Promise<CommandOutput> {
  const { job, notices } = parseJob(bytes);
  const formats = options.as?.split(',').map((key) => key.trim().toLowerCase());
  const found = await readCompensation(options, read);
  const process = options.process ?? found?.process;
  const part = make(job, {
    wheelId: options.wheel,
    ...(formats === undefined ? {} : { formats: [...new Set(formats)] }),
    process,
    compensation: found,
  });
  const paths = await writeFiles(options.out, part.files, options.force === true);
  const files = part.files.map(({ bytes, format }, index) => ({
    path: paths[index],
    bytes: bytes.length,
    mediaType: format.mediaType,
    forWhom: format.forWhom,
  }));
  return {
    json: { ...part, files },
    lines: reportPart(part, paths),
    notes: tellNotices(notices),
    exitCode: 0,
  };
}

/** From a file, or by the word `usual` what is typical for the process. */
async function readCompensation(
  { compensation, process }: MakeCommandOptions,
  read: (path: string) => Promise<Uint8Array>,
): Promise<FoundCompensation | undefined> {
  if (compensation === undefined) return undefined;
  if (compensation !== 'usual') {
    const found = findCompensation(parseCompensation(await read(compensation)));
    if (process === undefined || process === found.process) return found;
    throw new Fail(
      'bad-usage',
      'compensation',
      `the file is of ${found.process}, but the part is to be made by ${process}`,
      'Leave --process out, or give the file of that machine.',
      { process, found: found.process },
    );
  }
  return findCompensation({ format: 'sparetooth-compensation', version: 1, process });
}
