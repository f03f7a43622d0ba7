/** Signed area of a closed polygon, x0, y0, x1, y1, …: positive counter-clockwise (shoelace formula). */
export function signedArea(points: Float64Array): number {
  let twice = 0;
  const n = points.length;
  for (let k = 0; k < n; k += 2) {
    const next = k + 2 < n ? k + 2 : 0;
    twice += points[k] * points[next + 1] - points[next] * points[k + 1];
  }
  return twice / 2;
}

/**
 * Whether no two edges of a closed polygon cross or touch, neighbors' common points apart. Edges are sorted into
 * cells of a square grid, and only edges that share a cell are tried, so outlines of ten thousand points take
 * milliseconds.
 */
export function isSimplePolygon(points: Float64Array): boolean {
  const count = points.length / 2;
  let left = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < count; k++) {
    left = Math.min(left, points[2 * k]);
    right = Math.max(right, points[2 * k]);
    low = Math.min(low, points[2 * k + 1]);
    high = Math.max(high, points[2 * k + 1]);
  }
  const columns = Math.max(1, Math.ceil(Math.sqrt(count)));
  const width = (right - left) / columns || 1;
  const height = (high - low) / columns || 1;
  const cells = new Map<number, number[]>();
  for (let edge = 0; edge < count; edge++) {
    const next = (edge + 1) % count;
    const c0 = Math.floor((Math.min(points[2 * edge], points[2 * next]) - left) / width);
    const c1 = Math.floor((Math.max(points[2 * edge], points[2 * next]) - left) / width);
    const r0 = Math.floor((Math.min(points[2 * edge + 1], points[2 * next + 1]) - low) / height);
    const r1 = Math.floor((Math.max(points[2 * edge + 1], points[2 * next + 1]) - low) / height);
    for (let row = r0; row <= r1; row++) {
      for (let column = c0; column <= c1; column++) {
        const cell = row * (columns + 2) + column;
        const others = cells.get(cell);
        if (!others) {
          cells.set(cell, [edge]);
          continue;
        }
        for (const other of others) if (crosses(points, count, other, edge)) return false;
        others.push(edge);
      }
    }
  }
  return true;
}

function crosses(points: Float64Array, count: number, first: number, second: number): boolean {
  if (first === second) return false;
  const gap = Math.abs(first - second);
  if (gap === 1 || gap === count - 1) return false;
  const firstEnd = (first + 1) % count;
  const secondEnd = (second + 1) % count;
  // Edges on one line are on both sides of each other by sign alone; apart, their boxes don't meet.
  if (isApart(points[2 * first], points[2 * firstEnd], points[2 * second], points[2 * secondEnd]))
    return false;
  if (
    isApart(
      points[2 * first + 1],
      points[2 * firstEnd + 1],
      points[2 * second + 1],
      points[2 * secondEnd + 1],
    )
  )
    return false;
  const a = side(points, first, firstEnd, second);
  const b = side(points, first, firstEnd, secondEnd);
  const c = side(points, second, secondEnd, first);
  const d = side(points, second, secondEnd, firstEnd);
  return a * b <= 0 && c * d <= 0;
}

function isApart(a: number, b: number, c: number, d: number): boolean {
  return Math.max(a, b) < Math.min(c, d) || Math.max(c, d) < Math.min(a, b);
}

function side(points: Float64Array, from: number, to: number, at: number): number {
  return Math.sign(
    (points[2 * to] - points[2 * from]) * (points[2 * at + 1] - points[2 * from + 1]) -
      (points[2 * to + 1] - points[2 * from + 1]) * (points[2 * at] - points[2 * from]),
  );
}
