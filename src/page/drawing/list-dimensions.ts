import { type DrawnGear, kindOf, type Wheel, type WheelDrawing, type WheelReport } from '../../index.ts';
import { readLength } from '../state/read-length.ts';
import { findReading, isSameSlot, type Slot, slotKey, slotOf } from '../state/slot.ts';
import { placeJaws } from './place-jaws.ts';

/** One dimension of the drawing: what it is called, what is known of it and how. */
export interface Dimension {
  readonly key: string;
  readonly slot: Slot;
  readonly name: string;
  /** As it stands on the drawing; undefined where nothing is known */
  readonly value?: string | undefined;
  readonly how: 'read' | 'worked out' | 'not read yet';
  readonly isSuspect: boolean;
  readonly isActive: boolean;
  /** The whole of it in words, for those who don't see the drawing */
  readonly spoken: string;
}

export interface DimensionsAsked {
  readonly wheel: Wheel;
  readonly report?: WheelReport | undefined;
  readonly drawing?: WheelDrawing | undefined;
  readonly asked: readonly Slot[];
  readonly active?: Slot | undefined;
  readonly unit: 'mm' | 'in';
}

type Kind = ReturnType<typeof kindOf>;

/**
 * The dimensions that stand on the drawing, most important first: those asked about or open, then those of the teeth,
 * then those of the body. Without a drawing there is one: the count, and once it is in, the size across the tips.
 */
export function listDimensions(all: DimensionsAsked): Dimension[] {
  const { wheel, report, drawing, asked, active } = all;
  const kind = kindOf(wheel);
  const gear = drawing?.gears[0];
  if (!gear) {
    const isCounted = findReading(wheel, { of: 'teeth' }) >= 0;
    const first: Slot = isCounted ? (kind === 'rack' ? onePitch : { of: 'outside' }) : { of: 'teeth' };
    return [describe(all, first, isCounted ? undefined : 'Count the teeth')];
  }
  const read = (wheel.readings ?? []).map(slotOf);
  const fixed: Slot[] =
    kind === 'rack'
      ? [onePitch, { of: 'tooth-depth' }, { of: 'teeth' }, { of: 'face-width' }]
      : kind === 'internal'
        ? [{ of: 'outside' }, { of: 'root' }, { of: 'teeth' }, { of: 'face-width' }]
        : [
            { of: 'outside' },
            { of: 'root' },
            { of: 'teeth' },
            { of: 'bore' },
            { of: 'face-width' },
            { of: 'hub-diameter' },
            { of: 'overall-length' },
            { of: 'shaft' },
          ];
  const wanted: Slot[] = [];
  const most: Readonly<Record<string, number>> = { span: 3, 'over-pins': 1, 'rack-pitch': 1 };
  const add = (slot: Slot | undefined): void => {
    if (!slot || !drawable.has(slot.of) || wanted.some((one) => isSameSlot(one, slot))) return;
    if (wanted.filter((one) => one.of === slot.of).length >= (most[slot.of] ?? 1)) return;
    wanted.push(slot);
  };
  add(active);
  add(asked[0]);
  const asRead = (slot: Slot): Slot => read.find((one) => one.of === slot.of) ?? slot;
  add(asRead(fixed[0]));
  for (const { reading } of report?.suspect ?? []) add(read[reading]);
  for (const slot of read) if (slot.of === 'span' || slot.of === 'over-pins') add(slot);
  if (!wanted.some((one) => one.of === 'span')) add(asked.find((one) => one.of === 'span'));
  const has = (of: string): boolean => read.some((one) => one.of === of);
  // One place to fill stands for two until either is read: a hole for its shaft, a hub for the length over it.
  const isLeftOut = (of: string): boolean =>
    (of === 'shaft' && !has('bore') && !has('shaft')) ||
    (of === 'overall-length' && !has('hub-diameter') && !has('overall-length'));
  // A reading that fills a fixed slot in its own way (a bar's pitches) comes before the bare one.
  for (const slot of fixed) if (!isLeftOut(slot.of)) add(asRead(slot));
  if (!wanted.some((one) => one.of === 'over-pins')) add(asked.find((one) => one.of === 'over-pins'));
  return wanted.map((slot) => describe(all, slot));
}

/** Along a bar, where nothing proposes more pitches at once. */
const onePitch: Slot = { of: 'rack-pitch', pitches: 1 };

const drawable = new Set([
  'teeth',
  'outside',
  'root',
  'tooth-depth',
  'span',
  'over-pins',
  'bore',
  'shaft',
  'face-width',
  'hub-diameter',
  'overall-length',
  'rack-pitch',
]);

function describe(all: DimensionsAsked, slot: Slot, asWords?: string): Dimension {
  const { wheel, report, active, unit } = all;
  const name = asWords ?? nameDimension(slot, kindOf(wheel));
  const isActive = active !== undefined && isSameSlot(active, slot);
  const at = findReading(wheel, slot);
  const base = { key: slotKey(slot), slot, name, isActive };
  if (slot.of === 'teeth') {
    const reading = at < 0 ? undefined : wheel.readings?.[at];
    const teeth = reading?.of === 'teeth' ? reading : undefined;
    const value = teeth?.count ?? teeth?.left;
    const leads = all.drawing?.gears[0]?.teeth;
    if (value !== undefined && teeth) {
      const words = teeth.count === undefined ? `${value} left` : `${value}`;
      const isSuspect = report?.suspect.some((one) => one.reading === at) ?? false;
      return {
        ...base,
        value: words,
        how: 'read',
        isSuspect,
        spoken: `${name} ${words}, counted${isSuspect ? '; it doesn’t agree with the others' : ''}`,
      };
    }
    if (leads !== undefined && isSettled(report)) {
      return {
        ...base,
        value: `(${leads})`,
        how: 'worked out',
        isSuspect: false,
        spoken: `${name} ${leads}, worked out`,
      };
    }
    return { ...base, how: 'not read yet', isSuspect: false, spoken: asWords ?? `${name}: not counted yet` };
  }
  const read = readLength(wheel, slot);
  const sign = diameters.has(slot.of) ? '⌀ ' : '';
  if (read !== undefined) {
    const isSuspect = report?.suspect.some((one) => one.reading === at) ?? false;
    const told = writeLength(read, unit);
    return {
      ...base,
      value: `${sign}${told}`,
      how: 'read',
      isSuspect,
      spoken: `${name} ${told} ${spokenUnit(unit)}, read${isSuspect ? '; it doesn’t agree with the others' : ''}`,
    };
  }
  const worked = isActive ? undefined : workOut(all, slot);
  if (worked !== undefined) {
    const told = writeLength(worked, unit);
    return {
      ...base,
      value: `(${sign}${told})`,
      how: 'worked out',
      isSuspect: false,
      spoken: `${name} ${told} ${spokenUnit(unit)}, worked out, not read`,
    };
  }
  return { ...base, how: 'not read yet', isSuspect: false, spoken: `${name}: not read yet` };
}

const diameters = new Set(['outside', 'root', 'bore', 'shaft', 'hub-diameter']);

function isSettled(report: WheelReport | undefined): boolean {
  return report?.verdict === 'certain' || report?.verdict === 'likely';
}

/**
 * What the leading gear would show, once it is likely enough. Not for the reading to be taken next: told beforehand,
 * it would be read into the caliper.
 */
function workOut(all: DimensionsAsked, slot: Slot): number | undefined {
  const { report, drawing, asked, wheel } = all;
  const gear: DrawnGear | undefined = drawing?.gears[0];
  if (!gear || !isSettled(report)) return undefined;
  if (!toothReadings.has(slot.of)) return undefined;
  const row = asked.findIndex((one) => isSameSlot(one, slot));
  if (row === 0 && report?.verdict !== 'certain') return undefined;
  const expected = row < 0 ? undefined : drawing?.expected[row]?.[0];
  if (expected !== undefined && expected !== null) return expected;
  // Slanted teeth's spans and pins lie across the slant: only what the round outline shows can be taken off it.
  const isSlanted = (report?.candidates[gear.candidate]?.spec.helixAngleDeg ?? 0) !== 0;
  if (isSlanted && slot.of !== 'outside' && slot.of !== 'root') return undefined;
  return placeJaws(gear, slot, kindOf(wheel), wheel)?.opening;
}

const toothReadings = new Set(['outside', 'root', 'tooth-depth', 'span', 'over-pins']);

/** A length as it stands on the drawing: hundredths of a millimetre, or ten-thousandths of an inch. */
export function writeLength(mm: number, unit: 'mm' | 'in'): string {
  return unit === 'in' ? (mm / 25.4).toFixed(4) : mm.toFixed(2);
}

function spokenUnit(unit: 'mm' | 'in'): string {
  return unit === 'in' ? 'inches' : 'millimeters';
}

/** Plain names, as they stand on the drawing. */
export function nameDimension(slot: Slot, kind: Kind): string {
  switch (slot.of) {
    case 'teeth':
      return 'teeth';
    case 'outside':
      return kind === 'internal' ? 'between the tips' : 'across the tips';
    case 'root':
      return 'bottom of the teeth';
    case 'span':
      return slot.teeth === undefined ? 'across some teeth' : `across ${slot.teeth} teeth`;
    case 'over-pins':
      return `${kind === 'internal' ? 'between' : 'over'} two pins${slot.pinMm === undefined ? '' : ` of ${slot.pinMm}`}`;
    case 'face-width':
      return 'tooth width';
    case 'hub-diameter':
      return 'hub';
    case 'rack-pitch':
      return slot.pitches === undefined ? 'along the bar' : `along ${slot.pitches} teeth`;
    default:
      return slot.of.replaceAll('-', ' ');
  }
}
