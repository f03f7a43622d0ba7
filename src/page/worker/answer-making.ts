import { zipSync } from 'fflate';
import {
  checkMade,
  chooseSpanTeeth,
  describeMeant,
  drawDesign,
  drawSpec,
  findCompensation,
  type HandedOver,
  handOver,
  type Job,
  kindOf,
  layCoupon,
  laySheetPages,
  makeSheet,
  nameFile,
  parseCompensation,
  repairRecord,
  traceCoupon,
} from '../../index.ts';
import type { Asks, MakingAsk, WorkerRequest } from './asks.ts';
import { drawnChordError } from './drawn-chord-error.ts';

/** What is asked about making a part and about the part that was made. */
export type MakingName =
  | 'design'
  | 'folder'
  | 'sheet'
  | 'coupon'
  | 'compensation'
  | 'machine'
  | 'made'
  | 'record';

type Tell = (progress: Asks['folder']['progress']) => Promise<void>;

/** Answers one of them; `tell` is called as a long one gets on. */
export async function answerMaking(
  { name, ask }: WorkerRequest,
  tell: Tell,
): Promise<Asks[MakingName]['answer']> {
  switch (name) {
    case 'design':
      return design(ask as Asks['design']['ask']);
    case 'folder':
      return packFolder(ask as Asks['folder']['ask'], tell);
    case 'sheet':
      return laySheet(ask as Asks['sheet']['ask']);
    case 'coupon':
      return layCoupon((ask as Asks['coupon']['ask']).process);
    case 'compensation':
      return {
        found: findCompensation((ask as Asks['compensation']['ask']).file),
        face: traceCoupon(drawnChordError),
      };
    case 'machine':
      return parseCompensation((ask as Asks['machine']['ask']).bytes);
    case 'made': {
      const { job, wheelId } = ask as Asks['made']['ask'];
      return check(job, wheelId);
    }
    case 'record': {
      const { job, ...options } = ask as Asks['record']['ask'];
      return repairRecord(job, options);
    }
    default:
      throw new Error(`${name} is not about making`);
  }
}

function design(ask: MakingAsk): Asks['design']['answer'] {
  const taken = ask.machine && findCompensation(ask.machine);
  const { forms, ...handed } = hand(ask);
  return {
    handed,
    drawing: drawDesign(forms, drawnChordError),
    meant: describeMeant(forms.meant),
    taken: taken && { figures: taken.figures, uncertainty: taken.uncertainty },
  };
}

function hand({ job, machine, ...options }: MakingAsk): HandedOver {
  const compensation = machine && findCompensation(machine);
  return handOver(job, { ...options, compensation });
}

function check(job: Job, wheelId: string): Asks['made']['answer'] {
  const report = checkMade(job, wheelId);
  const wheel = job.wheels?.find((one) => one.id === wheelId);
  const spec = wheel?.made?.spec?.teeth === undefined ? report.spec : wheel.made.spec;
  const kind = wheel ? kindOf(wheel) : 'external';
  return { report, drawing: drawSpec(spec, kind, drawnChordError), spanTeeth: chooseSpanTeeth(spec, kind) };
}

async function packFolder(ask: Asks['folder']['ask'], tell: Tell): Promise<Asks['folder']['answer']> {
  const { paper, ...making } = ask;
  const of = 3;
  await tell({ done: 0, of, doing: 'the part' });
  const { part, texts, hasSheet } = hand(making);
  const files: { readonly name: string; readonly bytes: Uint8Array }[] = [...part.files, ...texts];
  if (hasSheet) {
    await tell({ done: 1, of, doing: 'the making sheet' });
    files.push((await makeSheet(ask.job, { ...sheetWish(making), paper })).file);
  }
  await tell({ done: 2, of, doing: 'one file of all' });
  const folder = `${nameFile(part.wheelId, 'gear')}-for-${ask.maker}`;
  const bytes = zipSync(
    // Without a date of its own every file has that of 1980: the same part gives the same bytes.
    Object.fromEntries(
      files.map((file) => [`${folder}/${file.name}`, [file.bytes, { mtime: new Date(1980, 0, 1, 12) }]]),
    ),
  );
  return { name: `${folder}.zip`, bytes };
}

async function laySheet(ask: Asks['sheet']['ask']): Promise<Asks['sheet']['answer']> {
  const { paper, ...making } = ask;
  const made = await makeSheet(ask.job, { ...sheetWish(making), paper });
  return { pages: await laySheetPages(made, paper), name: made.file.name, bytes: made.file.bytes };
}

/** The sheet is of the part as it is meant: what a machine adds is no size to check. */
function sheetWish({ wheelId, process, material, answer }: MakingAsk) {
  return { wheelId, process, material, answer, isLasting: true };
}
