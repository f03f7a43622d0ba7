import { signedArea } from '../plane/polygon.ts';
import { fillLoop } from './fill-cap.ts';
import type { Mesh } from './mesh.ts';

/** A plane that stands along z: all (x, y, z) with `x cos angle + y sin angle = offset` (rad, mm). */
export interface CutPlane {
  readonly angle: number;
  readonly offset: number;
}

/** What stays of a solid that was cut open. */
export interface CutMesh {
  /** The solid's own surface behind the plane: open where it was cut */
  readonly body: Mesh;
  /** The cut itself, facing the side that was taken away */
  readonly cap: Mesh;
}

/**
 * Cuts a closed mesh along a plane and keeps the side where `x cos angle + y sin angle` is larger than the offset.
 * Exact but for rounding: corners nearer than a ten-millionth of the mesh's reach to the plane count as on it.
 */
export function cutMesh(mesh: Mesh, plane: CutPlane): CutMesh {
  const heights = findHeights(mesh, plane);
  const body = keepUpper(mesh, heights);
  return { body, cap: fillCut(body, plane) };
}

function findHeights({ positions }: Mesh, { angle, offset }: CutPlane): Float64Array {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  let reach = 0;
  for (const value of positions) reach = Math.max(reach, Math.abs(value));
  const heights = new Float64Array(positions.length / 3);
  for (let corner = 0; corner < heights.length; corner++) {
    const height = positions[3 * corner] * c + positions[3 * corner + 1] * s - offset;
    heights[corner] = Math.abs(height) < 1e-7 * reach ? 0 : height;
  }
  return heights;
}

/** Triangles above the plane as they are, those across it clipped; neighbors share the corners made on the plane. */
function keepUpper({ positions, triangles }: Mesh, heights: Float64Array): Mesh {
  const kept: number[] = Array.from(positions);
  const corners: number[] = [];
  const made = new Map<number, number>();
  const cross = (a: number, b: number): number => {
    const low = Math.min(a, b);
    const high = Math.max(a, b);
    const key = low * heights.length + high;
    let found = made.get(key);
    if (found === undefined) {
      const share = heights[low] / (heights[low] - heights[high]);
      found = kept.length / 3;
      for (let i = 0; i < 3; i++)
        kept.push(positions[3 * low + i] + share * (positions[3 * high + i] - positions[3 * low + i]));
      made.set(key, found);
    }
    return found;
  };
  for (let k = 0; k < triangles.length; k += 3) {
    const sides = [0, 1, 2].map((i) => Math.sign(heights[triangles[k + i]]));
    if (Math.max(...sides) < 0 || (Math.min(...sides) < 0 && Math.max(...sides) === 0)) continue;
    const polygon: number[] = [];
    for (let i = 0; i < 3; i++) {
      const next = (i + 1) % 3;
      if (sides[i] >= 0) polygon.push(triangles[k + i]);
      if (sides[i] * sides[next] < 0) polygon.push(cross(triangles[k + i], triangles[k + next]));
    }
    for (let i = 2; i < polygon.length; i++) corners.push(polygon[0], polygon[i - 1], polygon[i]);
  }
  return { positions: Float64Array.from(kept), triangles: Uint32Array.from(corners) };
}

/** Fills the loops that the open body's rim makes. */
function fillCut(body: Mesh, { angle, offset }: CutPlane): Mesh {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const { positions } = body;
  // In the plane: u to the right as seen from the side that was taken away, z up.
  const loops = chainRim(body).map((loop) => {
    const points = new Float64Array(2 * loop.length);
    loop.forEach((corner, k) => {
      points[2 * k] = positions[3 * corner] * s - positions[3 * corner + 1] * c;
      points[2 * k + 1] = positions[3 * corner + 2];
    });
    return points;
  });
  const outers = loops.filter((loop) => signedArea(loop) > 0);
  const holes = loops.filter((loop) => signedArea(loop) < 0);
  const flat: number[] = [];
  const triangles: number[] = [];
  for (const outer of outers) {
    const own = holes.filter((hole) => isInside(outer, hole[0], hole[1]));
    const first = flat.length / 2;
    for (const loop of [outer, ...own]) for (const value of loop) flat.push(value);
    for (const corner of fillLoop(outer, own)) triangles.push(first + corner);
  }
  const placed = new Float64Array((flat.length / 2) * 3);
  for (let k = 0; 2 * k < flat.length; k++) {
    placed[3 * k] = flat[2 * k] * s + offset * c;
    placed[3 * k + 1] = -flat[2 * k] * c + offset * s;
    placed[3 * k + 2] = flat[2 * k + 1];
  }
  return { positions: placed, triangles: Uint32Array.from(triangles) };
}

/** The edges that one triangle alone has, end to end, the other way round: as the missing face would have them. */
function chainRim({ positions, triangles }: Mesh): number[][] {
  const corners = positions.length / 3;
  const edges = new Set<number>();
  for (let k = 0; k < triangles.length; k++) {
    const from = triangles[k];
    const to = triangles[k % 3 === 2 ? k - 2 : k + 1];
    if (!edges.delete(to * corners + from)) edges.add(from * corners + to);
  }
  const leads = new Map<number, number[]>();
  for (const edge of edges) {
    const to = edge % corners;
    const from = Math.floor(edge / corners);
    const known = leads.get(to);
    if (known) known.push(from);
    else leads.set(to, [from]);
  }
  const loops: number[][] = [];
  for (const [start, ways] of leads) {
    while (ways.length > 0) {
      const loop: number[] = [];
      let at = start;
      do {
        loop.push(at);
        const next = leads.get(at)?.pop();
        if (next === undefined) throw new Error('the mesh to cut was not closed');
        at = next;
      } while (at !== start);
      if (loop.length > 2) loops.push(loop);
    }
  }
  return loops;
}

function isInside(loop: Float64Array, x: number, y: number): boolean {
  let inside = false;
  for (let k = 0, j = loop.length - 2; k < loop.length; j = k, k += 2) {
    const ky = loop[k + 1];
    const jy = loop[j + 1];
    if (ky > y !== jy > y && x < loop[k] + ((y - ky) * (loop[j] - loop[k])) / (jy - ky)) inside = !inside;
  }
  return inside;
}
