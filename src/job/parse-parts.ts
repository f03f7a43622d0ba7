import Papa from 'papaparse';
import type { StockPart } from '../stock/stock-part.ts';
import { findColumns, type PartColumn } from './part-columns.ts';
import { startRowReader } from './read-part-row.ts';

/**
 * A person's own parts, out of a CSV file: what could be read, what could not and why, and the whole text line by line,
 * so that `formatParts` gives back all of it.
 */
export interface PartsFile {
  readonly separator: Separator;
  /** Empty where no line names the columns: then every row is a bad one */
  readonly columns: readonly PartColumn[];
  /** Everything that stands in the file, in order: headings, remarks and empty lines too */
  readonly rows: readonly PartsRow[];
  readonly parts: readonly StockPart[];
  readonly badRows: readonly BadRow[];
  /** Readable, but worth a word */
  readonly notices: readonly { readonly line: number; readonly message: string }[];
}

export type Separator = ',' | ';' | '\t' | '|';

export interface PartsRow {
  /** From 1; of a row over several lines, the first */
  readonly line: number;
  /** As it stands, without its line end */
  readonly text: string;
  readonly part?: StockPart;
}

export interface BadRow {
  readonly line: number;
  readonly text: string;
  readonly reason: string;
  readonly remedy: string;
}

/**
 * Reads a parts file: text, or bytes in UTF-8, UTF-16 or the Western code page that spreadsheets write. Separators are
 * comma, semicolon, tab or bar; lines that begin with # are remarks. Order and wording of the columns are free
 * (`findColumns`), so are units and decimal commas. Never throws: a row that can't be used is a bad row with its line,
 * its text and what to do, and stays in `rows`.
 */
export function parseParts(source: string | Uint8Array): PartsFile {
  const text = (typeof source === 'string' ? source : decode(source))
    .replace(/^\ufeff/, '')
    .replace(/\r\n?/g, '\n');
  const lines = text.split('\n');
  if (lines.length > 1 && lines[lines.length - 1] === '') lines.pop();
  const separator = findSeparator(lines);
  const split = splitRows(lines, separator);
  const headAt = split.slice(0, headWithin).findIndex(({ cells }) => findColumns(cells) !== undefined);
  const columns = headAt < 0 ? [] : (findColumns(split[headAt].cells) ?? []);
  const readRow = startRowReader(columns);
  const rows: PartsRow[] = [];
  const parts: StockPart[] = [];
  const badRows: BadRow[] = [];
  const notices: { line: number; message: string }[] = [];
  if (headAt >= 0) notices.push(...tellUnused(columns, split[headAt].line));
  split.forEach(({ line, cells, text: own }, index) => {
    const isKept = index <= headAt || isEmpty(cells) || own.trimStart().startsWith('#');
    if (isKept) {
      rows.push({ line, text: own });
      return;
    }
    const bad = (reason: string, remedy: string): void => {
      rows.push({ line, text: own });
      badRows.push({ line, text: own, reason, remedy });
    };
    if (headAt < 0) {
      bad(
        'no line before it names the columns',
        'Begin with a line such as: teeth,module,bore,width,material,where kept',
      );
      return;
    }
    if (cells.slice(columns.length).some((cell) => cell.trim() !== '')) {
      bad(
        `has ${cells.length} cells, and the headings are ${columns.length}`,
        separator === ','
          ? 'Put a number with a decimal comma in quotes, or part the cells with semicolons.'
          : 'Take out the separator that is too many, or put the cell in quotes.',
      );
      return;
    }
    const read = readRow(cells, line);
    if (!read.part) {
      bad(read.reason, read.remedy);
      return;
    }
    rows.push({ line, text: own, part: read.part });
    parts.push(read.part);
    if (read.unread.length > 0) {
      notices.push({ line, message: `could not read ${read.unread.join(', ')}: kept, not used` });
    }
  });
  return { separator, columns, rows, parts, badRows, notices };
}

/** Headings may stand under a title and some remarks. */
const headWithin = 40;

function decode(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** The separator of the first line that could be headings; a decimal comma stands in data, not there. */
function findSeparator(lines: readonly string[]): Separator {
  const separators: readonly Separator[] = ['\t', ';', '|', ','];
  const first = lines
    .filter((line) => line.trim() !== '' && !line.trimStart().startsWith('#'))
    .slice(0, headWithin);
  for (const line of first) {
    for (const separator of separators) {
      if (line.includes(separator) && findColumns(line.split(separator).map(unquote))) return separator;
    }
  }
  return separators.find((separator) => first[0]?.includes(separator)) ?? ',';
}

interface SplitRow {
  readonly line: number;
  readonly text: string;
  readonly cells: readonly string[];
}

/**
 * The cells of every row. A quote that is never closed would swallow the rest of the file, so where quotes don't add up,
 * every line is taken for itself.
 */
function splitRows(lines: readonly string[], separator: Separator): SplitRow[] {
  // Remarks are emptied, not taken out, so that lines keep their number.
  const plain = lines.map((line) => (line.trimStart().startsWith('#') ? '' : line)).join('\n');
  const { data, errors } = Papa.parse<string[]>(plain, {
    delimiter: separator,
    newline: '\n',
    quoteChar: '"',
  });
  if (errors.some(({ type }) => type === 'Quotes')) {
    return lines.map((text, at) => ({ line: at + 1, text, cells: text.split(separator).map(unquote) }));
  }
  let at = 0;
  const rows = data.map((cells): SplitRow => {
    let length = 1;
    for (const cell of cells) {
      for (let k = cell.indexOf('\n'); k >= 0; k = cell.indexOf('\n', k + 1)) length++;
    }
    const text = length === 1 ? (lines[at] ?? '') : lines.slice(at, at + length).join('\n');
    at += length;
    return { line: at - length + 1, text, cells };
  });
  // The reader gives no row for an empty last line, which a remark is by now.
  return [...rows, ...lines.slice(at).map((text, k) => ({ line: at + k + 1, text, cells: [''] }))];
}

function unquote(cell: string): string {
  const found = /^\s*"((?:[^"]|"")*)"\s*$/.exec(cell);
  return found ? found[1].replaceAll('""', '"') : cell;
}

function isEmpty(cells: readonly string[]): boolean {
  return cells.every((cell) => cell.trim() === '');
}

function tellUnused(columns: readonly PartColumn[], line: number): { line: number; message: string }[] {
  const unused = columns.filter(({ heading, meaning }) => meaning === 'other' && heading.trim() !== '');
  if (unused.length === 0) return [];
  const names = unused.map(({ heading }) => `"${heading.trim()}"`).join(', ');
  return [
    { line, message: `${unused.length === 1 ? 'the column' : 'the columns'} ${names}: kept, not used` },
  ];
}
