import type { Mesh } from '../solid/mesh.ts';
import { writeNormal } from '../solid/write-normal.ts';

/**
 * A mesh as binary STL: 80 bytes of title, the triangle count, then 50 bytes a triangle, little-endian, single
 * precision. STL states no unit; the numbers are mm. Same mesh and title, same bytes.
 *
 * Corners that single precision can't tell apart are one corner to every reader, so the triangles between them are
 * left out: the rest stays closed.
 *
 * @param title ASCII; longer than 80 is cut, other characters become `?`; never starts with `solid`, which marks text
 */
export function encodeStl(mesh: Mesh, title: string): Uint8Array {
  const { triangles } = mesh;
  const single = Float32Array.from(mesh.positions);
  const bytes = new Uint8Array(84 + (50 * triangles.length) / 3);
  const safe = /^solid/i.test(title) ? ` ${title}` : title;
  for (let k = 0; k < 80; k++) {
    const code = k < safe.length ? safe.charCodeAt(k) : 32;
    bytes[k] = code >= 32 && code < 127 ? code : 63;
  }
  const view = new DataView(bytes.buffer);
  let at = 84;
  for (let t = 0; t < triangles.length; t += 3) {
    const a = 3 * triangles[t];
    const b = 3 * triangles[t + 1];
    const c = 3 * triangles[t + 2];
    if (isSame(single, a, b) || isSame(single, b, c) || isSame(single, c, a)) continue;
    putNormal(view, at, mesh.positions, a, b, c);
    for (let axis = 0; axis < 3; axis++) {
      view.setFloat32(at + 12 + 4 * axis, single[a + axis], true);
      view.setFloat32(at + 24 + 4 * axis, single[b + axis], true);
      view.setFloat32(at + 36 + 4 * axis, single[c + axis], true);
    }
    at += 50;
  }
  view.setUint32(80, (at - 84) / 50, true);
  return bytes.subarray(0, at);
}

function isSame(single: Float32Array, a: number, b: number): boolean {
  return single[a] === single[b] && single[a + 1] === single[b + 1] && single[a + 2] === single[b + 2];
}

function putNormal(
  view: DataView,
  at: number,
  positions: Float64Array,
  a: number,
  b: number,
  c: number,
): void {
  const normal: [number, number, number] = [0, 0, 0];
  writeNormal(positions, a, b, c, normal);
  const [nx, ny, nz] = normal;
  const length = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1;
  view.setFloat32(at, nx / length, true);
  view.setFloat32(at + 4, ny / length, true);
  view.setFloat32(at + 8, nz / length, true);
}
