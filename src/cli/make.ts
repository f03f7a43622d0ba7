import { type HandedOver, handOver, type Job, make, parseJob } from '../index.ts';
import type { CommandOutput } from './command-output.ts';
import { reportPart } from './report-part.ts';
import { tellNotices } from './tell-notices.ts';
import { writeFiles } from './write-files.ts';

export interface MakeCommandOptions {
  readonly wheel: string;
  readonly out: string;
  readonly as?: string;
  readonly process?: string;
  readonly material?: string;
  readonly off?: string;
  readonly for?: string;
  readonly force?: boolean;
}

/**
 * The verb `make`: writes the part files of one wheel, all or none, and says what their maker has to know. With a
 * process, a material or a maker the part is designed to last; for a maker a message and a shopping list go with it.
 */
export async function makeCommand(bytes: Uint8Array, options: MakeCommandOptions): Promise<CommandOutput> {
  const { job, notices } = parseJob(bytes);
  const { part, texts, handOver: handed } = makeFor(job, options);
  const named = [...part.files, ...texts];
  const paths = await writeFiles(options.out, named, options.force === true);
  const files = part.files.map(({ bytes, format }, index) => ({
    path: paths[index],
    bytes: bytes.length,
    mediaType: format.mediaType,
    forWhom: format.forWhom,
  }));
  const written = texts.map(({ bytes }, index) => ({
    path: paths[files.length + index],
    bytes: bytes.length,
    mediaType: 'text/plain',
    forWhom: 'To read, and to paste from.',
  }));
  return {
    json: { ...part, ...(handed ? { handOver: handed } : {}), files: [...files, ...written] },
    lines: [...reportPart(part, paths), ...(handed ? ['', ...handed.message] : [])],
    notes: tellNotices(notices),
    exitCode: 0,
  };
}

type Made = Pick<HandedOver, 'part' | 'texts'> & { readonly handOver?: HandedOver['handOver'] };

function makeFor(job: Job, options: MakeCommandOptions): Made {
  const { process, material } = options;
  const wish = {
    wheelId: options.wheel,
    process,
    material,
    ...(options.as === undefined ? {} : { formats: [...new Set(listKeys(options.as))] }),
    ...(options.off === undefined ? {} : { off: listKeys(options.off) }),
  };
  if (options.for !== undefined) return handOver(job, { ...wish, maker: options.for });
  const isLasting = process !== undefined || material !== undefined || options.off !== undefined;
  return { part: make(job, { ...wish, ...(isLasting ? { isLasting } : {}) }), texts: [] };
}

function listKeys(text: string): string[] {
  return text.split(',').map((key) => key.trim().toLowerCase());
}
