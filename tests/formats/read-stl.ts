import type { Mesh } from '../../src/solid/mesh.ts';

/** A reader of binary STL that shares no code with the writer: corners at the same place become one. */
export function readStl(bytes: Uint8Array): { title: string; normals: number[]; mesh: Mesh } {
  const buffer = Buffer.from(bytes);
  const count = buffer.readUInt32LE(80);
  if (buffer.length !== 84 + 50 * count) throw new Error(`${count} triangles in ${buffer.length} bytes`);
  const corners = new Map<string, number>();
  const positions: number[] = [];
  const triangles: number[] = [];
  const normals: number[] = [];
  for (let t = 0; t < count; t++) {
    const start = 84 + 50 * t;
    for (let k = 0; k < 3; k++) normals.push(buffer.readFloatLE(start + 4 * k));
    for (let corner = 1; corner <= 3; corner++) {
      const point = [0, 4, 8].map((by) => buffer.readFloatLE(start + 12 * corner + by));
      const key = point.join(' ');
      let index = corners.get(key);
      if (index === undefined) {
        index = corners.size;
        corners.set(key, index);
        positions.push(...point);
      }
      triangles.push(index);
    }
  }
  return {
    title: buffer.toString('latin1', 0, 80).trimEnd(),
    normals,
    mesh: { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) },
  };
}
