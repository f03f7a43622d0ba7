import { flattenPart } from '../solid/flatten-part.ts';
import { formatMm } from './format-mm.ts';
import { type Frame, layViews } from './lay-views.ts';
import type { GearDatum } from './list-gear-data.ts';
import type { Inspection } from './list-inspections.ts';
import type { FurtherTeeth, MakingSheet } from './making-sheet.ts';
import type { OrderSheet } from './order-sheet.ts';
import {
  axisDash,
  bodySize,
  lineStep,
  type MeasureText,
  narrow,
  type PageBuilder,
  type Paper,
  type SheetPage,
  startPage,
  type TextLook,
  wide,
} from './sheet-page.ts';

/**
 * The pages of a making sheet: the drawing with its gear data table; what to check, how to make it and the outline at
 * 1:1; the order. Each has the frame of ISO 5457, a title block after ISO 7200 and a check bar of 50 mm, at true size.
 * Throws the Fails of the part's solid.
 */
export function laySheet(
  sheet: MakingSheet,
  order: OrderSheet,
  paper: Paper,
  measure: MeasureText,
): readonly SheetPage[] {
  const sheets: readonly (readonly [string, (page: PageBuilder, frame: Frame) => string])[] = [
    ['Making sheet', (page, frame) => layDrawing(page, sheet, frame)],
    ['Checks and settings', (page, frame) => layChecks(page, sheet, frame)],
    ...sheet.others.map(
      (teeth) =>
        ['Further teeth', (page: PageBuilder, frame: Frame) => layFurther(page, teeth, frame)] as const,
    ),
    ['Order', (page, frame) => layOrder(page, order, frame)],
  ];
  return sheets.map(([name, lay], index) => {
    const page = startPage(paper, name, measure);
    const frame = layFrame(page);
    const scale = lay(page, { ...frame, low: frame.low + titleHeight });
    layTitle(page, sheet, frame, scale, name, index + 1, sheets.length);
    return page.finish();
  });
}

/** ISO 5457: 20 mm at the filing edge, 10 mm elsewhere; centering marks reach 5 mm out of the frame. */
const filingMargin = 20;
const margin = 10;
const centering = 5;

function layFrame(page: PageBuilder): Frame {
  const { width, height } = page.paper;
  const frame = { left: filingMargin, right: width - margin, low: margin, high: height - margin };
  const { left, right, low, high } = frame;
  page.line([left, low, right, low, right, high, left, high, left, low], wide);
  const middle = (left + right) / 2;
  for (const mark of [
    [middle, low - centering, middle, low],
    [middle, high, middle, high + centering],
    [left - centering, height / 2, left, height / 2],
    [right, height / 2, right + centering, height / 2],
  ])
    page.line(mark, wide);
  return frame;
}

/** Three rows of fields and the check bar's strip over them, mm. */
const rowHeight = 9;
const stripHeight = 12;
const titleHeight = 3 * rowHeight + stripHeight;

/** The fields that ISO 7200 asks for; who made and who approved it is for the pen. */
function layTitle(
  page: PageBuilder,
  { title }: MakingSheet,
  { left, right, low }: Frame,
  scale: string,
  kind: string,
  number: number,
  count: number,
): void {
  const width = right - left;
  const columns = [0, 0.36, 0.62, 0.81, 1].map((part) => left + part * width);
  const rows: readonly (readonly (readonly [string, string])[])[] = [
    [
      ['Title', title.title],
      ['Part', `${title.part}${title.isInvented ? ' (invented)' : ''}`],
      ['Number', title.number],
      ['Sheet', `${number} / ${count}`],
    ],
    [
      ['Material', title.material.name],
      ['Made by', title.process.name],
      ['Document', kind],
      ['Scale', scale],
    ],
    [
      ['Created by', ''],
      ['Approved by', ''],
      ['Date of issue', ''],
      ['State', title.state],
    ],
  ];
  const top = low + 3 * rowHeight;
  page.line([left, top, right, top], wide);
  rows.forEach((row, r) => {
    const y = top - r * rowHeight;
    if (r > 0) page.line([left, y, right, y], narrow);
    row.forEach(([label, value], c) => {
      if (c > 0) page.line([columns[c], y, columns[c], y - rowHeight], narrow);
      page.text(columns[c] + 1, y - 2.6, label, { size: 2 });
      fitText(page, columns[c] + 1, y - 7, value, columns[c + 1] - columns[c] - 2, { isBold: true });
    });
  });
  layCheckBar(page, left + 4, top + 3);
  page.text(left + 60, top + 6.5, 'Bar: 50 mm from first to last mark. Print at 100 %; if a caliper', {
    size: 2.6,
  });
  page.text(left + 60, top + 3, 'finds another length, measure nothing on this sheet.', { size: 2.6 });
  page.text(right - 2, top + 6.5, 'Lengths in mm. ISO 128, 129-1, 2203.', { size: 2.6, align: 'right' });
  page.text(right - 2, top + 3, 'Made with Sparetooth', { size: 2.6, align: 'right' });
}

/** Text no wider than its room: smaller letters first, then cut short. */
function fitText(
  page: PageBuilder,
  x: number,
  y: number,
  text: string,
  room: number,
  look: TextLook = {},
): void {
  const { size = bodySize, isBold = false } = look;
  const fitting = Math.min(size, (size * room) / Math.max(room, page.measure(text, size, isBold)));
  let kept = text;
  if (fitting < leastSize) {
    const fits = (words: string): boolean => page.measure(`${words}...`, leastSize, isBold) <= room;
    while (kept.length > 1 && !fits(kept)) kept = kept.slice(0, -1);
    kept = `${kept}...`;
  }
  page.text(x, y, kept, { size: Math.max(fitting, leastSize), isBold });
}

/** Type of capitals 1.4 mm high, mm: smaller is not read at a bench. */
const leastSize = 2;

/** Its length at true size, mm. */
const barLength = 50;

function layCheckBar(page: PageBuilder, x: number, y: number): void {
  page.line([x, y, x + barLength, y], narrow);
  for (let at = 0; at <= barLength; at += 5)
    page.line([x + at, y, x + at, y + (at % 10 === 0 ? 4 : 2)], narrow);
}

function layDrawing(page: PageBuilder, sheet: MakingSheet, frame: Frame): string {
  const tableHigh = frame.low + (sheet.gearData.length + 1) * rowStep + 8;
  const split = Math.min(tableHigh, frame.low + 0.55 * (frame.high - frame.low));
  const scale = layViews(page, sheet.form, sheet.inspections, { ...frame, low: split });
  const middle = frame.left + 0.56 * (frame.right - frame.left);
  layGearData(page, sheet.gearData, {
    left: frame.left + 3,
    right: middle - 3,
    low: frame.low,
    high: split - 2,
  });
  const width = frame.right - middle - 5;
  let y = heading(page, middle + 2, split - 2, 'Flanks');
  y = page.paragraph(middle + 2, y, width, sheet.flanks);
  if (sheet.form.spec.kind !== 'rack')
    y = page.paragraph(
      middle + 2,
      y,
      width,
      `Runout of the teeth against the bore: at most ${formatMm(sheet.runout)} mm.`,
    );
  y = heading(page, middle + 2, y - 2, 'General');
  for (const line of [
    'Sizes on the views are those of the finished part, before any allowance for a machine.',
    'Limits and what the caliper reads: sheet 2.',
    'Break sharp rims by 0.1 mm at most. The flanks stay as they are.',
    ...(sheet.title.state === 'trial part' ? ['A trial part: not sure enough to rely on.'] : []),
  ])
    y = page.paragraph(middle + 2, y, width, line);
  return scale;
}

const rowStep = bodySize * lineStep;

function heading(page: PageBuilder, x: number, y: number, text: string): number {
  page.text(x, y - 4, text, { size: 3.6, isBold: true });
  return y - 9;
}

function layGearData(page: PageBuilder, rows: readonly GearDatum[], { left, right, low, high }: Frame): void {
  let y = heading(page, left, high, 'Gear data');
  const step = Math.min(rowStep, (y - low) / rows.length);
  const size = step / lineStep;
  const symbolAt = left + 0.62 * (right - left);
  for (const { name, symbol, value, digits, unit } of rows) {
    const words = typeof value === 'number' ? value.toFixed(digits) : value;
    fitText(page, left, y, name, symbolAt - left - 1, { size });
    page.text(symbolAt, y, symbol, { size: Math.min(size, 2.8) });
    page.text(right, y, unit === '' ? words : `${words} ${unit}`, { align: 'right', size });
    page.line([left, y - 0.25 * step, right, y - 0.25 * step], narrow / 2);
    y -= step;
  }
}

function layFurther(page: PageBuilder, { gearData, inspections }: FurtherTeeth, frame: Frame): string {
  const left = frame.left + 3;
  const right = frame.right - 3;
  const y = layInspections(
    page,
    inspections,
    left,
    right,
    heading(page, left, frame.high - 1, 'Check these teeth'),
  );
  layGearData(page, gearData, { left, right: left + 0.56 * (right - left), low: frame.low, high: y - 2 });
  return 'none';
}

function layChecks(page: PageBuilder, sheet: MakingSheet, frame: Frame): string {
  const left = frame.left + 3;
  const right = frame.right - 3;
  let y = heading(page, left, frame.high - 1, 'Check the made part');
  y = layInspections(page, sheet.inspections, left, right, y);
  const outlineAt = frame.left + 0.5 * (frame.right - frame.left);
  const top = y - 2;
  layTrueOutline(page, sheet, { left: outlineAt, right: frame.right, low: frame.low, high: top });
  const width = outlineAt - left - 3;
  // The size at which all of it fits, tried on a page that nobody sees.
  const sizes = [2.9, 2.6, 2.3, 2];
  const fits = (size: number): boolean =>
    layWords(startPage(page.paper, '', page.measure), sheet, left, width, top, size) > frame.low;
  layWords(page, sheet, left, width, top, sizes.find(fits) ?? 2);
  return '1:1';
}

function layWords(
  page: PageBuilder,
  sheet: MakingSheet,
  left: number,
  width: number,
  top: number,
  size: number,
): number {
  let y = heading(page, left, top, `Making: ${sheet.title.process.name}`);
  for (const { what, value } of sheet.settings)
    y = page.paragraph(left, y, width, `${what}: ${value}.`, { size });
  y = heading(page, left, y, 'Mind');
  for (const caution of sheet.cautions) y = page.paragraph(left, y, width, caution, { size }) - 0.6;
  return y;
}

function layInspections(
  page: PageBuilder,
  inspections: readonly Inspection[],
  left: number,
  right: number,
  top: number,
): number {
  const at = [0, 0.25, 0.37, 0.5, 0.6, 0.72, 0.86].map((part) => left + part * (right - left));
  const small = { size: 2.6 };
  const heads = ['Size', 'Value', 'From', 'To', 'Caliper: jaws', 'reads', 'on good parts'];
  heads.forEach((text, c) => {
    page.text(at[c], top, text, { ...small, isBold: true });
  });
  let y = top - 4.2;
  for (const { what, how, value, low, high, reads, basis } of inspections) {
    fitText(page, at[0], y, what, at[1] - at[0] - 1);
    page.text(at[1], y, formatMm(value));
    page.text(at[2], y, formatMm(low));
    page.text(at[3], y, formatMm(high));
    for (const read of reads) {
      page.text(at[4], y, read.jaws);
      page.text(at[5], y, formatMm(read.value));
      page.text(at[6], y, `${formatMm(read.low)} to ${formatMm(read.high)}`, small);
      y -= 3.7;
    }
    page.text(at[0], y, `${how}; limits: ${basis}`, { size: 2.4 });
    page.line([left, y - 1.2, right, y - 1.2], narrow / 2);
    y -= 4.8;
  }
  return y;
}

/** The part's outline at 1:1, to lay the old wheel on; of one that is too large, the teeth that the room holds. */
function layTrueOutline(page: PageBuilder, { form }: MakingSheet, frame: Frame): void {
  const curves = flattenPart(form, 0, 0.005);
  const xs = curves.flatMap((curve) =>
    curve.kind === 'loop' ? Array.from(curve.loop.points.filter((_, k) => k % 2 === 0)) : [],
  );
  const ys = curves.flatMap((curve) =>
    curve.kind === 'loop' ? Array.from(curve.loop.points.filter((_, k) => k % 2 === 1)) : [],
  );
  const box = { left: least(xs), right: most(xs), low: least(ys), high: most(ys) };
  const isWhole =
    box.right - box.left <= frame.right - frame.left - 8 && box.high - box.low <= frame.high - frame.low - 22;
  const y = heading(page, frame.left + 3, frame.high, 'Outline, 1:1');
  const words = isWhole
    ? 'Lay the old gear on it: teeth and gaps must cover each other.'
    : 'Lay the old gear on it, rim on rim. The paper holds a part of it.';
  const after = page.paragraph(frame.left + 3, y, frame.right - frame.left - 6, words, { size: 2.9 });
  const room = { ...frame, left: frame.left + 2, right: frame.right - 2, low: frame.low + 2, high: after };
  const x = isWhole ? (room.left + room.right) / 2 - (box.left + box.right) / 2 : room.right - 2 - box.right;
  const center = (room.low + room.high) / 2 - (box.low + box.high) / 2;
  const place = { x, y: center, scale: 1 };
  const isInside = (px: number, py: number): boolean =>
    px >= room.left && px <= room.right && py >= room.low && py <= room.high;
  for (const curve of curves) {
    if (curve.kind === 'loop') {
      if (isWhole) page.loop(curve.loop, place, narrow);
      else layInside(page, curve.loop.points, place, isInside);
    } else if (curve.kind === 'circle') {
      const [cx, cy] = [x + curve.x, center + curve.y];
      const dash = curve.layer === 'pitch-circle' ? axisDash : [];
      const fits =
        isInside(cx - curve.radius, cy - curve.radius) && isInside(cx + curve.radius, cy + curve.radius);
      if (fits) page.circle(cx, cy, curve.radius, narrow, dash);
    }
  }
}

/** Straight runs through an outline's corners where both ends lie in the room: chords of arcs a few µm high. */
function layInside(
  page: PageBuilder,
  points: Float64Array,
  place: { readonly x: number; readonly y: number },
  isInside: (x: number, y: number) => boolean,
): void {
  let run: number[] = [];
  const n = points.length / 2;
  for (let k = 0; k <= n; k++) {
    const at = 2 * (k % n);
    const [px, py] = [place.x + points[at], place.y + points[at + 1]];
    if (isInside(px, py)) run.push(px, py);
    if (!isInside(px, py) || k === n) {
      if (run.length > 2) page.line(run, narrow);
      run = [];
    }
  }
}

function least(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
}

function most(values: readonly number[]): number {
  return values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
}

function layOrder(page: PageBuilder, order: OrderSheet, frame: Frame): string {
  const left = frame.left + 4;
  const right = frame.right - 4;
  let y = heading(page, left, frame.high - 2, 'Order');
  y = page.paragraph(left, y, right - left, order.subject, { isBold: true }) - 2;
  const valueAt = left + 42;
  for (const { what, value } of order.rows) {
    fitText(page, left, y, what, valueAt - left - 2);
    y = page.paragraph(valueAt, y, right - valueAt, value);
    page.line([left, y + rowStep - 1.2, right, y + rowStep - 1.2], narrow / 2);
  }
  y -= 2;
  for (const term of order.terms) y = page.paragraph(left, y, right - left, `- ${term}`);
  return 'none';
}
