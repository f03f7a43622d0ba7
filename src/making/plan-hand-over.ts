import type { Maker } from '../../gear-library/makers.ts';
import type { Material } from '../../gear-library/materials.ts';
import type { Process } from '../../gear-library/processes.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import { findSpan, findSpanTeeth } from '../involute/span.ts';
import type { WheelForm } from '../solid/wheel-form.ts';
import { listShopping, type ShoppingItem } from './list-shopping.ts';
import type { Hold } from './part-design.ts';
import { shortName } from './short-name.ts';

/** What is handed over: who makes it, the part, and the names of its files. */
export interface HandOverTask {
  readonly maker: Maker;
  /** What the wheel is called */
  readonly name: string;
  readonly form: WheelForm;
  readonly material: Material;
  readonly process: Process;
  readonly hold: Hold | undefined;
  readonly bushOutside: number | undefined;
  readonly shaft: number | undefined;
  readonly isTrial: boolean;
  readonly fileNames: readonly string[];
}

/** A dimension that matters, with its give or take and how it is measured. Lengths mm. */
export interface MatteringDimension {
  readonly what: string;
  readonly mm: number;
  readonly toleranceMm: number;
  readonly how: string;
}

export interface HandOver {
  readonly for: { readonly key: string; readonly name: string };
  readonly count: number;
  readonly dimensions: readonly MatteringDimension[];
  /** Lines to paste into a message; to oneself, what to set */
  readonly message: readonly string[];
  readonly shopping: readonly ShoppingItem[];
}

/**
 * What whoever makes a part is told: how many, of what, in which unit, not to scale or repair it, which face up, and
 * the dimensions that matter with their tolerance; and what to buy for fitting it.
 */
export function planHandOver(task: HandOverTask): HandOver {
  const { maker } = task;
  const dimensions = listDimensions(task);
  return {
    for: { key: maker.key, name: maker.name },
    count: maker.count,
    dimensions,
    message: maker.processes.length === 0 ? writeWanted(task, dimensions) : writeOrder(task, dimensions),
    shopping: listShopping(task),
  };
}

function listDimensions({ maker, form, hold, shaft }: HandOverTask): MatteringDimension[] {
  const { spec, bore, faceWidth, hubs } = form;
  const give = maker.toleranceMm;
  const found: MatteringDimension[] = [];
  const add = (what: string, mm: number, toleranceMm: number, how: string): void => {
    found.push({ what, mm: micron(mm), toleranceMm, how });
  };
  if (spec.kind !== 'rack') {
    const odd =
      spec.teeth % 2 === 1
        ? 'the circle through the tips: a caliper reads a little less on an odd count'
        : 'with a caliper over two tips';
    add(spec.kind === 'internal' ? 'inside the tips' : 'outside', findDiameters(spec).tip, give.outside, odd);
  }
  const k = findSpanTeeth(spec);
  if (k !== undefined)
    add(`span over ${k} teeth`, findSpan(spec, k), give.span, 'with a caliper, jaws square to the teeth');
  if (bore.shape !== 'none') {
    const on = shaft === undefined ? '' : ` on the ${show(shaft)} mm shaft`;
    const how =
      hold === undefined ? 'by a pin or drill that just goes' : `${fits[hold]}${hold === 'bush' ? '' : on}`;
    if ('diameter' in bore) add('bore', bore.diameter, give.bore, how);
    else add(`bore, ${bore.shape}, across the flats`, bore.acrossFlats, give.bore, how);
    if ('flat' in bore) add('bore, flat to wall', bore.flat, give.bore, 'with a flat pin or on the shaft');
  }
  add('width of the teeth', faceWidth, give.width, 'with a caliper');
  const length = faceWidth + hubs.reduce((sum, hub) => sum + hub.length, 0);
  if (length > faceWidth) add('overall length', length, give.width, 'with a caliper');
  return found;
}

const fits: Readonly<Record<Hold, string>> = {
  bond: 'slips on by hand, to be glued',
  flat: 'slips on by hand, with a flat',
  knurl: 'goes on with a push, after knurling',
  bush: 'takes a metal bush that slips in by hand',
  press: 'a light press fit',
  turns: 'turns freely',
};

function writeOrder(task: HandOverTask, dimensions: readonly MatteringDimension[]): string[] {
  const { maker, name, form, material, process, isTrial, fileNames } = task;
  const many = `${maker.count} of ${name} (${maker.whyCount})`;
  return [
    maker.isOrdered ? 'Hello, please make this small gear:' : 'For your own machine:',
    `How many: ${many}.`,
    `Files: ${fileNames.join(', ')}.`,
    `Made by: ${process.name}. Material: ${material.name}.`,
    'Unit: millimeters. Do not scale it, do not repair or simplify the file, do not round the teeth.',
    ...(maker.key === 'laser-cutter' ? tellSheet(form) : [`Lay it ${maker.facing}.`]),
    `Teeth: ${describeTeeth(form)}.`,
    'What matters, in the finished part:',
    ...dimensions.map(tellDimension),
    ...(isTrial ? ['This is a part to try: it may not be the last one.'] : []),
    ...(maker.isOrdered ? ['Please ask before you change anything. Thank you.'] : []),
  ];
}

function tellSheet({ faceWidth, hubs }: WheelForm): string[] {
  return [
    `Sheet ${show(faceWidth)} mm thick, cut on the line's waste side; the beam's width is not in the file.`,
    ...(hubs.length > 0
      ? ['The hub is not in the sheet: it is a piece of its own, to be glued or pinned on.']
      : []),
  ];
}

function writeWanted(task: HandOverTask, dimensions: readonly MatteringDimension[]): string[] {
  const { name, form, maker, shaft } = task;
  return [
    'Hello, do you have a gear like this?',
    `Wanted: ${maker.count} of ${name} (${maker.whyCount}).`,
    `Teeth: ${describeTeeth(form)}.`,
    ...(shaft === undefined
      ? []
      : [`For a shaft of ${show(shaft)} mm; a bore that is smaller can be reamed.`]),
    'Sizes of the old one:',
    ...dimensions.map(tellDimension),
    'Material: what you have; please say which. Could you read the span with a caliper before you post it?',
  ];
}

function describeTeeth({ spec }: WheelForm): string {
  const degrees = (angle: number): string => show((angle * 180) / Math.PI);
  const helix =
    spec.helixAngle === 0
      ? 'straight'
      : `slanted ${degrees(Math.abs(spec.helixAngle))} degrees, ${spec.helixAngle > 0 ? 'right' : 'left'} hand`;
  const kind = { external: 'teeth', internal: 'teeth inside a ring', rack: 'teeth on a bar' }[spec.kind];
  return `${spec.teeth} ${kind}, module ${show(spec.module)} mm, pressure angle ${degrees(spec.pressureAngle)} degrees, ${helix}, profile shift ${spec.profileShift.toFixed(3)}`;
}

function tellDimension({ what, mm, toleranceMm, how }: MatteringDimension): string {
  return `  ${what}: ${mm.toFixed(2)} mm, give or take ${toleranceMm} (${how})`;
}

/** The message and the shopping list as plain text files. */
export function writeHandOverTexts(
  handOver: HandOver,
  task: HandOverTask,
): readonly { readonly name: string; readonly text: string }[] {
  const list = [
    `Shopping list for ${task.name}, of ${shortName(task.material)}`,
    '',
    ...handOver.shopping.map(
      ({ what, size, why, isGood }) => `${isGood ? '[ ]' : 'NOT'} ${what}${size ? `, ${size}` : ''}: ${why}`,
    ),
  ];
  return [
    { name: 'message.txt', text: `${handOver.message.join('\n')}\n` },
    { name: 'shopping-list.txt', text: `${list.join('\n')}\n` },
  ];
}

function micron(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function show(value: number): string {
  return String(Number(value.toPrecision(4)));
}
