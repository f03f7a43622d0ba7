import { toModule } from '../../gear-library/pitch-series.ts';
import { Fail } from '../fail.ts';
import { guessSize } from '../stock/guess-size.ts';
import { findShiftFromOutside } from '../stock/shift-from-outside.ts';
import type { PartBore, PartSize, StockPart } from '../stock/stock-part.ts';
import { type Limit, limits } from './limits.ts';
import { parseLength } from './parse-length.ts';
import type { ColumnMeaning, PartColumn } from './part-columns.ts';

/** What became of a row: a part and what could not be read of it, or why it is none. */
export type ReadRow =
  | { readonly part: StockPart; readonly unread: readonly string[] }
  | { readonly part?: undefined; readonly reason: string; readonly remedy: string };

/**
 * Reads rows of a parts file as parts. A row must have a whole tooth count, and a size or an outside diameter; a cell of
 * another column that can't be read is named and left out. Never throws. Sizes and bores that were read once are kept for
 * the rows that say the same.
 */
export function startRowReader(
  columns: readonly PartColumn[],
): (cells: readonly string[], line: number) => ReadRow {
  const places = new Map(columns.map(({ meaning, unit }, at) => [meaning, { at, unit }]));
  const known = new Map<string, unknown>();
  const once = <T>(
    meaning: ColumnMeaning,
    text: string,
    unit: Unit,
    read: (text: string, unit: Unit) => T,
  ): T => {
    const key = `${meaning} ${unit} ${text}`;
    const found = known.get(key);
    if (found !== undefined) return found as T;
    const value = read(text, unit);
    if (known.size < mostKnown) known.set(key, value);
    return value;
  };
  return (cells, line) => {
    const cellOf = (meaning: ColumnMeaning): Cell => {
      const place = places.get(meaning);
      if (!place) return noCell;
      const text = (cells[place.at] ?? '').trim();
      return isNothing(text) ? noCell : { text, unit: place.unit };
    };
    try {
      return readRow(cellOf, once, line);
    } catch (error) {
      if (error instanceof Fail) return { reason: error.message, remedy: error.remedy };
      throw error;
    }
  };
}

type Unit = 'mm' | 'in';
type Cell = { readonly text: string; readonly unit: Unit };
type ReadOnce = <T>(
  meaning: ColumnMeaning,
  text: string,
  unit: Unit,
  read: (text: string, unit: Unit) => T,
) => T;

const noCell: Cell = { text: '', unit: 'mm' };
/** Different cells kept; a drawer has dozens. */
const mostKnown = 20_000;

function readRow(cellOf: (meaning: ColumnMeaning) => Cell, once: ReadOnce, line: number): ReadRow {
  const unread: string[] = [];
  const readIfPossible = <T>(meaning: ColumnMeaning, read: (text: string, unit: Unit) => T): T | null => {
    const { text, unit } = cellOf(meaning);
    if (text === '') return null;
    try {
      return once(meaning, text, unit, read);
    } catch (error) {
      if (!(error instanceof Fail)) throw error;
      unread.push(`${meaning} "${clip(text)}"`);
      return null;
    }
  };
  const kind = cellOf('kind').text;
  if (kind !== '' && otherKinds.test(kind)) {
    throw refuse(`"${clip(kind)}" is no spur gear`, 'Only spur gears are matched; the row is kept.');
  }
  const teeth = once('teeth', cellOf('teeth').text, 'mm', readTeeth);
  const size = readSize(cellOf, once);
  const wide = cellOf('outside');
  const outside = wide.text === '' ? null : readTips(wide.text, wide.unit, teeth);
  if (size === undefined && outside === null) {
    throw refuse(
      'neither size nor outside diameter',
      'Give the module, the DP, or the width across the tips.',
    );
  }
  const angle = readIfPossible('angle', readAngle);
  const stated = readIfPossible('shift', (text) => within(readNumber(text, 'shift'), limits.profileShift));
  const guess = size === undefined && outside !== null ? guessSize(teeth, outside) : undefined;
  const shift = size && outside !== null ? findShiftFromOutside(teeth, size.module, outside) : 0;
  if (size && outside !== null && shift === undefined) {
    throw refuse(
      `${teeth} teeth of module ${shorten(size.module)} are ${shorten(size.module * (teeth + 2))} mm across the tips, not ${shorten(outside)}`,
      'One of the three is wrong: check the count, the size and the outside.',
    );
  }
  const part: StockPart = {
    id: `own:${line}`,
    from: 'own',
    name: cellOf('name').text,
    teeth,
    sizes: size ? [size] : (guess?.sizes ?? []),
    isGuess: size === undefined,
    moduleUncertainty: guess?.moduleUncertainty ?? 0,
    pressureAngle: ((angle ?? usualAngle) * Math.PI) / 180,
    isAngleAssumed: angle === null,
    profileShift: stated ?? shift ?? 0,
    tipDiameter: outside,
    bore: readIfPossible('bore', readBore),
    faceWidth: readIfPossible('width', readLength),
    material: cellOf('material').text,
    kept: cellOf('kept').text,
    price: cellOf('price').text,
    count: readIfPossible('count', readCount),
    notes: cellOf('notes').text,
  };
  return { part, unread };
}

/** Where nobody says the angle, it is this: nearly all small gears that are sold are. */
const usualAngle = 20;

const otherKinds = /internal|ring|rack|worm|bevel|crown|miter|helical|ratchet|pulley|sprocket/i;

/** What people write where they have nothing to write. */
function isNothing(text: string): boolean {
  return (
    text === '' ||
    text === '-' ||
    text === '?' ||
    text === '–' ||
    text === '—' ||
    /^(n\/?a|none|unknown)$/i.test(text)
  );
}

function readTeeth(text: string): number {
  if (text === '') throw refuse('no tooth count', 'Count the teeth; without them nothing can be matched.');
  const number = readNumber(
    text.replace(/\s*(teeth|t|z)\.?$/i, '').replace(/^(z|t)\s*=?\s*(?=\d)/i, ''),
    'teeth',
  );
  return within(number, limits.teeth);
}

function readSize(cellOf: (meaning: ColumnMeaning) => Cell, once: ReadOnce): PartSize | undefined {
  const found: PartSize[] = [];
  for (const meaning of ['module', 'diametral-pitch', 'pitch'] as const) {
    const { text, unit } = cellOf(meaning);
    if (text === '') continue;
    const system = meaning === 'pitch' ? undefined : meaning;
    found.push(once(meaning, text, unit, () => readPitch(text, system)));
  }
  const circular = cellOf('circular-pitch');
  if (circular.text !== '') {
    const inches = readLength(circular.text, circular.unit) / 25.4;
    found.push({ system: 'circular-pitch', size: inches, module: toModule('circular-pitch', inches) });
  }
  const [first, ...others] = found;
  const odd = others.find((other) => Math.abs(other.module / first.module - 1) > 0.002);
  if (odd) {
    throw refuse(
      `the row names two sizes, module ${shorten(first.module)} and ${shorten(odd.module)}`,
      'Leave the right one.',
    );
  }
  if (first) within(first.module, limits.module);
  return first;
}

/**
 * A size as people write it: `0.5`, `m0,5`, `module 0.5`, `48 DP`, `P48`. What a cell says itself goes before its column;
 * a bare number in a column that may hold either is a diametral pitch from 12 on, since no small gear has such a module.
 */
function readPitch(text: string, system: 'module' | 'diametral-pitch' | undefined): PartSize {
  const plain = text.normalize('NFKC').toLowerCase().trim();
  const saysInch = /d\.?\s?p\b|dp|\bp\s?\d|\d\s?p\b|diametral|\bpitch\b|\/\s?in/.test(plain);
  const saysMetric = /^m|mod|mm/.test(plain);
  const number = readNumber(
    plain.replace(/diametral|pitch|module|modul|mod\.?|mm|d\.?\s?p\.?|\/\s?in(ch)?|[mp=]/g, ' ').trim(),
    'size',
  );
  const inch = saysMetric ? false : saysInch ? true : system ? system === 'diametral-pitch' : number >= 12;
  if (!(number > 0)) throw refuse(`"${clip(text)}" is no size`, 'Write 0.5, or 48 DP.');
  return inch
    ? { system: 'diametral-pitch', size: number, module: toModule('diametral-pitch', number) }
    : { system: 'module', size: number, module: number };
}

/** On an odd count no two tips are opposite: a caliper that settles reads about the middle of the two widths. */
function readTips(text: string, unit: Unit, teeth: number): number {
  const read = readLength(text, unit);
  if (teeth % 2 === 0) return read;
  return Number((read / ((1 + Math.cos(Math.PI / (2 * teeth))) / 2)).toPrecision(8));
}

function readLength(text: string, unit: Unit): number {
  if (unit === 'mm' && plainNumber.test(text)) return within(Number(text.replace(',', '.')), limits.length);
  const plain = text
    .normalize('NFKC')
    .replace(/^(ø|⌀|Ø|dia\.?|d\s?=)\s*/i, '')
    .trim();
  const hasUnit = /[a-z"″”']/i.test(plain);
  const lengths = parseLength(unit === 'in' && !hasUnit ? `${plain} in` : plain);
  if (lengths.length > 1) throw refuse(`"${clip(text)}" is more than one length`, 'Give one.');
  return lengths[0];
}

function readBore(text: string, unit: Unit): PartBore {
  if (/^(blank|solid|no bore|0)$/i.test(text)) return { shape: 'none', diameter: 0 };
  const shape = /hex/i.test(text)
    ? 'hex'
    : /square|sq\b/i.test(text)
      ? 'square'
      : /\bd\b|flat/i.test(text)
        ? 'd'
        : 'round';
  const bare = text
    .replace(/hex(agon(al)?)?|square|\bsq\b|\bd[ -]?(shaft|cut|bore|flat)?\b|flat|round|bore|hole/gi, ' ')
    .trim();
  return { shape, diameter: readLength(bare, unit) };
}

function readAngle(text: string): number {
  return within(readNumber(text.replace(/°|deg(rees)?/gi, ''), 'angle'), limits.pressureAngle);
}

function readCount(text: string): number {
  const count = readNumber(text.replace(/\s*(pcs|pieces|x|off)\.?$/i, ''), 'count');
  if (Number.isInteger(count) && count >= 0) return count;
  throw refuse(`"${clip(text)}" is no count`, 'Give a whole number.');
}

const plainNumber = /^\d{1,9}(?:[.,]\d{1,9})?$/;

function readNumber(text: string, what: string): number {
  const plain = text.normalize('NFKC').trim();
  if (/^[-+]?(\d{1,12}(?:[.,]\d{1,12})?|[.,]\d{1,12})$/.test(plain)) return Number(plain.replace(',', '.'));
  throw refuse(`${what}: "${clip(text)}" is not a number`, 'Write it as 12.5 or 12,5.');
}

function within(value: number, limit: Limit): number {
  const isWithin = value >= limit.least && value <= limit.greatest;
  if (isWithin && (!limit.whole || Number.isInteger(value))) return value;
  throw refuse(
    isWithin
      ? `${value} is not a whole number`
      : `${shorten(value)} is outside ${limit.least} to ${limit.greatest}: ${limit.reason}`,
    `Give ${limit.what}.`,
  );
}

function refuse(message: string, remedy: string): Fail {
  return new Fail('bad-value', '', message, remedy);
}

function clip(text: string): string {
  return text.length > 24 ? `${text.slice(0, 24)}…` : text;
}

function shorten(value: number): number {
  return Number(value.toPrecision(5));
}
