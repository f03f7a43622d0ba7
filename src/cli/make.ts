import { Fail, make, makeSheet, papers, parseJob, partFormats, sheetFormats } from '../index.ts';
import type { CommandOutput } from './command-output.ts';
import { reportPart } from './report-part.ts';
import { tellNotices } from './tell-notices.ts';
import { writeFiles } from './write-files.ts';

export interface MakeCommandOptions {
  readonly wheel: string;
  readonly out: string;
  readonly as?: string;
  readonly process?: string;
  readonly paper?: string;
  readonly force?: boolean;
  readonly alone?: boolean;
}

/** The verb `make`: writes the part files of one wheel, all or none, and says what their maker has to know. */
export async function makeCommand(bytes: Uint8Array, options: MakeCommandOptions): Promise<CommandOutput> {
  const { job, notices } = parseJob(bytes);
  const { parts, hasSheet } = chooseFormats(options.as);
  const wish = {
    wheelId: options.wheel,
    ...(options.process === undefined ? {} : { process: options.process }),
    ...(options.alone ? { isAlone: true } : {}),
  };
  const part = make(job, { ...wish, formats: parts });
  const made = hasSheet ? await makeSheet(job, { ...wish, paper: findPaper(options.paper) }) : undefined;
  const all = [...part.files, ...(made ? [made.file] : [])];
  const paths = await writeFiles(options.out, all, options.force === true);
  const files = all.map(({ bytes, format }, index) => ({
    path: paths[index],
    bytes: bytes.length,
    mediaType: format.mediaType,
    forWhom: format.forWhom,
  }));
  return {
    json: { ...part, files, ...(made ? { sheet: made.sheet, order: made.order } : {}) },
    lines: reportPart({ ...part, files: all }, paths),
    notes: tellNotices(notices),
    exitCode: 0,
  };
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
