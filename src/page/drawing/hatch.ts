/** A rectangle, any unit, y up or down alike. */
export interface Rectangle {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/**
 * 45° hatching of a rectangle as path data: lines x − y = n · spacing · √2, so that neighbouring rectangles of one
 * part continue each other's lines. `spacing` is measured across the lines.
 */
export function hatchRectangle({ left, right, low, high }: Rectangle, spacing: number): string {
  if (!(right > left) || !(high > low) || !(spacing > 0)) return '';
  const step = spacing * Math.SQRT2;
  let path = '';
  for (let n = Math.ceil((left - high) / step); n * step < right - low; n++) {
    const c = n * step;
    const fromX = Math.max(left, low + c);
    const toX = Math.min(right, high + c);
    if (toX - fromX < 1e-6) continue;
    path += `M${round(fromX)} ${round(fromX - c)}L${round(toX)} ${round(toX - c)}`;
  }
  return path;
}

function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}
