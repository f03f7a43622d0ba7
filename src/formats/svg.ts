import type { ArcLoop } from '../plane/fit-arcs.ts';
import type { FlatCurve, FlatLayer } from '../solid/flatten-part.ts';

/**
 * Plane curves as SVG 1.1, 1:1: width and height in mm, one user unit a mm, one group a kind of curve, arcs as arcs. The
 * picture has y downwards, so that the part looks as it does in the other files. Same curves, same bytes.
 *
 * @param title plain text; what XML can't hold becomes `?`
 */
export function encodeSvg(curves: readonly FlatCurve[], title: string): Uint8Array {
  const box = findBox(curves);
  const left = round(box.left - margin);
  const top = round(-box.high - margin);
  const width = round(box.right - box.left + 2 * margin);
  const height = round(box.high - box.low + 2 * margin);
  const layers = [...new Set(curves.map((curve) => curve.layer))];
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${left} ${top} ${width} ${height}">`,
    `<title>${escapeXml(title)}</title>`,
    ...layers.flatMap((layer) => [
      `<g id="${layer}" fill="none" stroke="${isCut(layer) ? '#000' : '#777'}" stroke-width="${isCut(layer) ? 0.1 : 0.05}"${layer === 'pitch-circle' ? ' stroke-dasharray="3 0.5 0.5 0.5"' : ''}>`,
      ...curves.filter((curve) => curve.layer === layer).map(writeCurve),
      '</g>',
    ]),
    '</svg>',
    '',
  ];
  return new TextEncoder().encode(lines.join('\n'));
}

/** White round the part, mm: half a line's width would be enough to see all of it. */
const margin = 1;

function isCut(layer: FlatLayer): boolean {
  return layer === 'outline' || layer === 'bore' || layer === 'holes';
}

function writeCurve(curve: FlatCurve): string {
  if (curve.kind === 'circle')
    return `<circle cx="${round(curve.x)}" cy="${round(-curve.y)}" r="${round(curve.radius)}"/>`;
  if (curve.kind === 'loop') return `<path d="${tracePath(curve.loop)}"/>`;
  const [[x1, y1], [x2, y2]] = [curve.from, curve.to];
  return `<line x1="${round(x1)}" y1="${round(-y1)}" x2="${round(x2)}" y2="${round(-y2)}"/>`;
}

/** With y turned over, a counter-clockwise arc has sweep flag 0. */
function tracePath({ points, bulges }: ArcLoop): string {
  let path = `M${round(points[0])} ${round(-points[1])}`;
  for (let k = 0; k < bulges.length; k++) {
    const next = (2 * k + 2) % points.length;
    const to = `${round(points[next])} ${round(-points[next + 1])}`;
    const bulge = bulges[k];
    if (bulge === 0) {
      path += `L${to}`;
      continue;
    }
    const chord = Math.hypot(points[next] - points[2 * k], points[next + 1] - points[2 * k + 1]);
    const radius = round((chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge)));
    path += `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 0 : 1} ${to}`;
  }
  return `${path}Z`;
}

function findBox(curves: readonly FlatCurve[]): {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
} {
  const xs: number[] = [];
  const ys: number[] = [];
  for (const curve of curves) {
    if (curve.kind === 'circle') {
      xs.push(curve.x - curve.radius, curve.x + curve.radius);
      ys.push(curve.y - curve.radius, curve.y + curve.radius);
    } else if (curve.kind === 'line') {
      xs.push(curve.from[0], curve.to[0]);
      ys.push(curve.from[1], curve.to[1]);
    } else {
      // Tip arcs stand over their ends by less than the margin holds.
      curve.loop.points.forEach((value, k) => {
        (k % 2 === 0 ? xs : ys).push(value);
      });
    }
  }
  const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b));
  const most = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b));
  return { left: least(xs), right: most(xs), low: least(ys), high: most(ys) };
}

/** A nanometer; never an exponent or a negative zero. */
function round(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}

function escapeXml(text: string): string {
  return text
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '?');
}
