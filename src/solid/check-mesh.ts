import type { Mesh } from './mesh.ts';

/** What a mesh is, found by counting. */
export interface MeshReport {
  /** Every edge has exactly one twin that runs the other way. */
  readonly isClosed: boolean;
  /** Triangles with a repeated corner or no area */
  readonly degenerate: number;
  /** Number of through holes, for one connected body: (2 − V + E − F)/2 */
  readonly genus: number;
  /** mm³, positive where triangles face outward */
  readonly volume: number;
}

/** Counts a mesh's edges, degenerate triangles, holes and volume (divergence theorem). */
export function checkMesh(mesh: Mesh): MeshReport {
  const { positions, triangles } = mesh;
  const corners = positions.length / 3;
  const directed = new Float64Array(triangles.length);
  let degenerate = 0;
  let volume = 0;
  for (let k = 0; k < triangles.length; k += 3) {
    const [a, b, c] = [triangles[k], triangles[k + 1], triangles[k + 2]];
    directed[k] = a * corners + b;
    directed[k + 1] = b * corners + c;
    directed[k + 2] = c * corners + a;
    const [ax, ay, az] = [positions[3 * a], positions[3 * a + 1], positions[3 * a + 2]];
    const ux = positions[3 * b] - ax;
    const uy = positions[3 * b + 1] - ay;
    const uz = positions[3 * b + 2] - az;
    const vx = positions[3 * c] - ax;
    const vy = positions[3 * c + 1] - ay;
    const vz = positions[3 * c + 2] - az;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    if (a === b || b === c || c === a || !(nx * nx + ny * ny + nz * nz > 0)) degenerate++;
    volume += (ax * nx + ay * ny + az * nz) / 6;
  }
  directed.sort();
  let isClosed = true;
  for (let k = 1; k < directed.length; k++) if (directed[k] === directed[k - 1]) isClosed = false;
  for (let k = 0; k < triangles.length && isClosed; k += 3) {
    for (let i = 0; i < 3; i++) {
      const twin = triangles[k + ((i + 1) % 3)] * corners + triangles[k + i];
      if (!includes(directed, twin)) isClosed = false;
    }
  }
  const used = new Set(triangles).size;
  const genus = (2 - used + triangles.length / 2 - triangles.length / 3) / 2;
  return { isClosed, degenerate, genus, volume };
}

function includes(sorted: Float64Array, value: number): boolean {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle] < value) low = middle + 1;
    else high = middle;
  }
  return sorted[low] === value;
}
