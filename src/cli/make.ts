import { make, parseJob } from '../index.ts';
import type { CommandOutput } from './command-output.ts';
import { reportPart } from './report-part.ts';
import { tellNotices } from './tell-notices.ts';
import { writeFiles } from './write-files.ts';

export interface MakeCommandOptions {
  readonly wheel: string;
  readonly out: string;
  readonly as?: string;
  readonly process?: string;
  readonly force?: boolean;
  readonly alone?: boolean;
}

/** The verb `make`: writes the part files of one wheel, all or none, and says what their maker has to know. */
export async function makeCommand(bytes: Uint8Array, options: MakeCommandOptions): Promise<CommandOutput> {
  const { job, notices } = parseJob(bytes);
  const formats = options.as?.split(',').map((key) => key.trim().toLowerCase());
  const part = make(job, {
    wheelId: options.wheel,
    ...(formats === undefined ? {} : { formats: [...new Set(formats)] }),
    ...(options.process === undefined ? {} : { process: options.process }),
    ...(options.alone ? { isAlone: true } : {}),
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
