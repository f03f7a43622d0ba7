import { fitSpline } from '../numeric/fit-spline.ts';
import { findCrossedSide } from './cross-walls.ts';
import {
  type BodyBuilder,
  type EdgeUse,
  type ExactCurve,
  knotsOf,
  reverseLoop,
  type Triple,
} from './exact-body.ts';
import type { StackWall } from './part-stack.ts';

/**
 * Adds the rims and walls of cross holes to a body. Gives for each wall of the stack the inner loops of its faces, by
 * the piece of the wall's loop that the hole goes through; undefined for a wall without one.
 */
export function pierceWalls(
  body: BodyBuilder,
  walls: readonly StackWall[],
): readonly (((piece: number) => readonly (readonly EdgeUse[])[]) | undefined)[] {
  const rims = walls.map((wall) => {
    if (!wall.cross) return undefined;
    const sides = wall.cross.isThrough ? ([1, -1] as const) : ([1] as const);
    return sides.map((side) => ({ side, piece: findPiece(wall, side), rim: addRim(body, wall, side) }));
  });
  for (const side of [1, -1] as const) {
    const find = (isHole: boolean): Rim | undefined =>
      rims
        .filter((_, k) => walls[k].isHole === isHole)
        .flatMap((list) => list ?? [])
        .find((one) => one.side === side)?.rim;
    const [outer, inner] = [find(false), find(true)];
    const cross = walls.find((wall) => wall.cross)?.cross;
    if (outer && inner && cross) addTube(body, outer, inner, cross.z, cross.radius);
  }
  return walls.map(({ isHole }, k) => {
    const found = rims[k];
    if (!found) return undefined;
    return (piece) =>
      found
        .filter((one) => one.piece === piece)
        .map(({ rim }) => {
          const loop: EdgeUse[] = [
            { edge: rim.under, isForward: true },
            { edge: rim.over, isForward: true },
          ];
          return isHole ? loop : reverseLoop(loop);
        });
  });
}

/** Two edges: under the hole along the wall's loop, and back over it. */
interface Rim {
  readonly under: number;
  readonly over: number;
  readonly from: number;
  readonly to: number;
}

/** The piece of a wall's exact loop on +x or −x, as `findExactLoop` lays them out. */
function findPiece({ loop }: StackWall, side: 1 | -1): number {
  const shape = loop.kind === 'bore' ? loop.bore.shape : 'round';
  const pieces = { round: [0, 1], d: [1, 0], 'double-d': [3, 1], hex: [5, 2], square: [3, 1] };
  const found = Object.entries(pieces).find(([name]) => name === shape)?.[1];
  if (!found) throw new Error(`a cross hole through a ${shape} bore`);
  return found[side > 0 ? 0 : 1];
}

function addRim(body: BodyBuilder, wall: StackWall, side: 1 | -1): Rim {
  const { cross } = wall;
  if (!cross) throw new Error('no cross hole');
  const form = findCrossedSide(wall, side);
  const pointAt = (turn: number): Triple => {
    const y = -cross.radius * Math.cos(turn);
    const x = 'radius' in form ? Math.sqrt(form.radius * form.radius - y * y) : form.flat;
    return [side * x, side * y, cross.z - cross.radius * Math.sin(turn)];
  };
  const from = body.addVertex(pointAt(0));
  const to = body.addVertex(pointAt(Math.PI));
  const curve = (start: number): ExactCurve => {
    if ('flat' in form) {
      // Seen against +x (or −x) the rim runs counter-clockwise: under from left to right.
      return {
        kind: 'arc',
        center: [side * form.flat, 0, cross.z],
        axis: [side, 0, 0],
        reference: [0, 1, 0],
        radius: cross.radius,
      };
    }
    const { spline } = fitSpline(
      (parameter, out) => out.set(pointAt(start + Math.PI * parameter)),
      3,
      rimTolerance,
    );
    const points = Array.from({ length: spline.points.length / 3 }, (_, k): Triple => {
      const [x, y, z] = spline.points.subarray(3 * k, 3 * k + 3);
      return [x, y, z];
    });
    return { kind: 'spline', spline: { degree: 3, points, knots: knotsOf(spline) } };
  };
  return {
    from,
    to,
    under: body.addEdge(from, to, curve(0)),
    over: body.addEdge(to, from, curve(Math.PI)),
  };
}

/** A rim lies on two cylinders: as near to both as a helix to its own, mm. */
const rimTolerance = 2e-7;

/** The hole's own wall between hub and bore, its lower and its upper half. */
function addTube(body: BodyBuilder, outer: Rim, inner: Rim, z: number, radius: number): void {
  const near = body.addEdge(outer.to, inner.to, { kind: 'line' });
  const far = body.addEdge(outer.from, inner.from, { kind: 'line' });
  const surface = {
    kind: 'cylinder',
    at: [0, 0, z],
    axis: [1, 0, 0],
    reference: [0, 1, 0],
    radius,
  } as const;
  const use = (edge: number, isForward: boolean): EdgeUse => ({ edge, isForward });
  body.addFace({
    surface,
    isAlong: false,
    loops: [[use(outer.under, true), use(near, true), use(inner.under, false), use(far, false)]],
  });
  body.addFace({
    surface,
    isAlong: false,
    loops: [[use(outer.over, true), use(far, true), use(inner.over, false), use(near, false)]],
  });
}
