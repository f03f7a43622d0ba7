/** Appends an arc about the origin between two angles from the +y axis (clockwise), its end included. */
export function pushArc(
  points: number[],
  radius: number,
  from: number,
  to: number,
  chordError: number,
): void {
  const step = 2 * Math.acos(Math.max(0, 1 - chordError / radius));
  const count = Math.max(1, Math.ceil(Math.abs(to - from) / step));
  for (let k = 1; k <= count; k++) {
    const angle = from + ((to - from) * k) / count;
    points.push(radius * Math.sin(angle), radius * Math.cos(angle));
  }
}
