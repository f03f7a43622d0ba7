/** A point of a sketch: x to the right, y down, in the sketch's own 320 by 200. */
export type Point = readonly [number, number];

/** Path data through the points, to a tenth of a unit; closed where asked. */
export function drawPoints(points: readonly Point[], isClosed = false): string {
  if (points.length === 0) return '';
  const steps = points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${short(x)} ${short(y)}`);
  return steps.join('') + (isClosed ? 'Z' : '');
}

/** Path data of a circle, so that circles and outlines can share one filled path. */
export function drawCircle([x, y]: Point, radius: number): string {
  const r = short(radius);
  return `M${short(x - radius)} ${short(y)}a${r} ${r} 0 1 0 ${short(2 * radius)} 0a${r} ${r} 0 1 0 ${short(-2 * radius)} 0Z`;
}

/** Path data of an upright rectangle. */
export function drawBox(left: number, top: number, right: number, bottom: number): string {
  return drawPoints(
    [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ],
    true,
  );
}

/** The freehand line of a break (ISO 128), from a to b, both included: uneven, but the same every time. */
export function breakPoints(a: Point, b: Point): Point[] {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const count = Math.max(4, Math.round(length / 3));
  const across: Point = [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
  return Array.from({ length: count + 1 }, (_, i): Point => {
    const t = i / count;
    const along = t * length;
    const fade = Math.min(1, along / 8, (length - along) / 8);
    const off = fade * (1.7 * Math.sin(along / 4.1) + 1.2 * Math.sin(along / 9.7 + 1));
    return [a[0] + t * (b[0] - a[0]) + off * across[0], a[1] + t * (b[1] - a[1]) + off * across[1]];
  });
}

/** 45° hatching of a box, lines 6 apart: cut material (ISO 128). */
export function hatchBox(left: number, top: number, right: number, bottom: number): string {
  let path = '';
  const height = bottom - top;
  for (let start = left - height + 6 - ((left - height) % 6); start < right; start += 6) {
    const x0 = Math.max(left, start);
    const x1 = Math.min(right, start + height);
    if (x1 > x0)
      path += `M${short(x0)} ${short(bottom - (x0 - start))}L${short(x1)} ${short(bottom - (x1 - start))}`;
  }
  return path;
}

function short(value: number): number {
  return Math.round(value * 10) / 10;
}
