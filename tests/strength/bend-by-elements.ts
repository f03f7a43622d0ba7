import { findFlankPoint } from '../../src/strength/find-flank-point.ts';
import type { ToothHalf } from '../../src/strength/trace-tooth-half.ts';

/**
 * The greatest tension in a tooth's fillet by finite elements, as σ b m/F_t: what Y_F Y_S stands for. Plane stress,
 * bilinear quadrilaterals; the tooth stands on a block three pitches wide and two modules deep, held at its sides and
 * foot; no neighbors. Knows nothing of sections, levers or form factors: only the outline and where the force stands.
 * The strain is read along the outline itself, where nothing presses, so stress is E times it.
 *
 * @param step along the outline, modules
 */
export function bendByElements(tooth: ToothHalf, loadRadius: number | undefined, step: number): number {
  const m = tooth.module;
  const side = resample(fromFoot(tooth.points), step * m);
  const grid = buildGrid(side, m);
  const load = findFlankPoint(tooth, loadRadius);
  const stiffness = assemble(grid);
  const forces = new Float64Array(2 * grid.count);
  // F_n = F_t/cos α_n, from the left flank, with its two nearest nodes.
  const normal = 1 / Math.cos(tooth.pressureAngle);
  const row = nearestRow(side, load.height);
  const [below, above] = [side[2 * row + 1], side[2 * row + 3]];
  const part = Math.min(1, Math.max(0, (load.height - below) / (above - below)));
  for (const [node, share] of [
    [grid.left[row], 1 - part],
    [grid.left[row + 1], part],
  ]) {
    forces[2 * node] += share * normal * Math.cos(load.angle);
    forces[2 * node + 1] -= share * normal * Math.sin(load.angle);
  }
  const moved = solve(stiffness, forces, grid.held);
  let greatest = 0;
  for (let k = 0; k + 1 < grid.left.length && side[2 * k + 1] < load.height - 0.5 * m; k++) {
    const [a, b] = [grid.left[k], grid.left[k + 1]];
    const dx = grid.xy[2 * b] - grid.xy[2 * a];
    const dy = grid.xy[2 * b + 1] - grid.xy[2 * a + 1];
    const stretch = dx * (moved[2 * b] - moved[2 * a]) + dy * (moved[2 * b + 1] - moved[2 * a + 1]);
    greatest = Math.max(greatest, stretch / (dx * dx + dy * dy));
  }
  return greatest * m;
}

const poisson = 0.3;

/** From where the fillet leaves the root at 75° to the axis; what lies before is the block's ledge. */
function fromFoot(points: Float64Array): Float64Array {
  let k = 0;
  while (Math.atan2(points[k] - points[k + 2], points[k + 3] - points[k + 1]) > (75 * Math.PI) / 180) k += 2;
  return points.subarray(k);
}

function resample(points: Float64Array, step: number): Float64Array {
  const along = [0];
  for (let k = 2; k < points.length; k += 2)
    along.push(
      along[along.length - 1] + Math.hypot(points[k] - points[k - 2], points[k + 1] - points[k - 1]),
    );
  const total = along[along.length - 1];
  const count = Math.ceil(total / step);
  const out = new Float64Array(2 * (count + 1));
  let at = 0;
  for (let i = 0; i <= count; i++) {
    const s = (total * i) / count;
    while (at + 2 < along.length && along[at + 1] < s) at++;
    const part = Math.min(1, (s - along[at]) / (along[at + 1] - along[at]));
    out[2 * i] = points[2 * at] + (points[2 * at + 2] - points[2 * at]) * part;
    out[2 * i + 1] = points[2 * at + 1] + (points[2 * at + 3] - points[2 * at + 1]) * part;
  }
  return out;
}

interface Grid {
  readonly xy: number[];
  readonly count: number;
  readonly cells: readonly (readonly [number, number, number, number])[];
  /** Nodes of the left flank, from the foot up */
  readonly left: readonly number[];
  readonly held: Uint8Array;
}

function buildGrid(side: Float64Array, m: number): Grid {
  const across = 20;
  const beside = 12;
  const deep = 12;
  const xy: number[] = [];
  const heldNodes: number[] = [];
  const cells: [number, number, number, number][] = [];
  const add = (x: number, y: number): number => {
    xy.push(x, y);
    return xy.length / 2 - 1;
  };
  const join = (lower: readonly number[], upper: readonly number[]): void => {
    for (let i = 0; i + 1 < lower.length; i++) cells.push([lower[i], lower[i + 1], upper[i + 1], upper[i]]);
  };
  // Finer toward both flanks, where the stress is.
  const spread = (i: number): number => Math.sin((Math.PI / 2) * ((2 * i) / across - 1));
  const toothRow = (k: number): number[] =>
    Array.from({ length: across + 1 }, (_, i) => add(side[2 * k] * spread(i), side[2 * k + 1]));

  // 1. The block: rows from its foot up to the ledge, steps growing with the distance from the fillet.
  const [footX, footY] = side;
  const wide = 1.5 * Math.PI * m;
  const grow = (i: number, n: number): number => (i / n) ** 2;
  let before: number[] | undefined;
  let ledge: number[] = [];
  for (let j = deep; j >= 0; j--) {
    const y = footY - 2 * m * grow(j, deep);
    const xs: number[] = [];
    for (let i = beside; i > 0; i--) xs.push(-footX - (wide - footX) * grow(i, beside));
    for (let i = 0; i <= across; i++) xs.push(footX * spread(i));
    for (let i = 1; i <= beside; i++) xs.push(footX + (wide - footX) * grow(i, beside));
    const row = xs.map((x) => add(x, y));
    heldNodes.push(row[0], row[row.length - 1], ...(j === deep ? row : []));
    if (before) join(before, row);
    before = row;
    ledge = row.slice(beside, beside + across + 1);
  }

  // 2. The tooth on it.
  const left = [ledge[0]];
  for (let k = 1; k < side.length / 2; k++) {
    const row = toothRow(k);
    join(ledge, row);
    left.push(row[0]);
    ledge = row;
  }
  const count = xy.length / 2;
  const held = new Uint8Array(count);
  for (const node of heldNodes) held[node] = 1;
  return { xy, count, cells, left, held };
}

function nearestRow(side: Float64Array, height: number): number {
  let row = 0;
  while (2 * (row + 2) + 1 < side.length && side[2 * row + 3] < height) row++;
  return row;
}

/** Rows of the stiffness matrix, E = 1, thickness 1. */
function assemble({ xy, count, cells }: Grid): Map<number, number>[] {
  const rows = Array.from({ length: 2 * count }, () => new Map<number, number>());
  const D = [1, poisson, (1 - poisson) / 2].map((one) => one / (1 - poisson * poisson));
  const g = 1 / Math.sqrt(3);
  for (const cell of cells) {
    const k = new Float64Array(64);
    for (const [r, s] of [
      [-g, -g],
      [g, -g],
      [g, g],
      [-g, g],
    ]) {
      const dr = [-(1 - s), 1 - s, 1 + s, -(1 + s)].map((one) => one / 4);
      const ds = [-(1 - r), -(1 + r), 1 + r, 1 - r].map((one) => one / 4);
      let [a, b, c, d] = [0, 0, 0, 0];
      cell.forEach((node, i) => {
        a += dr[i] * xy[2 * node];
        b += dr[i] * xy[2 * node + 1];
        c += ds[i] * xy[2 * node];
        d += ds[i] * xy[2 * node + 1];
      });
      const det = a * d - b * c;
      if (!(det > 0)) throw new Error('a cell is turned over');
      const nx = dr.map((one, i) => (d * one - b * ds[i]) / det);
      const ny = dr.map((one, i) => (a * ds[i] - c * one) / det);
      for (let i = 0; i < 4; i++) {
        for (let j = 0; j < 4; j++) {
          k[16 * i + 2 * j] += det * (D[0] * nx[i] * nx[j] + D[2] * ny[i] * ny[j]);
          k[16 * i + 2 * j + 1] += det * (D[1] * nx[i] * ny[j] + D[2] * ny[i] * nx[j]);
          k[16 * i + 8 + 2 * j] += det * (D[1] * ny[i] * nx[j] + D[2] * nx[i] * ny[j]);
          k[16 * i + 8 + 2 * j + 1] += det * (D[0] * ny[i] * ny[j] + D[2] * nx[i] * nx[j]);
        }
      }
    }
    for (let i = 0; i < 8; i++) {
      const row = rows[2 * cell[i >> 1] + (i & 1)];
      for (let j = 0; j < 8; j++) {
        const column = 2 * cell[j >> 1] + (j & 1);
        row.set(column, (row.get(column) ?? 0) + k[8 * i + j]);
      }
    }
  }
  return rows;
}

/** Conjugate gradients with the diagonal as preconditioner; held nodes stay where they are. */
function solve(rows: readonly Map<number, number>[], forces: Float64Array, held: Uint8Array): Float64Array {
  const n = forces.length;
  const starts = new Int32Array(n + 1);
  rows.forEach((row, i) => {
    starts[i + 1] = starts[i] + row.size;
  });
  const columns = new Int32Array(starts[n]);
  const values = new Float64Array(starts[n]);
  const diagonal = new Float64Array(n);
  rows.forEach((row, i) => {
    let at = starts[i];
    for (const [column, value] of row) {
      columns[at] = column;
      values[at++] = value;
    }
    diagonal[i] = row.get(i) ?? 1;
  });
  const x = new Float64Array(n);
  const residual = forces.map((one, i) => (held[i >> 1] ? 0 : one));
  const direction = residual.map((one, i) => one / diagonal[i]);
  const product = new Float64Array(n);
  let square = residual.reduce((sum, one, i) => sum + (one * one) / diagonal[i], 0);
  const enough = square * 1e-16;
  for (let round = 0; round < 20000 && square > enough; round++) {
    let curvature = 0;
    for (let i = 0; i < n; i++) {
      let sum = 0;
      if (!held[i >> 1])
        for (let k = starts[i]; k < starts[i + 1]; k++) sum += values[k] * direction[columns[k]];
      product[i] = sum;
      curvature += sum * direction[i];
    }
    const step = square / curvature;
    let next = 0;
    for (let i = 0; i < n; i++) {
      x[i] += step * direction[i];
      residual[i] -= step * product[i];
      next += (residual[i] * residual[i]) / diagonal[i];
    }
    const turn = next / square;
    for (let i = 0; i < n; i++) direction[i] = residual[i] / diagonal[i] + turn * direction[i];
    square = next;
  }
  return x;
}
