import type { Box } from './part-labels.ts';

/** A place on the sheet, CSS pixels, y down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export function turnAbout(center: Point, { x, y }: Point, angle: number): Point {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return {
    x: center.x + (x - center.x) * c - (y - center.y) * s,
    y: center.y + (x - center.x) * s + (y - center.y) * c,
  };
}

export function line(from: Point, to: Point): string {
  return `M${n(from.x)} ${n(from.y)}L${n(to.x)} ${n(to.y)}`;
}

/** Between lines too close for arrows these stand outside and point in (ISO 129-1). */
export function drawDimension(p0: Point, p1: Point, isTight: boolean): { lines: string; arrows: string } {
  const length = Math.hypot(p1.x - p0.x, p1.y - p0.y) || 1;
  const dx = (p1.x - p0.x) / length;
  const dy = (p1.y - p0.y) / length;
  const over = isTight ? 18 : 0;
  const out = isTight ? -1 : 1;
  return {
    lines: line({ x: p0.x - dx * over, y: p0.y - dy * over }, { x: p1.x + dx * over, y: p1.y + dy * over }),
    arrows: arrowHead(p0.x, p0.y, -dx * out, -dy * out) + arrowHead(p1.x, p1.y, dx * out, dy * out),
  };
}

/** A filled arrow head whose point stands at x, y and looks along dx, dy. */
export function arrowHead(x: number, y: number, dx: number, dy: number): string {
  const length = 10;
  const half = 2;
  const bx = x - dx * length;
  const by = y - dy * length;
  return `M${n(x)} ${n(y)}L${n(bx - dy * half)} ${n(by + dx * half)}L${n(bx + dy * half)} ${n(by - dx * half)}Z`;
}

/** From a dimension line to its label: nothing where the label stands on it. */
export function joinLabel(label: Box, p0: Point, p1: Point): string {
  const middle = label.y + label.height / 2;
  const isLeft = label.x + label.width / 2 < (p0.x + p1.x) / 2;
  const end = isLeft ? p0 : p1;
  // A turned line runs a little up or down past the middle of its label.
  const isLevel = Math.abs(middle - (p0.y + p1.y) / 2) < Math.abs(p1.y - p0.y) + 12;
  if (isLevel && label.x < p1.x && label.x + label.width > p0.x) return '';
  if (isLevel) return line({ x: isLeft ? label.x + label.width : label.x, y: middle }, end);
  return drawLeader(label, end.x, end.y);
}

export function leader(label: Box, x: number, y: number): { lines: string; arrows: string } {
  return {
    lines: drawLeader(label, x, y),
    arrows: `M${n(x - 2.5)} ${n(y)}a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0 -5 0Z`,
  };
}

/** A thin line from a label's nearer side. */
function drawLeader(label: Box, x: number, y: number): string {
  if (x > label.x + label.width)
    return `M${n(label.x + label.width)} ${n(label.y + label.height / 2)}h8L${n(x)} ${n(y)}`;
  if (x < label.x) return `M${n(label.x)} ${n(label.y + label.height / 2)}h-8L${n(x)} ${n(y)}`;
  const isBelow = y > label.y + label.height / 2;
  return `M${n(label.x + label.width / 2)} ${n(isBelow ? label.y + label.height : label.y)}L${n(x)} ${n(y)}`;
}

export function n(value: number): number {
  return Math.round(value * 10) / 10;
}
