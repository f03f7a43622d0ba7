import type { StockPart } from '../stock/stock-part.ts';
import type { PartsFile } from './parse-parts.ts';
import type { PartColumn } from './part-columns.ts';

/**
 * A parts file as text: every row that was read as it stood, bad rows, remarks and unknown columns included, then the
 * parts that were added since, under the file's own headings. Lines end in a line feed. Reading the text again gives
 * the same parts and the same bad rows.
 *
 * @param added parts that are not in the file yet; a file without headings gets some for them
 */
export function formatParts(file: PartsFile, added: readonly StockPart[] = []): string {
  const lines = file.rows.map(({ text }) => text);
  if (added.length > 0) {
    const isBare = file.columns.length === 0;
    const columns = isBare ? usualColumns : file.columns;
    if (isBare) lines.push(usualColumns.map(({ heading }) => heading).join(file.separator));
    for (const part of added)
      lines.push(columns.map((column) => quote(cellOf(part, column), file.separator)).join(file.separator));
  }
  return lines.length === 0 ? '' : `${lines.join('\n')}\n`;
}

const usualColumns: readonly PartColumn[] = (
  [
    ['teeth', 'teeth'],
    ['pitch', 'pitch'],
    ['OD', 'outside'],
    ['bore', 'bore'],
    ['width', 'width'],
    ['material', 'material'],
    ['where kept', 'kept'],
    ['price', 'price'],
    ['count', 'count'],
    ['name', 'name'],
    ['notes', 'notes'],
  ] as const
).map(([heading, meaning]) => ({ heading, meaning, unit: 'mm' }));

function cellOf(part: StockPart, { meaning, unit }: PartColumn): string {
  const [size] = part.sizes;
  const length = (mm: number | null): string => (mm === null ? '' : shorten(unit === 'in' ? mm / 25.4 : mm));
  switch (meaning) {
    case 'teeth':
      return String(part.teeth);
    case 'pitch':
      return part.isGuess
        ? ''
        : size.system === 'diametral-pitch'
          ? `${shorten(size.size)} DP`
          : shorten(size.module);
    case 'module':
      return part.isGuess || size.system === 'diametral-pitch' ? '' : shorten(size.module);
    case 'diametral-pitch':
      return part.isGuess || size.system !== 'diametral-pitch' ? '' : shorten(size.size);
    case 'outside':
      // A guessed size stands on the outside, so that must go out; else it goes out where it was measured.
      return length(part.tipDiameter);
    case 'bore':
      return part.bore === null
        ? ''
        : part.bore.shape === 'none'
          ? 'blank'
          : `${length(part.bore.diameter)}${part.bore.shape === 'round' ? '' : ` ${part.bore.shape}`}`;
    case 'width':
      return length(part.faceWidth);
    case 'angle':
      return part.isAngleAssumed ? '' : shorten((part.pressureAngle * 180) / Math.PI);
    case 'shift':
      return part.profileShift === 0 ? '' : shorten(part.profileShift);
    case 'material':
    case 'kept':
    case 'price':
    case 'name':
    case 'notes':
      return part[meaning];
    case 'count':
      return part.count === null ? '' : String(part.count);
    default:
      return '';
  }
}

/** Six digits: under a micrometer on any small gear. */
function shorten(value: number): string {
  return String(Number(value.toPrecision(6)));
}

function quote(cell: string, separator: string): string {
  const mustQuote =
    cell.includes(separator) || cell.includes('"') || cell.includes('\n') || /^\s|\s$/.test(cell);
  return mustQuote ? `"${cell.replaceAll('"', '""')}"` : cell;
}
