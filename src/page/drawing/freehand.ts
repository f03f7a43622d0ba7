/**
 * A freehand line (ISO 128-2 type 01, drawn freely) from one point to another: path data. The same ends give the same
 * line, so nothing flickers. `sway` is how far it strays, in the points' unit.
 */
export function drawFreehand(
  from: readonly [number, number],
  to: readonly [number, number],
  sway: number,
): string {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (!(length > 0) || !(sway > 0)) return '';
  const alongX = (to[0] - from[0]) / length;
  const alongY = (to[1] - from[1]) / length;
  const count = Math.max(3, Math.min(24, Math.round(length / (sway * 2.2))));
  const at = (k: number): readonly [number, number] => {
    const along = (length * k) / count;
    const isEnd = k === 0 || k === count;
    const off = isEnd ? 0 : sway * (Math.sin(k * 2.4) * 0.7 + Math.sin(k * 5.3 + 1) * 0.3);
    return [from[0] + alongX * along - alongY * off, from[1] + alongY * along + alongX * off];
  };
  let path = `M${write(from)}`;
  for (let k = 1; k <= count; k++) {
    const before = at(k - 1);
    const here = at(k);
    // Through the middles, so that the line bends without corners.
    path += `Q${write(before)} ${write([(before[0] + here[0]) / 2, (before[1] + here[1]) / 2])}`;
  }
  return `${path}L${write(to)}`;
}

function write(point: readonly [number, number]): string {
  return `${Math.round(point[0] * 1000) / 1000} ${Math.round(point[1] * 1000) / 1000}`;
}
