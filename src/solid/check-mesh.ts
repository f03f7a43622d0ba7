import type { Mesh } from './mesh.ts';
import { writeNormal } from './write-normal.ts';

/** What a mesh is, found by counting. */
export interface MeshReport {
  /** Every directed edge occurs once, and so does its twin that runs the other way. */
  readonly isClosed: boolean;
  /** Triangles with a repeated corner or no area */
  readonly degenerate: number;
  /** Number of through holes, for one connected body: (2 − V + E − F)/2; meaningless on an open mesh */
  readonly genus: number;
  /** mm³, positive where triangles face outward */
  readonly volume: number;
}

/**
 * Counts a mesh's edges, degenerate triangles and holes in time linear in its size; the volume is the sum of the
 * tetrahedra from the origin (divergence theorem). It does not look for faces that pass through each other.
 */
export function checkMesh(mesh: Mesh): MeshReport {
  const { positions, triangles } = mesh;
  let degenerate = 0;
  let volume = 0;
  const normal: [number, number, number] = [0, 0, 0];
  for (let k = 0; k < triangles.length; k += 3) {
    const a = 3 * triangles[k];
    const b = 3 * triangles[k + 1];
    const c = 3 * triangles[k + 2];
    writeNormal(positions, a, b, c, normal);
    const [nx, ny, nz] = normal;
    if (!(nx * nx + ny * ny + nz * nz > 0)) degenerate++;
    volume += (positions[a] * nx + positions[a + 1] * ny + positions[a + 2] * nz) / 6;
  }
  const used = countUsed(triangles, positions.length / 3);
  const genus = (2 - used + triangles.length / 2 - triangles.length / 3) / 2;
  return { isClosed: isClosed(triangles, positions.length / 3), degenerate, genus, volume };
}

function countUsed(triangles: Uint32Array, corners: number): number {
  const seen = new Uint8Array(corners);
  let used = 0;
  for (const corner of triangles) {
    if (seen[corner] === 0) used++;
    seen[corner] = 1;
  }
  return used;
}

/** Around each corner, the corners that edges lead to must be those that edges come from, each once. */
function isClosed(triangles: Uint32Array, corners: number): boolean {
  const starts = new Uint32Array(corners + 1);
  for (const corner of triangles) starts[corner + 1]++;
  for (let corner = 0; corner < corners; corner++) starts[corner + 1] += starts[corner];
  // Every triangle at a corner has one edge that leaves it and one that arrives.
  const leads = new Uint32Array(triangles.length);
  const comes = new Uint32Array(triangles.length);
  const filled = starts.slice();
  for (let k = 0; k < triangles.length; k++) {
    const first = k - (k % 3);
    const at = filled[triangles[k]]++;
    leads[at] = triangles[first + ((k + 1) % 3)];
    comes[at] = triangles[first + ((k + 2) % 3)];
  }
  const marks = new Uint32Array(corners);
  for (let corner = 0; corner < corners; corner++) {
    const mark = corner + 1;
    for (let k = starts[corner]; k < starts[mark]; k++) {
      if (leads[k] === corner || marks[leads[k]] === mark) return false;
      marks[leads[k]] = mark;
    }
    for (let k = starts[corner]; k < starts[mark]; k++) {
      if (marks[comes[k]] !== mark) return false;
      marks[comes[k]] = 0;
    }
  }
  return true;
}
