import type { Mesh } from '../solid/mesh.ts';

/**
 * A mesh as binary STL: 80 bytes of title, the triangle count, then 50 bytes a triangle, little-endian, single
 * precision. STL states no unit; the numbers are mm. Same mesh and title, same bytes.
 *
 * @param title ASCII; longer than 80 is cut, other characters become `?`; never starts with `solid`
 */
export function encodeStl(mesh: Mesh, title: string): Uint8Array {
  const { positions, triangles } = mesh;
  const count = triangles.length / 3;
  const bytes = new Uint8Array(84 + 50 * count);
  const safe = /^solid/i.test(title) ? ` ${title}` : title;
  for (let k = 0; k < 80; k++) {
    const code = k < safe.length ? safe.charCodeAt(k) : 32;
    bytes[k] = code >= 32 && code < 127 ? code : 63;
  }
  const view = new DataView(bytes.buffer);
  view.setUint32(80, count, true);
  for (let t = 0, at = 84; t < triangles.length; t += 3, at += 50) {
    const a = 3 * triangles[t];
    const b = 3 * triangles[t + 1];
    const c = 3 * triangles[t + 2];
    const ux = positions[b] - positions[a];
    const uy = positions[b + 1] - positions[a + 1];
    const uz = positions[b + 2] - positions[a + 2];
    const vx = positions[c] - positions[a];
    const vy = positions[c + 1] - positions[a + 1];
    const vz = positions[c + 2] - positions[a + 2];
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const length = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1;
    view.setFloat32(at, nx / length, true);
    view.setFloat32(at + 4, ny / length, true);
    view.setFloat32(at + 8, nz / length, true);
    for (let corner = 0; corner < 3; corner++) {
      const from = corner === 0 ? a : corner === 1 ? b : c;
      const to = at + 12 + 12 * corner;
      view.setFloat32(to, positions[from], true);
      view.setFloat32(to + 4, positions[from + 1], true);
      view.setFloat32(to + 8, positions[from + 2], true);
    }
  }
  return bytes;
}
