import { findDiameters } from '../involute/gear-diameters.ts';
import { flattenPart } from '../solid/flatten-part.ts';
import { findBoreRadius, type WheelForm } from '../solid/wheel-form.ts';
import { formatMm } from './format-mm.ts';
import type { Inspection } from './list-inspections.ts';
import { findSectionLines, type SectionLines } from './section-lines.ts';
import { axisDash, bodySize, narrow, type PageBuilder, wide } from './sheet-page.ts';

/** Room on a page, mm. */
export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** Scales of ISO 5455 for small parts, largest first. */
const scales: readonly (readonly [number, number])[] = [
  [50, 1],
  [20, 1],
  [10, 1],
  [5, 1],
  [2, 1],
  [1, 1],
  [1, 2],
  [1, 5],
  [1, 10],
];

/** Paper round and between the views for dimensions, mm. */
const around = 16;
const between = 26;
const beyond = 18;

/**
 * Draws the front view and the half section beside it (ISO 128, first-angle or third: the section is cut, so it reads
 * the same) with the sizes that are checked, at the largest scale of ISO 5455 that fits; returns that scale's name.
 * Throws the Fails of the solid.
 */
export function layViews(
  page: PageBuilder,
  form: WheelForm,
  inspections: readonly Inspection[],
  frame: Frame,
): string {
  // Hidden edges are left out: the section beside it shows them.
  const curves = flattenPart(form, 0, viewError).filter(({ isHidden }) => !isHidden);
  const section = findSectionLines(form);
  const isRack = form.spec.kind === 'rack';
  const pitch = (Math.PI * form.spec.module) / Math.cos(form.spec.helixAngle);
  const front = isRack
    ? { left: -pitch / 2, right: (form.spec.teeth - 0.5) * pitch }
    : { left: -section.high, right: section.high };
  const wideness = front.right - front.left + section.length;
  const tallness = section.high - section.low;
  const room = {
    width: frame.right - frame.left - 2 * around - between - beyond,
    height: frame.high - frame.low - 2 * around,
  };
  const [drawn, real] =
    scales.find(([a, b]) => (wideness * a) / b <= room.width && (tallness * a) / b <= room.height) ??
    scales[scales.length - 1];
  const scale = drawn / real;
  const y = (frame.low + frame.high) / 2 - ((section.high + section.low) / 2) * scale;
  const start = (frame.left + frame.right - wideness * scale - between - beyond) / 2;
  const place = { x: start - front.left * scale, y, scale };
  for (const curve of curves) {
    const width = curve.layer === 'pitch-circle' ? narrow : wide;
    const dash = curve.layer === 'pitch-circle' ? axisDash : [];
    if (curve.kind === 'loop') page.loop(curve.loop, place, width);
    else if (curve.kind === 'circle')
      page.circle(place.x + scale * curve.x, y + scale * curve.y, scale * curve.radius, width, dash);
    else {
      const [[x1, y1], [x2, y2]] = [curve.from, curve.to];
      page.line([place.x + scale * x1, y + scale * y1, place.x + scale * x2, y + scale * y2], width, dash);
    }
  }
  const left = start + (front.right - front.left) * scale + between;
  if (!isRack) {
    const reach = section.high * scale + 4;
    page.line([place.x - reach, y, place.x + reach, y], narrow, axisDash);
    page.line([place.x, y - reach, place.x, y + reach], narrow, axisDash);
    page.line([left - 5, y, left + section.length * scale + 5, y], narrow, axisDash);
  }
  laySection(page, section, left, y, scale);
  layDimensions(page, form, inspections, section, left, y, scale);
  return `${drawn}:${real}`;
}

/** mm on the part; less than a printed line at the largest scale. */
const viewError = 0.002;

function laySection(page: PageBuilder, section: SectionLines, left: number, y: number, scale: number): void {
  for (const [x1, y1, x2, y2] of section.edges)
    page.line([left + x1 * scale, y + y1 * scale, left + x2 * scale, y + y2 * scale], wide);
  for (const [x1, x2, at] of section.pitch)
    page.line(
      [left + x1 * scale - 3, y + at * scale, left + x2 * scale + 3, y + at * scale],
      narrow,
      axisDash,
    );
  for (const [a, b, c, d] of section.cut)
    for (const row of hatch(left + a * scale, y + b * scale, left + c * scale, y + d * scale))
      page.line(row, narrow);
}

/** Across 45° lines, mm: what ISO 128-3 wants told apart from the outline, wide enough for small cuts. */
const hatchSpacing = 2;

/** 45° lines of one family, x − y = n · spacing · √2, so that neighboring cuts of one part continue each other's. */
function hatch(left: number, low: number, right: number, high: number): number[][] {
  const step = hatchSpacing * Math.SQRT2;
  const rows: number[][] = [];
  for (let n = Math.ceil((left - high) / step); n * step < right - low; n++) {
    const c = n * step;
    const from = Math.max(left, low + c);
    const to = Math.min(right, high + c);
    if (to - from > 0.05) rows.push([from, from - c, to, to - c]);
  }
  return rows;
}

function layDimensions(
  page: PageBuilder,
  form: WheelForm,
  inspections: readonly Inspection[],
  section: SectionLines,
  left: number,
  y: number,
  scale: number,
): void {
  const findValue = (key: string): number | undefined => inspections.find((one) => one.key === key)?.value;
  const right = left + section.length * scale;
  const upright = (key: string, x: number, radius: number, from: number): void => {
    const value = findValue(key);
    if (value === undefined) return;
    const reach = radius * scale;
    const out = x < from ? -1.5 : 1.5;
    page.line([from, y + reach, x + out, y + reach], narrow);
    page.line([from, y - reach, x + out, y - reach], narrow);
    layArrows(page, [x, y - reach, x, y + reach]);
    // Off the line's end, where there is white paper; a bore's below, so that it stays clear of a hub's.
    const at = key === 'bore' ? y - reach - 4 : y + reach + 1.5;
    page.text(x + (x < from ? -1 : 0), at, `\u00d8${formatMm(value)}`, {
      align: x < from ? 'right' : 'left',
    });
  };
  const along = (key: string, from: number, to: number, at: number, edge: number): void => {
    const value = findValue(key);
    if (value === undefined) return;
    const out = at > edge ? 1.5 : -1.5;
    page.line([from, edge, from, at + out], narrow);
    page.line([to, edge, to, at + out], narrow);
    layArrows(page, [from, at, to, at]);
    const words = formatMm(value);
    const isTight = to - from < page.measure(words, bodySize, false) + 1;
    if (isTight) page.text(to + 2 * head + 1, at + 0.8, words);
    else page.text((from + to) / 2, at + 1, words, { align: 'middle' });
  };
  if (form.spec.kind !== 'rack') {
    if (form.spec.kind === 'external') upright('outside', left - 9, findDiameters(form.spec).tip / 2, left);
    if (form.bore.shape === 'round') upright('bore', right + 6, findBoreRadius(form.bore), right);
    if (form.spec.kind === 'internal') upright('rim', right + 8, (form.rimDiameter ?? 0) / 2, right);
    const hub = form.hubs.at(0);
    if (hub) upright(`hub-${hub.side}`, right + 21, hub.diameter / 2, right);
  }
  const bottom = form.hubs.find((one) => one.side === 'bottom');
  const others = (form.others ?? []).length > 0;
  const before = others ? undefined : (bottom?.length ?? 0);
  if (before !== undefined) {
    const from = left + before * scale;
    along(
      'face-width',
      from,
      from + form.faceWidth * scale,
      y + section.high * scale + 8,
      y + section.high * scale,
    );
  }
  along('overall-length', left, right, y + section.low * scale - 9, y + section.low * scale);
}

/** A dimension line with filled arrowheads at its ends (ISO 129-1), turned outward where there is no room between. */
function layArrows(page: PageBuilder, [x1, y1, x2, y2]: readonly [number, number, number, number]): void {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length];
  const isTight = length < 4 * head;
  const sign = isTight ? -1 : 1;
  const tail = isTight ? 2 * head : 0;
  page.line([x1 - ux * tail, y1 - uy * tail, x2 + ux * tail, y2 + uy * tail], narrow);
  for (const [x, y, way] of [
    [x1, y1, sign],
    [x2, y2, -sign],
  ]) {
    const [bx, by] = [x + way * ux * head, y + way * uy * head];
    const [wx, wy] = [(-uy * head) / 6, (ux * head) / 6];
    page.fill([x, y, bx + wx, by + wy, bx - wx, by - wy]);
  }
}

/** Length of an arrowhead, mm. */
const head = 2.5;
