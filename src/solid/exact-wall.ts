import {
  type BodyBuilder,
  type EdgeUse,
  type ExactCurve,
  type ExactSurface,
  type Knots,
  knotsOf,
  reverseLoop,
  straightKnots,
  type Triple,
} from './exact-body.ts';
import type { ExactLoop, LoopPiece } from './exact-loop.ts';

/** How a wall's section is carried up from its lower end. */
export interface Carried {
  /** Heights from low to high, each with the chamfer's share there */
  readonly levels: readonly { readonly z: number; readonly share: number }[];
  /** Turn about the axis at a height, rad; the rate is constant */
  readonly turnAt: (z: number) => number;
  readonly twist: number;
  /** Along x for each millimeter of height: a rack's */
  readonly shear: number;
  /** The circle that a chamfer cuts back to at the face; beyond it where `isOutward` means larger */
  readonly limit: number;
  readonly isOutward: boolean;
  readonly isHole: boolean;
}

/** The edges of a wall's two ends, counter-clockwise seen from above, and its face of each piece at the first level. */
export interface ExactWallEnds {
  readonly low: readonly EdgeUse[];
  readonly high: readonly EdgeUse[];
}

/**
 * Adds the faces of one wall to a body. `pierce` adds inner loops to the face of a piece.
 *
 * A helix is a circle in the plane and straight up: each of its pieces is a cubic Hermite curve in the height, as are
 * the control points of the patches between them, so a patch's rim is its edge to the last bit.
 */
export function addExactWall(
  body: BodyBuilder,
  loop: ExactLoop,
  carried: Carried,
  pierce?: (piece: number) => readonly (readonly EdgeUse[])[],
): ExactWallEnds {
  const { levels, isHole } = carried;
  const count = loop.points.length;
  const beyond = loop.pieces.map((piece, k) => isBeyond(loop, piece, k, carried));
  const moves = loop.points.map((_, k) => beyond[k] && beyond[(k + count - 1) % count]);
  const reached = loop.points.map((_, k) =>
    beyond[k] || beyond[(k + count - 1) % count] ? levels.map((_, i) => i) : [0, levels.length - 1],
  );
  const pointAt = (k: number, share: number): readonly [number, number] =>
    moves[k] ? cutPoint(loop.points[k], carried.limit, share) : loop.points[k];
  const place = startPlace(carried);
  // Corners: one a point and level that it reaches.
  const vertices = loop.points.map((_, k) => {
    const at = new Map<number, number>();
    for (const level of reached[k]) {
      const { z, share } = levels[level];
      at.set(level, body.addVertex(place(pointAt(k, share), z)));
    }
    return at;
  });
  const vertex = (k: number, level: number): number => {
    const found = vertices[k % count].get(level);
    if (found === undefined) throw new Error(`point ${k} has no corner at level ${level}`);
    return found;
  };
  // Uprights at each point, from level to level.
  const uprights = loop.points.map((_, k) =>
    reached[k].slice(1).map((upper, i) => {
      const lower = reached[k][i];
      const rows = carryRows(
        [pointAt(k, levels[lower].share)],
        [pointAt(k, levels[upper].share)],
        levels[lower].z,
        levels[upper].z,
        carried,
      );
      return {
        lower,
        upper,
        edge: body.addEdge(
          vertex(k, lower),
          vertex(k, upper),
          curveOf(
            rows.points.map(([one]) => one),
            rows.knots,
          ),
        ),
      };
    }),
  );
  // Edges along the loop, at each level that a piece reaches. A chamfer leaves pieces within its circle alone.
  const shareAt = (k: number, level: number): number => (beyond[k] ? levels[level].share : 0);
  const controls = (k: number, share: number): (readonly [number, number])[] =>
    listControls(loop.pieces[k], share, pointAt(k, share), pointAt((k + 1) % count, share));
  const rims = loop.pieces.map((piece, k) => {
    const at = new Map<number, number>();
    for (const level of beyond[k] ? levels.map((_, i) => i) : [0, levels.length - 1]) {
      const { z } = levels[level];
      const share = shareAt(k, level);
      at.set(
        level,
        body.addEdge(
          vertex(k, level),
          vertex(k + 1, level),
          rimCurve(piece, controls(k, share), z, share, carried, place),
        ),
      );
    }
    return at;
  });
  loop.pieces.forEach((piece, k) => {
    const own = [...rims[k].keys()];
    for (let i = 0; i + 1 < own.length; i++) {
      const [lower, upper] = [own[i], own[i + 1]];
      const column = (point: number): EdgeUse[] =>
        uprights[point % count]
          .filter((one) => one.lower >= lower && one.upper <= upper)
          .map(({ edge }) => ({ edge, isForward: true }));
      const rim = (level: number): EdgeUse => ({ edge: rims[k].get(level) ?? -1, isForward: true });
      const outside = [rim(lower), ...column(k + 1), ...reverseLoop([rim(upper)]), ...reverseLoop(column(k))];
      const { surface, isAlong } = surfaceOf(
        piece,
        controls(k, shareAt(k, lower)),
        controls(k, shareAt(k, upper)),
        { z: levels[lower].z, share: shareAt(k, lower) },
        { z: levels[upper].z, share: shareAt(k, upper) },
        carried,
        place,
      );
      body.addFace({
        surface,
        isAlong: isAlong !== isHole,
        loops: [isHole ? reverseLoop(outside) : outside, ...(pierce?.(k) ?? [])],
      });
    }
  });
  const end = (level: number): EdgeUse[] =>
    rims.map((at) => ({ edge: at.get(level) ?? -1, isForward: true }));
  return { low: end(0), high: end(levels.length - 1) };
}

/** Below a chamfer nothing moves; beyond its circle a piece is cut back. */
function isBeyond(
  loop: ExactLoop,
  piece: LoopPiece,
  k: number,
  { levels, limit, isOutward }: Carried,
): boolean {
  if (levels.every(({ share }) => share === 0)) return false;
  if (piece.kind === 'spline') return piece.cut !== undefined;
  const isPast = (radius: number): boolean => (isOutward ? radius > limit + 1e-9 : radius < limit - 1e-9);
  if (piece.kind === 'arc') return piece.x === 0 && piece.y === 0 && isPast(piece.radius);
  return [loop.points[k], loop.points[(k + 1) % loop.points.length]].some(([x, y]) =>
    isPast(Math.hypot(x, y)),
  );
}

function cutPoint([x, y]: readonly [number, number], limit: number, share: number): [number, number] {
  if (share === 0) return [x, y];
  const factor = 1 + share * (limit / Math.hypot(x, y) - 1);
  return [factor * x, factor * y];
}

function startPlace({
  turnAt,
  shear,
  levels,
}: Carried): (at: readonly [number, number], z: number) => Triple {
  const low = levels[0].z;
  return ([x, y], z) => {
    const turn = turnAt(z);
    if (turn === 0) return [x + shear * (z - low), y, z];
    const c = Math.cos(turn);
    const s = Math.sin(turn);
    return [x * c - y * s, x * s + y * c, z];
  };
}

/** The control points of a piece at a chamfer's share; an arc's and a line's are its ends. */
function listControls(
  piece: LoopPiece,
  share: number,
  from: readonly [number, number],
  to: readonly [number, number],
): (readonly [number, number])[] {
  if (piece.kind !== 'spline') return [from, to];
  const { points, cut } = piece;
  const last = points.length - 1;
  return points.map((at, k) => {
    if (k === 0) return from;
    if (k === last) return to;
    if (share === 0 || !cut) return at;
    return share === 1 ? cut[k] : [at[0] + share * (cut[k][0] - at[0]), at[1] + share * (cut[k][1] - at[1])];
  });
}

function rimCurve(
  piece: LoopPiece,
  controls: readonly (readonly [number, number])[],
  z: number,
  share: number,
  carried: Carried,
  place: (at: readonly [number, number], z: number) => Triple,
): ExactCurve {
  if (piece.kind === 'line') return { kind: 'line' };
  if (piece.kind === 'arc') {
    return {
      kind: 'arc',
      center: place([piece.x, piece.y], z),
      axis: [0, 0, piece.isClockwise ? -1 : 1],
      reference: [1, 0, 0],
      radius: arcRadius(piece, share, carried),
    };
  }
  return {
    kind: 'spline',
    spline: { degree: 3, points: controls.map((at) => place(at, z)), knots: knotsOfPiece(piece) },
  };
}

function knotsOfPiece({ knots }: { readonly knots: Float64Array }): Knots {
  return knotsOf({ knots, points: new Float64Array(0), dimension: 2 });
}

function arcRadius(piece: Extract<LoopPiece, { kind: 'arc' }>, share: number, { limit }: Carried): number {
  return share === 0 || piece.x !== 0 || piece.y !== 0
    ? piece.radius
    : piece.radius + share * (limit - piece.radius);
}

interface Level {
  readonly z: number;
  readonly share: number;
}

function surfaceOf(
  piece: LoopPiece,
  lower: readonly (readonly [number, number])[],
  upper: readonly (readonly [number, number])[],
  low: Level,
  high: Level,
  carried: Carried,
  place: (at: readonly [number, number], z: number) => Triple,
): { readonly surface: ExactSurface; readonly isAlong: boolean } {
  const { twist, shear } = carried;
  if (piece.kind === 'arc' && shear === 0) {
    const [from, to] = [arcRadius(piece, low.share, carried), arcRadius(piece, high.share, carried)];
    const reference: Triple = [1, 0, 0];
    const isAlong = !piece.isClockwise;
    if (Math.abs(from - to) < 1e-12) {
      const at = place([piece.x, piece.y], low.z);
      return { surface: { kind: 'cylinder', at, axis: [0, 0, 1], reference, radius: from }, isAlong };
    }
    // A cone is stated from its narrow end.
    const halfAngle = Math.atan(Math.abs(to - from) / (high.z - low.z));
    const isUp = to > from;
    return {
      surface: {
        kind: 'cone',
        at: [0, 0, isUp ? low.z : high.z],
        axis: [0, 0, isUp ? 1 : -1],
        reference,
        radius: Math.min(from, to),
        halfAngle,
      },
      isAlong,
    };
  }
  if (twist === 0 && piece.kind === 'line') {
    const [a, b] = [place(lower[0], low.z), place(lower[1], low.z)];
    const along = unit([b[0] - a[0], b[1] - a[1], 0]);
    const up = unit([shear, 0, 1]);
    return {
      surface: { kind: 'plane', at: a, normal: unit(cross(along, up)), reference: along },
      isAlong: true,
    };
  }
  if (twist === 0 && low.share === high.share && piece.kind === 'spline') {
    const points = lower.map((at) => place(at, low.z));
    return {
      surface: {
        kind: 'extrusion',
        spline: { degree: 3, points, knots: knotsOfPiece(piece) },
        direction: unit([shear, 0, 1]),
      },
      isAlong: true,
    };
  }
  const rows = carryRows(lower, upper, low.z, high.z, carried);
  return {
    surface: {
      kind: 'patch',
      patch: {
        degreeU: piece.kind === 'spline' ? 3 : 1,
        degreeV: rows.degree,
        points: lower.map((_, u) => rows.points.map((row) => row[u])),
        knotsU: piece.kind === 'spline' ? knotsOfPiece(piece) : straightKnots,
        knotsV: rows.knots,
      },
    },
    isAlong: true,
  };
}

/** How far a helix's curve may stray, mm: less than the tolerance that the files state. */
const helixTolerance = 5e-7;

/**
 * Control points carried from one height to another: row after row of them, each as many as came in. Straight where
 * nothing turns; else cubic Hermite spans with the true derivatives at their ends, two knots where they meet.
 */
function carryRows(
  lower: readonly (readonly [number, number])[],
  upper: readonly (readonly [number, number])[],
  from: number,
  to: number,
  carried: Carried,
): { readonly degree: 1 | 3; readonly points: readonly (readonly Triple[])[]; readonly knots: Knots } {
  const { twist } = carried;
  if (twist === 0) {
    const place = startPlace(carried);
    return {
      degree: 1,
      points: [lower.map((at) => place(at, from)), upper.map((at) => place(at, to))],
      knots: straightKnots,
    };
  }
  const height = to - from;
  const turned = Math.abs(twist * height);
  const radius = Math.max(...lower.map(([x, y]) => Math.hypot(x, y)));
  // A Hermite cubic strays from r cos by r Δ⁴/384 over a turn Δ.
  const spans = Math.max(1, Math.ceil(turned * (radius / (384 * helixTolerance)) ** 0.25));
  const third = height / spans / 3;
  const rows: Triple[][] = [];
  for (let i = 0; i <= spans; i++) {
    const share = i / spans;
    const z = i === spans ? to : from + height * share;
    const turn = carried.turnAt(z);
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    const row: Triple[] = [];
    const before: Triple[] = [];
    const after: Triple[] = [];
    lower.forEach(([lowX, lowY], k) => {
      const [highX, highY] = upper[k];
      const px = i === spans ? highX : lowX + share * (highX - lowX);
      const py = i === spans ? highY : lowY + share * (highY - lowY);
      const [x, y] = turn === 0 ? [px, py] : [px * c - py * s, px * s + py * c];
      const [ux, uy] = [(highX - lowX) / height, (highY - lowY) / height];
      const dx = third * (ux * c - uy * s - twist * y);
      const dy = third * (ux * s + uy * c + twist * x);
      row.push([x, y, z]);
      before.push([x - dx, y - dy, z - third]);
      after.push([x + dx, y + dy, z + third]);
    });
    // Between two spans their neighbors' control points stand for the shared one.
    if (i > 0) rows.push(before);
    if (i === 0 || i === spans) rows.push(row);
    if (i < spans) rows.push(after);
  }
  return {
    degree: 3,
    points: rows,
    knots: {
      values: Array.from({ length: spans + 1 }, (_, i) => i / spans),
      counts: Array.from({ length: spans + 1 }, (_, i) => (i === 0 || i === spans ? 4 : 2)),
    },
  };
}

function curveOf(points: readonly Triple[], knots: Knots): ExactCurve {
  return points.length === 2 ? { kind: 'line' } : { kind: 'spline', spline: { degree: 3, points, knots } };
}

function cross(a: Triple, b: Triple): Triple {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function unit([x, y, z]: Triple): Triple {
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
}
