import type { ArcLoop } from '../plane/fit-arcs.ts';

/** A sheet of paper, upright, mm. */
export interface Paper {
  readonly key: 'a4' | 'letter';
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

/** A4 of ISO 216; Letter is 8½ × 11 in. */
export const papers: Readonly<Record<Paper['key'], Paper>> = {
  a4: { key: 'a4', name: 'A4', width: 210, height: 297 },
  letter: { key: 'letter', name: 'Letter', width: 215.9, height: 279.4 },
};

/** One thing on a page; mm from the lower left corner of the paper, y up. */
export type SheetMark =
  | {
      readonly kind: 'line';
      /** x0, y0, x1, y1, …; piece k leads from point k to the next */
      readonly points: readonly number[];
      /** tan of a quarter of each piece's turn; all straight where left out */
      readonly bulges?: readonly number[];
      readonly isClosed: boolean;
      readonly width: number;
      /** Lengths on, off, on, off; continuous where empty */
      readonly dash: readonly number[];
    }
  | { readonly kind: 'fill'; readonly points: readonly number[] }
  | {
      readonly kind: 'text';
      readonly x: number;
      /** Of the baseline */
      readonly y: number;
      readonly text: string;
      /** Of the type, mm */
      readonly size: number;
      readonly isBold: boolean;
    };

export interface SheetPage {
  readonly paper: Paper;
  readonly name: string;
  readonly marks: readonly SheetMark[];
}

/** How wide a text is, mm: whoever draws the page knows its typeface. */
export type MeasureText = (text: string, size: number, isBold: boolean) => number;

/** Widths of ISO 128-2 lines as this project prints them, mm: wide to narrow 2 : 1. */
export const wide = 0.5;
export const narrow = 0.25;

/** Long dash, gap, dot, gap: axes and pitch circles (ISO 128-2 line 04), mm. */
export const axisDash: readonly number[] = [6, 1, 0.5, 1];

/** A page that is being laid out. */
export interface PageBuilder {
  readonly paper: Paper;
  readonly line: (points: readonly number[], width: number, dash?: readonly number[]) => void;
  readonly loop: (loop: ArcLoop, place: Place, width: number) => void;
  readonly circle: (x: number, y: number, radius: number, width: number, dash?: readonly number[]) => void;
  readonly fill: (points: readonly number[]) => void;
  readonly text: (x: number, y: number, text: string, look?: TextLook) => void;
  /** Writes lines no wider than `width` downwards; returns the baseline that the next line would have */
  readonly paragraph: (x: number, y: number, width: number, text: string, look?: TextLook) => number;
  readonly measure: MeasureText;
  readonly finish: () => SheetPage;
}

/** From a drawing's mm to the paper's. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

export interface TextLook {
  readonly size?: number;
  readonly isBold?: boolean;
  readonly align?: 'left' | 'middle' | 'right';
}

/** Letters of 2.5 mm and less are lettering of ISO 3098's smaller sizes; 3.2 mm of type has capitals of 2.3. */
export const bodySize = 3.2;
export const lineStep = 1.4;

/** An empty page to put marks on. */
export function startPage(paper: Paper, name: string, measure: MeasureText): PageBuilder {
  const marks: SheetMark[] = [];
  const text: PageBuilder['text'] = (
    x,
    y,
    words,
    { size = bodySize, isBold = false, align = 'left' } = {},
  ) => {
    if (words === '') return;
    const width = align === 'left' ? 0 : measure(words, size, isBold);
    const left = align === 'left' ? x : align === 'middle' ? x - width / 2 : x - width;
    marks.push({ kind: 'text', x: left, y, text: words, size, isBold });
  };
  return {
    paper,
    measure,
    text,
    line: (points, width, dash = []) => {
      marks.push({ kind: 'line', points, isClosed: false, width, dash });
    },
    loop: ({ points, bulges }, { x, y, scale }, width) => {
      marks.push({
        kind: 'line',
        points: Array.from(points, (value, k) => (k % 2 === 0 ? x : y) + scale * value),
        bulges: Array.from(bulges),
        isClosed: true,
        width,
        dash: [],
      });
    },
    circle: (x, y, radius, width, dash = []) => {
      const points = [x + radius, y, x - radius, y];
      marks.push({ kind: 'line', points, bulges: [1, 1], isClosed: true, width, dash });
    },
    fill: (points) => {
      marks.push({ kind: 'fill', points });
    },
    paragraph: (x, y, width, words, look = {}) => {
      const { size = bodySize, isBold = false } = look;
      let at = y;
      for (const row of wrapWords(words, (one) => measure(one, size, isBold) <= width)) {
        text(x, at, row, look);
        at -= size * lineStep;
      }
      return at;
    },
    finish: () => ({ paper, name, marks }),
  };
}

/** Rows that fit; a word that fits nowhere is cut. */
function wrapWords(text: string, fits: (row: string) => boolean): string[] {
  const rows: string[] = [];
  let row = '';
  for (let word of text.split(/\s+/).filter((one) => one !== '')) {
    const longer = row === '' ? word : `${row} ${word}`;
    if (fits(longer)) {
      row = longer;
      continue;
    }
    if (row !== '') rows.push(row);
    while (!fits(word) && word.length > 1) {
      let kept = word.length - 1;
      while (kept > 1 && !fits(word.slice(0, kept))) kept--;
      rows.push(word.slice(0, kept));
      word = word.slice(kept);
    }
    row = word;
  }
  if (row !== '') rows.push(row);
  return rows;
}
