/**
 * Writes into `out` the normal of a mesh's triangle whose corners' coordinates start at a, b and c: outward where they
 * run counter-clockwise seen from outside, and twice the triangle's area long, mm².
 */
export function writeNormal(
  positions: ArrayLike<number>,
  a: number,
  b: number,
  c: number,
  out: [number, number, number],
): void {
  const ux = positions[b] - positions[a];
  const uy = positions[b + 1] - positions[a + 1];
  const uz = positions[b + 2] - positions[a + 2];
  const vx = positions[c] - positions[a];
  const vy = positions[c + 1] - positions[a + 1];
  const vz = positions[c + 2] - positions[a + 2];
  out[0] = uy * vz - uz * vy;
  out[1] = uz * vx - ux * vz;
  out[2] = ux * vy - uy * vx;
}
