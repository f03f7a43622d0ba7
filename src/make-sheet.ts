import type { Material } from '../gear-library/materials.ts';
import type { Process } from '../gear-library/processes.ts';
import { Fail } from './fail.ts';
import { type SheetFormat, sheetFormats } from './formats/sheet-formats.ts';
import type { Job } from './job/job-schema.ts';
import { chooseUsualMaterial, readMaterial } from './making/choose-material.ts';
import { findProcess } from './making/find-process.ts';
import { laySheet } from './making/lay-sheet.ts';
import { type MakingSheet, planMakingSheet } from './making/making-sheet.ts';
import { type OrderSheet, writeOrder } from './making/order-sheet.ts';
import { type Paper, papers, type SheetPage } from './making/sheet-page.ts';
import { namePartFile } from './name-part-file.ts';
import { type LastingOptions, planLasting } from './plan-lasting.ts';
import { planWholePart, type WholePartOptions } from './plan-whole-part.ts';
import { findMaterial } from './strength/find-material.ts';

export interface SheetOptions extends WholePartOptions, LastingOptions {
  /** A key or common name; left out: the job's own where the process makes gears of it, else the process's first */
  readonly material?: string | undefined;
  readonly paper?: Paper['key'] | undefined;
  /** How many pieces are ordered; three of a printed part, one of any other where left out */
  readonly copies?: number | undefined;
}

/** A making sheet: its content as plain data, the order that goes with it, and the file to print. */
export interface MadeSheet {
  readonly sheet: MakingSheet;
  readonly order: OrderSheet;
  readonly file: { readonly name: string; readonly bytes: Uint8Array; readonly format: SheetFormat };
}

/**
 * The making sheet of a wheel's part as PDF, for the part that `make` gives. Throws what `make` throws, and Fail
 * `bad-value` for an unknown material, a paper or a number of pieces that there can't be.
 */
export async function makeSheet(job: Job, options: SheetOptions): Promise<MadeSheet> {
  const { sheet, order } = planSheet(job, options);
  const paper = findPaper(options.paper);
  // The library is large, and only who prints a sheet has use for it.
  const { encodeSheetPdf } = await import('./formats/sheet-pdf.ts');
  const [format] = sheetFormats;
  const isTrial = sheet.title.state === 'trial part';
  return {
    sheet,
    order,
    file: {
      name: `${namePartFile(sheet.title.number, isTrial)}-sheet.${format.extension}`,
      bytes: await encodeSheetPdf(sheet, order, paper),
      format,
    },
  };
}

/** A sheet's pages as plain marks in mm, laid as in its file: for a preview. Throws Fail `bad-value` for the paper. */
export async function laySheetPages(
  { sheet, order }: Pick<MadeSheet, 'sheet' | 'order'>,
  paper: Paper['key'] | undefined,
): Promise<readonly SheetPage[]> {
  const { startSheetDocument } = await import('./formats/sheet-document.ts');
  const { measure } = await startSheetDocument();
  return laySheet(sheet, order, findPaper(paper), measure);
}

/** The same sheet and order as plain data, nothing drawn. */
export function planSheet(job: Job, options: SheetOptions): Pick<MadeSheet, 'sheet' | 'order'> {
  const planned = planWholePart(job, options);
  const { wheel, evidence, wheelIds, name } = planned;
  const { form, warnings, design } = planLasting(job, planned, options);
  const process = findProcess(options.process ?? wheel.making?.process);
  const sheet = planMakingSheet({
    title: job.title ?? 'gear',
    part: wheelIds.length > 1 ? name : (wheel.name ?? wheel.id),
    number: name,
    isInvented: job.invented === true,
    plan: { ...planned.plan, form, warnings },
    evidence,
    process,
    material: design?.material ?? chooseMaterial(options.material, wheel.material, process),
  });
  const copies = options.copies ?? (process.isLayered ? 3 : 1);
  if (!Number.isInteger(copies) || copies < 1)
    throw new Fail(
      'bad-value',
      'copies',
      `${copies} pieces can't be ordered`,
      'Give a whole number from 1 on.',
      {
        copies,
      },
    );
  return { sheet, order: writeOrder(sheet, copies) };
}

function chooseMaterial(asked: string | undefined, old: string | undefined, process: Process): Material {
  return asked === undefined ? chooseUsualMaterial(findMaterial(old), process) : readMaterial(asked);
}

function findPaper(key: string = 'a4'): Paper {
  const found = Object.values(papers).find((paper) => paper.key === key);
  if (found) return found;
  throw new Fail(
    'bad-value',
    'paper',
    `there is no paper "${key}" here`,
    `Use one of: ${Object.keys(papers).join(', ')}.`,
    { paper: key },
  );
}
