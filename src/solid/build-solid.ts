import { findDiameters } from '../involute/gear-diameters.ts';
import { traceOutline } from '../involute/trace-outline.ts';
import { traceBore, traceCircle } from './bore-outline.ts';
import { checkForm } from './check-form.ts';
import { countCrossed, crossWalls, traceCrossed } from './cross-walls.ts';
import { fillLoop, fillRackFace, fillRingFace, fillWheelFace } from './fill-cap.ts';
import { type Mesh, type MeshBuilder, type MeshRing, startMesh } from './mesh.ts';
import { type PartStack, type StackFace, type StackWall, stackPart, type WallEnd } from './part-stack.ts';
import { traceSector } from './sector-outline.ts';
import { listWallLevels, startCuts, turnPoints, type WallLevel } from './toothed-wall.ts';
import type { WheelForm } from './wheel-form.ts';

/**
 * The closed, outward triangle mesh of a part: wheel, compound gear, ring or rack. No chord of its section strays
 * further than `chordError` (mm) from the exact curves, nor do the steps of a helix.
 *
 * The lower face of the first section's teeth lies at z = 0, hubs above and below. A helical toothing turns by
 * 2 z tan β/d at height z over its own lower face. A chamfer c goes straight, along each point's own radius, from
 * min(r, r_tip − c) at the face (internal: max(r, r_tip + c)) to the point's own radius r at depth c; so a section's
 * area is quadratic in the depth. A chord error coarser than 0.004 of a root diameter counts as that, so that walls
 * stay walls. Throws Fail `bad-geometry` and the Fails of `traceOutline`.
 *
 * @example buildSolid({ spec, faceWidth: 4, bore: { shape: 'none' }, hubs: [], chamfer: 0 }, 0.002)
 */
export function buildSolid(form: WheelForm, chordError: number): Mesh {
  checkForm(form);
  if (form.spec.kind === 'rack') return buildRack(form, chordError);
  const stack = stackPart(form);
  const traces = traceWalls(stack, chordError);
  const mesh = startMesh(...countRoom(stack, traces));
  const rings = traces.map((trace, k) => addWall(mesh, stack.walls[k], trace));
  crossWalls(mesh, stack.walls, rings);
  for (const face of stack.faces) addFace(mesh, stack, traces, rings, face);
  return mesh.finish();
}

/** A wall's sampled loop: the whole of it, and as it lies in its lower and upper face. */
interface WallTrace {
  readonly whole: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly levels: readonly WallLevel[];
  readonly cuts: (share: number) => Float64Array;
  /** 0 where the loop does not repeat from tooth to tooth */
  readonly perTooth: number;
}

function traceWalls(stack: PartStack, chordError: number): WallTrace[] {
  const round = Math.min(chordError, findLeastGap(stack) / 4);
  return stack.walls.map((wall): WallTrace => {
    const { loop, low, high } = wall;
    if (loop.kind === 'teeth') {
      const { section } = loop;
      const error = Math.min(chordError, 0.004 * findDiameters(section.spec).root);
      const outline = traceOutline(section.spec, error);
      const whole = traceSector(section, outline, error);
      const levels = listWallLevels(wall, section, error);
      const cuts = startCuts(section, whole);
      const at = ({ share, turn }: WallLevel): Float64Array => turnPoints(cuts(share), turn);
      return {
        whole,
        levels,
        cuts,
        low: at(levels[0]),
        high: at(levels[levels.length - 1]),
        perTooth: section.sector ? 0 : outline.perTooth,
      };
    }
    const whole = wall.cross
      ? traceCrossed(wall, round)
      : loop.kind === 'circle'
        ? moveCircle(traceCircle(loop.radius, round), loop.x, loop.y)
        : traceBore(loop.bore, chordError);
    const levels = [low, high].map((z) => ({ z, turn: 0, share: 0 }));
    return { whole, levels, cuts: () => whole, low: whole, high: whole, perTooth: 0 };
  });
}

function moveCircle(points: Float64Array, x: number, y: number): Float64Array {
  for (let k = 0; k < points.length; k += 2) {
    points[k] += x;
    points[k + 1] += y;
  }
  return points;
}

/**
 * The narrowest ring between a circle and its neighbors: a circle's chords run inside it, and coarse ones would cut
 * into what lies within.
 */
function findLeastGap({ walls }: PartStack): number {
  let least = Number.POSITIVE_INFINITY;
  for (const { loop: outer } of walls) {
    if (outer.kind !== 'circle' || outer.x !== 0 || outer.y !== 0) continue;
    for (const { loop: inner } of walls)
      if (inner.most < outer.least) least = Math.min(least, outer.least - inner.most);
  }
  return least;
}

/** Corners and triangles at most. A loop of n points is filled by n − 2 triangles, each hole adds its points and 2. */
function countRoom(stack: PartStack, traces: readonly WallTrace[]): [number, number] {
  let corners = 0;
  let triangles = 0;
  for (const { whole, levels } of traces) {
    corners += (whole.length / 2) * levels.length;
    triangles += whole.length * (levels.length - 1);
  }
  for (const { outer, holes } of stack.faces) {
    for (const { wall } of [outer, ...holes]) triangles += traces[wall].whole.length / 2 + 2;
  }
  const crossed = countCrossed(stack.walls);
  return [corners + crossed, triangles + 6 * crossed];
}

/** The rings of a wall's ends; where a cross hole goes through, its surface comes later. */
interface WallRings {
  readonly low: MeshRing;
  readonly high: MeshRing;
}

function addWall(mesh: MeshBuilder, wall: StackWall, trace: WallTrace): WallRings {
  const count = trace.whole.length / 2;
  const rings = trace.levels.map(({ z, turn, share }) => mesh.addRing(trace.cuts(share), z, turn, 0));
  if (!wall.cross)
    for (let k = 0; k + 1 < rings.length; k++) mesh.addWall(rings[k], rings[k + 1], count, wall.isHole);
  return { low: { first: rings[0], count }, high: { first: rings[rings.length - 1], count } };
}

function addFace(
  mesh: MeshBuilder,
  stack: PartStack,
  traces: readonly WallTrace[],
  rings: readonly WallRings[],
  face: StackFace,
): void {
  const pointsOf = ({ wall, end }: WallEnd): Float64Array => traces[wall][end];
  const outer = pointsOf(face.outer);
  const holes = face.holes.map(pointsOf);
  const { perTooth } = traces[face.outer.wall];
  const [first] = face.holes;
  const isRing = first !== undefined && stack.walls[first.wall].loop.kind === 'teeth';
  const inner = isRing ? traces[first.wall] : undefined;
  let triples: Uint32Array;
  if (perTooth > 0) triples = fillWheelFace(outer, perTooth, holes);
  else if (inner && inner.perTooth > 0 && holes.length === 1 && stack.walls[first.wall].isHole)
    triples = fillRingFace(outer, holes[0], inner.perTooth);
  else triples = fillLoop(outer, holes);
  const corners = [face.outer, ...face.holes].map(({ wall, end }) => rings[wall][end]);
  mesh.addCap(triples, corners, !face.isUp);
}

/** A rack's helix shears it along the bar, so two layers are exact. */
function buildRack(form: WheelForm, chordError: number): Mesh {
  const outline = traceOutline(form.spec, chordError);
  const n = outline.points.length / 2;
  const mesh = startMesh(2 * n, 4 * n + 16);
  const moved = form.faceWidth * Math.tan(form.spec.helixAngle);
  const low = mesh.addRing(outline.points, 0, 0, 0);
  const high = mesh.addRing(outline.points, form.faceWidth, 0, moved);
  const triples = fillRackFace(outline.points, outline.perTooth);
  mesh.addCap(triples, [{ first: low, count: n }], true);
  mesh.addCap(triples, [{ first: high, count: n }], false);
  mesh.addWall(low, high, n, false);
  return mesh.finish();
}
