import {
  appendBezierCurve,
  closePath,
  concatTransformationMatrix,
  fill,
  lineTo,
  moveTo,
  type PDFFont,
  type PDFOperator,
  type PDFPage,
  PrintScaling,
  popGraphicsState,
  pushGraphicsState,
  setDashPattern,
  setLineWidth,
  stroke,
} from '@cantoo/pdf-lib';
import { laySheet } from '../making/lay-sheet.ts';
import type { MakingSheet } from '../making/making-sheet.ts';
import type { OrderSheet } from '../making/order-sheet.ts';
import type { Paper, SheetMark } from '../making/sheet-page.ts';
import { keepKnown, startSheetDocument } from './sheet-document.ts';

/**
 * A making sheet as PDF: vectors at true size, print scaling off, no date, so that the same sheet gives the same bytes.
 * Text is in Helvetica, which every reader of PDF has, and in the letters of Western Europe; others lose their accents
 * or become `?`. Throws the Fails of the part's solid.
 */
export async function encodeSheetPdf(
  sheet: MakingSheet,
  order: OrderSheet,
  paper: Paper,
): Promise<Uint8Array> {
  const { document, fonts, known, measure } = await startSheetDocument();
  document.setTitle(`${sheet.title.part}: making sheet`);
  document.setCreator('Sparetooth');
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  for (const { paper: size, marks } of laySheet(sheet, order, paper, measure)) {
    const page = document.addPage([size.width * pointsPerMm, size.height * pointsPerMm]);
    page.pushOperators(pushGraphicsState(), concatTransformationMatrix(pointsPerMm, 0, 0, pointsPerMm, 0, 0));
    for (const mark of marks) if (mark.kind !== 'text') page.pushOperators(...drawMark(mark));
    page.pushOperators(popGraphicsState());
    for (const mark of marks)
      if (mark.kind === 'text') drawText(page, mark, mark.isBold ? fonts.bold : fonts.plain, known);
  }
  return document.save();
}

/** A point is 1/72 in. */
const pointsPerMm = 72 / 25.4;

function drawText(
  page: PDFPage,
  mark: Extract<SheetMark, { readonly kind: 'text' }>,
  font: PDFFont,
  known: ReadonlySet<number>,
): void {
  page.drawText(keepKnown(mark.text, known), {
    x: mark.x * pointsPerMm,
    y: mark.y * pointsPerMm,
    size: mark.size * pointsPerMm,
    font,
  });
}

function drawMark(mark: Exclude<SheetMark, { readonly kind: 'text' }>): PDFOperator[] {
  const { points } = mark;
  const bulges = mark.kind === 'line' ? (mark.bulges ?? []) : [];
  const isClosed = mark.kind === 'fill' || mark.isClosed;
  const n = points.length / 2;
  const path: PDFOperator[] = [moveTo(round(points[0]), round(points[1]))];
  for (let k = 0; k < (isClosed ? n : n - 1); k++) {
    const next = 2 * ((k + 1) % n);
    path.push(...drawPiece(points[2 * k], points[2 * k + 1], points[next], points[next + 1], bulges[k] ?? 0));
  }
  if (isClosed) path.push(closePath());
  if (mark.kind === 'fill') return [...path, fill()];
  return [setLineWidth(mark.width), setDashPattern([...mark.dash], 0), ...path, stroke()];
}

/** A line, or an arc as cubic curves of an eighth of a turn at most: within 4 millionths of their radius. */
function drawPiece(x1: number, y1: number, x2: number, y2: number, bulge: number): PDFOperator[] {
  if (bulge === 0) return [lineTo(round(x2), round(y2))];
  const off = (1 - bulge * bulge) / (4 * bulge);
  const cx = (x1 + x2) / 2 - off * (y2 - y1);
  const cy = (y1 + y2) / 2 + off * (x2 - x1);
  const turn = 4 * Math.atan(bulge);
  const count = Math.ceil(Math.abs(turn) / (Math.PI / 4));
  const step = turn / count;
  const handle = (4 / 3) * Math.tan(step / 4);
  const pieces: PDFOperator[] = [];
  let [rx, ry] = [x1 - cx, y1 - cy];
  for (let k = 0; k < count; k++) {
    const c = Math.cos(step);
    const s = Math.sin(step);
    const [nx, ny] = [rx * c - ry * s, rx * s + ry * c];
    pieces.push(
      appendBezierCurve(
        round(cx + rx - handle * ry),
        round(cy + ry + handle * rx),
        round(cx + nx + handle * ny),
        round(cy + ny - handle * nx),
        round(k + 1 === count ? x2 : cx + nx),
        round(k + 1 === count ? y2 : cy + ny),
      ),
    );
    [rx, ry] = [nx, ny];
  }
  return pieces;
}

/** A tenth of a micrometer of paper. */
function round(value: number): number {
  return Math.round(value * 1e4) / 1e4;
}
