import {
  Fail,
  type FoundCompensation,
  findCompensation,
  type HandedOver,
  handOver,
  type Job,
  make,
  makeSheet,
  papers,
  parseCompensation,
  parseJob,
  partFormats,
  sheetFormats,
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
  readonly paper?: string;
  readonly material?: string;
  readonly off?: string;
  readonly for?: string;
  readonly force?: boolean;
  readonly alone?: boolean;
}

/**
 * The verb `make`: writes the part files of one wheel, all or none, and says what their maker has to know. With a
 * process, a material or a maker the part is designed to last; for a maker a message and a shopping list go with it.
 */
export async function makeCommand(
  bytes: Uint8Array,
  options: MakeCommandOptions,
  read: (path: string) => Promise<Uint8Array>,
): Promise<CommandOutput> {
  const { job, notices } = parseJob(bytes);
  const found = await readCompensation(options, read);
  const process = options.process ?? found?.process;
  const { parts, hasSheet } = chooseFormats(options.as);
  const { part, texts, handOver: handed, ...asked } = makeFor(job, { ...options, process }, parts, found);
  const made =
    (asked.hasSheet ?? hasSheet)
      ? await makeSheet(job, {
          wheelId: options.wheel,
          ...(process === undefined ? {} : { process }),
          ...(options.alone ? { isAlone: true } : {}),
          ...(part.design
            ? {
                isLasting: true,
                process: part.design.process.key,
                material: options.material,
                ...(options.off === undefined ? {} : { off: listKeys(options.off) }),
              }
            : {}),
          ...(handed ? { copies: handed.count } : {}),
          paper: findPaper(options.paper),
        })
      : undefined;
  const all = [...part.files, ...(made ? [made.file] : [])];
  const paths = await writeFiles(options.out, [...all, ...texts], options.force === true);
  const files = all.map(({ bytes, format }, index) => ({
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
    json: {
      ...part,
      ...(handed ? { handOver: handed } : {}),
      files: [...files, ...written],
      ...(made ? { sheet: made.sheet, order: made.order } : {}),
    },
    lines: [...reportPart({ ...part, files: all }, paths), ...(handed ? ['', ...handed.message] : [])],
    notes: tellNotices(notices),
    exitCode: 0,
  };
}

type Made = Pick<HandedOver, 'part' | 'texts'> & {
  readonly handOver?: HandedOver['handOver'];
  readonly hasSheet?: boolean | undefined;
};

function makeFor(
  job: Job,
  options: Omit<MakeCommandOptions, 'process'> & { readonly process: string | undefined },
  formats: readonly string[],
  compensation: FoundCompensation | undefined,
): Made {
  const { process, material } = options;
  const wish = {
    wheelId: options.wheel,
    process,
    material,
    compensation,
    ...(options.alone ? { isAlone: true } : {}),
    ...(options.as === undefined && options.for !== undefined ? {} : { formats }),
    ...(options.off === undefined ? {} : { off: listKeys(options.off) }),
  };
  if (options.for !== undefined) {
    const handed = handOver(job, { ...wish, maker: options.for });
    // What was asked for by --as is what is written.
    return options.as === undefined ? handed : { ...handed, hasSheet: undefined };
  }
  const isLasting = process !== undefined || material !== undefined || options.off !== undefined;
  return { part: make(job, { ...wish, ...(isLasting ? { isLasting } : {}) }), texts: [] };
}

function listKeys(text: string): string[] {
  return text.split(',').map((key) => key.trim().toLowerCase());
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

/** The keys of part formats that are wanted, and whether the sheet is; all of them where nothing was said. */
function chooseFormats(list: string | undefined): { readonly parts: string[]; readonly hasSheet: boolean } {
  const parts = partFormats.map(({ key }) => key as string);
  const sheets = sheetFormats.map(({ key }) => key as string);
  if (list === undefined) return { parts, hasSheet: true };
  const asked = new Set(list.split(',').map((key) => key.trim().toLowerCase()));
  for (const key of asked) {
    if (parts.includes(key) || sheets.includes(key)) continue;
    throw new Fail(
      'bad-usage',
      'as',
      `"${key}" is not a format that parts are written in`,
      `Use: ${[...parts, ...sheets].join(', ')}.`,
      { key },
    );
  }
  return {
    parts: [...asked].filter((key) => parts.includes(key)),
    hasSheet: sheets.some((key) => asked.has(key)),
  };
}

function findPaper(key: string | undefined): (typeof papers)[keyof typeof papers]['key'] {
  const found = Object.values(papers).find((paper) => paper.key === (key ?? 'a4').toLowerCase());
  if (found) return found.key;
  throw new Fail(
    'bad-usage',
    'paper',
    `there is no paper "${key}" here`,
    `Use: ${Object.keys(papers).join(', ')}.`,
    { key },
  );
}
