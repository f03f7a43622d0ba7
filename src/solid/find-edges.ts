import type { Mesh } from './mesh.ts';
import { writeNormal } from './write-normal.ts';

/**
 * A mesh's edges as a draftsman sees them: segments, 12 numbers each: both ends (mm), then the outward unit normals of
 * the two faces at it, the second zero where a face ends. Flat joints, as between the triangles of one face, are in
 * neither list.
 */
export interface MeshEdges {
  /** Drawn wherever one of its faces looks at the eye: they meet at more than the angle, or a face ends */
  readonly sharp: Float32Array;
  /** Drawn where the surface turns away from the eye: one of its faces looks at it and the other doesn't */
  readonly bent: Float32Array;
}

/**
 * Sorts the edges of a mesh, closed or open, by how far its faces turn there. Linear in the mesh's size.
 *
 * @param sharpAngle rad, above 0 and below π
 */
export function findEdges({ positions, triangles }: Mesh, sharpAngle: number): MeshEdges {
  const normals = findNormals(positions, triangles);
  const corners = positions.length / 3;
  const sharpCosine = Math.cos(sharpAngle);
  const sharp: number[] = [];
  const bent: number[] = [];
  /** Edges that one face was seen at, by their two corners */
  const open = new Map<number, number>();
  for (let k = 0; k < triangles.length; k++) {
    const from = triangles[k];
    const to = triangles[k % 3 === 2 ? k - 2 : k + 1];
    const key = Math.min(from, to) * corners + Math.max(from, to);
    const other = open.get(key);
    if (other === undefined) {
      open.set(key, k);
      continue;
    }
    open.delete(key);
    const a = 3 * Math.floor(k / 3);
    const b = 3 * Math.floor(other / 3);
    const cosine =
      normals[a] * normals[b] + normals[a + 1] * normals[b + 1] + normals[a + 2] * normals[b + 2];
    if (cosine > flatCosine) continue;
    const list = cosine < sharpCosine ? sharp : bent;
    addSegment(list, positions, from, to);
    list.push(normals[a], normals[a + 1], normals[a + 2], normals[b], normals[b + 1], normals[b + 2]);
  }
  for (const k of open.values()) {
    addSegment(sharp, positions, triangles[k], triangles[k % 3 === 2 ? k - 2 : k + 1]);
    const a = 3 * Math.floor(k / 3);
    sharp.push(normals[a], normals[a + 1], normals[a + 2], 0, 0, 0);
  }
  return { sharp: Float32Array.from(sharp), bent: Float32Array.from(bent) };
}

/** Faces that turn by less than 0.1 mrad are one face; rounding turns thin triangles by less than that. */
const flatCosine = Math.cos(1e-4);

function addSegment(to: number[], positions: Float64Array, a: number, b: number): void {
  for (const corner of [a, b])
    to.push(positions[3 * corner], positions[3 * corner + 1], positions[3 * corner + 2]);
}

/** Unit normal of each triangle; zero where a triangle has no area. */
function findNormals(positions: Float64Array, triangles: Uint32Array): Float64Array {
  const normals = new Float64Array(triangles.length);
  const normal: [number, number, number] = [0, 0, 0];
  for (let k = 0; k < triangles.length; k += 3) {
    writeNormal(positions, 3 * triangles[k], 3 * triangles[k + 1], 3 * triangles[k + 2], normal);
    const length = Math.hypot(...normal) || 1;
    for (let c = 0; c < 3; c++) normals[k + c] = normal[c] / length;
  }
  return normals;
}
