import { type Maker, makers } from '../gear-library/makers.ts';
import { readWish } from './design-wheel.ts';
import { Fail } from './fail.ts';
import { partFormats } from './formats/part-formats.ts';
import { findWheels } from './job/collect-evidence.ts';
import type { Job } from './job/job-schema.ts';
import { type MadePart, type MakeOptions, make } from './make.ts';
import { findShaft } from './making/find-shaft.ts';
import { type HandOver, planHandOver, writeHandOverTexts } from './making/plan-hand-over.ts';
import { namePartFile } from './name-part-file.ts';
import { planLasting } from './plan-lasting.ts';
import { planWholePart } from './plan-whole-part.ts';
import type { WheelForm } from './solid/wheel-form.ts';
import { findMaterial } from './strength/find-material.ts';

export interface HandOverOptions extends Omit<MakeOptions, 'isLasting' | 'lasting'> {
  /** A key of the makers */
  readonly maker: string;
}

/** Everything that a maker is given: the part with its files, the message and the shopping list. */
export interface HandedOver {
  readonly part: MadePart;
  readonly handOver: HandOver;
  /** Whether the making sheet goes with it, which `makeSheet` draws: its name is in the message already */
  readonly hasSheet: boolean;
  /** The old wheel as it was read, and the part that is meant in its place; of one that is bought they are the same */
  readonly forms: { readonly old: WheelForm; readonly meant: WheelForm };
  /** Plain text files beside the part's own */
  readonly texts: readonly { readonly name: string; readonly bytes: Uint8Array }[];
}

/**
 * One folder's worth for whoever makes the part: just the files they take, a message to paste and a shopping list. The
 * part is designed to last for their process; of one that is bought nothing is designed and no part file is written.
 * Throws Fail `bad-usage` for a maker that is none, a process that they don't have, or teeth they can't make; else what
 * `make` throws.
 */
export function handOver(job: Job, options: HandOverOptions): HandedOver {
  const maker = findMaker(options.maker);
  const [wheel] = findWheels(job, options.wheelId);
  const process = chooseProcess(maker, options.process, wheel.making?.process);
  const isMade = process !== undefined;
  const wish = readWish(isMade ? wheel : { ...wheel, making: {} }, {
    ...options,
    process: process ?? 'machine-shop',
    ...(isMade ? {} : { material: undefined }),
  });
  const wanted = isMade ? chooseFormats(maker) : [];
  const own = { ...options, process: wish.process.key, isLasting: isMade };
  const planned = planWholePart(job, own);
  const plan = planLasting(job, planned, own);
  const part = make(job, { ...own, lasting: plan, formats: options.formats ?? wanted });
  const { spec } = plan.form;
  if (maker.key === 'laser-cutter' && spec.helixAngle !== 0) {
    throw new Fail(
      'bad-usage',
      'for',
      'a laser cutter cuts straight through: it makes no slanted teeth',
      'Choose another maker, or straight teeth on both wheels ("making": { "spur": true }).',
    );
  }
  const material =
    plan.design?.material ?? (isMade ? wish.material : (findMaterial(wheel.material) ?? wish.material));
  const hasSheet = options.formats === undefined && maker.formats.includes('pdf');
  const task = {
    maker,
    name: wheel.name ?? wheel.id,
    form: plan.form,
    material,
    process: wish.process,
    hold: plan.design?.hold,
    bushOutside: plan.design?.bushOutside,
    shaft: findShaft(planned.evidence),
    isTrial: part.isTrial,
    fileNames: [
      ...part.files.map(({ name }) => name),
      ...(hasSheet ? [`${namePartFile(planned.name, part.isTrial)}-sheet.pdf`] : []),
    ],
  };
  const found = planHandOver(task);
  const encoder = new TextEncoder();
  return {
    part,
    handOver: found,
    hasSheet,
    forms: { old: planned.plan.form, meant: plan.form },
    texts: writeHandOverTexts(found, task).map(({ name, text }) => ({ name, bytes: encoder.encode(text) })),
  };
}

function findMaker(key: string): Maker {
  const found = makers.find((maker) => maker.key === key);
  if (found) return found;
  throw new Fail(
    'bad-usage',
    'for',
    `nobody is called "${key}"`,
    `Use one of: ${makers.map((maker) => maker.key).join(', ')}.`,
    { key },
  );
}

/** As asked for; else as the job has it, where that maker does it so; else their usual one. */
function chooseProcess(maker: Maker, asked: string | undefined, own: string | undefined): string | undefined {
  if (asked !== undefined && !maker.processes.includes(asked)) {
    throw new Fail(
      'bad-usage',
      'process',
      `${maker.name} does not make it by "${asked}"`,
      maker.processes.length === 0
        ? 'Leave --process out.'
        : `Use ${maker.processes.join(', ')}, or another --for.`,
      { key: asked },
    );
  }
  return asked ?? (own !== undefined && maker.processes.includes(own) ? own : maker.processes[0]);
}

/** What of theirs this program writes; where it writes none of it, triangles. */
function chooseFormats(maker: Maker): string[] {
  const found = maker.formats.filter((key) => partFormats.some((format) => format.key === key));
  return found.length > 0 ? found : ['stl'];
}
