import { type FlankCurve, findToothCurves, type ToothCurves } from '../involute/tooth-curves.ts';
import { bisect } from '../numeric/bisect.ts';
import { fitSpline } from '../numeric/fit-spline.ts';
import { findGrooveAngles, listFlattenedArcs, traceKnurl, tracePolygon } from './bore-outline.ts';
import type { StackWall } from './part-stack.ts';
import { findSectorAngles } from './sector-outline.ts';
import { findChamferRadius, findTwist } from './toothed-wall.ts';
import type { Bore, PlacedSection } from './wheel-form.ts';

/** A closed plane curve of exact pieces, counter-clockwise: piece k leads from point k to the next. */
export interface ExactLoop {
  /** x, y */
  readonly points: readonly (readonly [number, number])[];
  readonly pieces: readonly LoopPiece[];
}

export type LoopPiece =
  | { readonly kind: 'line' }
  | {
      readonly kind: 'arc';
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly isClockwise: boolean;
    }
  | FittedPiece;

/** A cubic B-spline within the tolerance of its curve. `cut`, beyond a chamfer's circle: its points at the face. */
export interface FittedPiece {
  readonly kind: 'spline';
  readonly points: readonly (readonly [number, number])[];
  readonly cut?: readonly (readonly [number, number])[] | undefined;
  readonly knots: Float64Array;
}

/** A tenth of what is promised of a file's flanks, mm: their error and rounding together stay below it. */
export const fitTolerance = 1e-4;

/** A wall's loop as exact pieces. Toothed loops are split where a chamfer begins. */
export function findExactLoop(wall: StackWall): ExactLoop {
  const { loop } = wall;
  if (loop.kind === 'circle') return circleLoop(loop.radius, loop.x, loop.y);
  if (loop.kind === 'bore') return boreLoop(loop.bore);
  return toothedLoop(wall, loop.section);
}

/** Two halves that meet above and below, so that a cross hole on either side lies within one of them. */
function circleLoop(radius: number, x: number, y: number): ExactLoop {
  const piece = { kind: 'arc', x, y, radius, isClockwise: false } as const;
  return {
    points: [
      [x, y - radius],
      [x, y + radius],
    ],
    pieces: [piece, piece],
  };
}

function boreLoop(bore: Bore): ExactLoop {
  switch (bore.shape) {
    case 'none':
      throw new Error('no bore, no loop');
    case 'round':
      return circleLoop(bore.diameter / 2, 0, 0);
    case 'd':
    case 'double-d':
      return arcsLoop(listFlattenedArcs(bore).map(([from, to]) => ({ from, to, radius: bore.diameter / 2 })));
    case 'hex':
      return polygonLoop(tracePolygon(6, bore.acrossFlats / Math.sqrt(3)));
    case 'square':
      return polygonLoop(tracePolygon(4, bore.acrossFlats / Math.SQRT2));
    case 'spline': {
      const { floor, mouth } = findGrooveAngles(bore);
      const pitch = (2 * Math.PI) / bore.count;
      const outer = bore.diameter / 2;
      return arcsLoop(
        Array.from({ length: bore.count }, (_, k) => [
          { from: k * pitch - floor, to: k * pitch + floor, radius: outer },
          { from: k * pitch + mouth, to: (k + 1) * pitch - mouth, radius: outer - bore.depth },
        ]).flat(),
      );
    }
    case 'knurl':
      return polygonLoop(traceKnurl(bore));
  }
}

function polygonLoop(corners: Float64Array): ExactLoop {
  const points = Array.from(
    { length: corners.length / 2 },
    (_, k) => [corners[2 * k], corners[2 * k + 1]] as const,
  );
  return { points, pieces: points.map(() => ({ kind: 'line' })) };
}

/** Arcs about the origin with straight lines between them. */
function arcsLoop(
  arcs: readonly { readonly from: number; readonly to: number; readonly radius: number }[],
): ExactLoop {
  const points: [number, number][] = [];
  const pieces: LoopPiece[] = [];
  for (const { from, to, radius } of arcs) {
    points.push(
      [radius * Math.cos(from), radius * Math.sin(from)],
      [radius * Math.cos(to), radius * Math.sin(to)],
    );
    pieces.push({ kind: 'arc', x: 0, y: 0, radius, isClockwise: false }, { kind: 'line' });
  }
  return { points, pieces };
}

/** A flank's piece with its ends, in the tooth's frame. */
interface FlankPiece {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly piece: LoopPiece;
}

function toothedLoop(wall: StackWall, section: PlacedSection): ExactLoop {
  const { spec, sector } = section;
  const curves = findToothCurves(spec);
  const isCut = wall.chamfer.low > 0 || wall.chamfer.high > 0;
  const isTwisted = findTwist(section) !== 0;
  const right = fitFlank(curves, isCut ? findChamferRadius(section) : undefined, isTwisted);
  const left = right.map(mirror).reverse();
  const { rootRadius, tipRadius, hasRoot, hasTip } = curves;
  const tipArc: LoopPiece = { kind: 'arc', x: 0, y: 0, radius: tipRadius, isClockwise: false };
  const rootArc: LoopPiece = { kind: 'arc', x: 0, y: 0, radius: rootRadius, isClockwise: false };
  const points: (readonly [number, number])[] = [];
  const pieces: LoopPiece[] = [];
  const pitch = (2 * Math.PI) / spec.teeth;
  const teeth = sector?.teeth ?? spec.teeth;
  const add = (at: readonly [number, number], piece: LoopPiece): void => {
    points.push(at);
    pieces.push(piece);
  };
  const polar = (radius: number, angle: number): [number, number] => [
    radius * Math.cos(angle),
    radius * Math.sin(angle),
  ];
  for (let tooth = 0; tooth < teeth; tooth++) {
    const turn = startTurn(tooth * pitch);
    for (const { from, piece } of right) add(turn(from), turnPiece(piece, turn));
    if (hasTip) add(turn(right[right.length - 1].to), tipArc);
    for (const { from, piece } of left) add(turn(from), turnPiece(piece, turn));
    const end = turn(left[left.length - 1].to);
    if (tooth + 1 < teeth || !sector) {
      if (hasRoot) add(end, rootArc);
      continue;
    }
    const { rest } = findSectorAngles(section);
    add(end, rootArc);
    if (!rest) continue;
    add(polar(rootRadius, rest.from), { kind: 'line' });
    add(polar(rest.radius, rest.from), { kind: 'arc', x: 0, y: 0, radius: rest.radius, isClockwise: false });
    add(polar(rest.radius, rest.to), { kind: 'line' });
    add(polar(rootRadius, rest.to), rootArc);
  }
  return { points, pieces };
}

/**
 * The right flank's pieces, split where a chamfer's circle crosses them. An arc that is twisted becomes a spline: its
 * surface is no cylinder.
 */
function fitFlank(curves: ToothCurves, limit: number | undefined, isTwisted: boolean): FlankPiece[] {
  const pieces: FlankPiece[] = [];
  const joint = (k: number): [number, number] => [curves.joints[2 * k], curves.joints[2 * k + 1]];
  const isOutward = curves.tipRadius > curves.rootRadius;
  curves.flank.forEach((curve, k) => {
    const at = limit === undefined ? undefined : findSplit(curve, limit, isOutward);
    if (at === undefined || at <= 0 || at >= 1) {
      pieces.push(
        fitPiece(
          curve,
          0,
          1,
          joint(k),
          joint(k + 1),
          at === undefined || at >= 1 ? undefined : limit,
          isTwisted,
        ),
      );
      return;
    }
    const middle = new Float64Array(2);
    curve.pointAt(at, middle);
    const split: [number, number] = [middle[0], middle[1]];
    pieces.push(fitPiece(curve, 0, at, joint(k), split, undefined, isTwisted));
    pieces.push(fitPiece(curve, at, 1, split, joint(k + 1), limit, isTwisted));
  });
  return pieces;
}

/** Where a curve from root to tip passes a circle: 0 or below where all of it lies beyond, 1 where none does. */
function findSplit({ pointAt }: FlankCurve, limit: number, isOutward: boolean): number {
  const at = new Float64Array(2);
  const isBefore = (parameter: number): boolean => {
    pointAt(parameter, at);
    const radius = Math.hypot(at[0], at[1]);
    return isOutward ? radius <= limit : radius >= limit;
  };
  if (isBefore(1)) return 1;
  if (!isBefore(0)) return 0;
  const found = bisect(isBefore, 0, 1).holding;
  // A sliver of a curve is none: the chamfer then begins at the joint.
  return found < sliver ? 0 : found > 1 - sliver ? 1 : found;
}

const sliver = 1e-6;

function fitPiece(
  curve: FlankCurve,
  start: number,
  end: number,
  from: readonly [number, number],
  to: readonly [number, number],
  limit: number | undefined,
  isTwisted: boolean,
): FlankPiece {
  if (curve.arc && limit === undefined && !isTwisted) {
    return { from, to, piece: { kind: 'arc', ...curve.arc, isClockwise: false } };
  }
  // A chamfered curve and what it becomes at the face are fitted together, so that they share their knots.
  const dimension = limit === undefined ? 2 : 4;
  const { spline } = fitSpline(
    (parameter, out) => {
      curve.pointAt(start + (end - start) * parameter, out);
      if (limit === undefined) return;
      const factor = limit / Math.hypot(out[0], out[1]);
      out[2] = factor * out[0];
      out[3] = factor * out[1];
    },
    dimension,
    fitTolerance,
  );
  const count = spline.points.length / dimension;
  const take = (offset: number): [number, number][] =>
    Array.from({ length: count }, (_, k) => [
      spline.points[k * dimension + offset],
      spline.points[k * dimension + offset + 1],
    ]);
  const cut = limit === undefined ? undefined : take(2);
  return { from, to, piece: { kind: 'spline', points: take(0), cut, knots: spline.knots } };
}

/** The other flank: mirrored about the tooth's middle, run through the other way. */
function mirror({ from, to, piece }: FlankPiece): FlankPiece {
  const flip = ([x, y]: readonly [number, number]): [number, number] => [x, -y];
  if (piece.kind === 'spline') {
    return {
      from: flip(to),
      to: flip(from),
      piece: {
        kind: 'spline',
        points: piece.points.map(flip).reverse(),
        cut: piece.cut?.map(flip).reverse(),
        knots: piece.knots.map((_, k) => 1 - piece.knots[piece.knots.length - 1 - k]),
      },
    };
  }
  return { from: flip(to), to: flip(from), piece: piece.kind === 'arc' ? { ...piece, y: -piece.y } : piece };
}

function startTurn(angle: number): (at: readonly [number, number]) => [number, number] {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return ([x, y]) => [x * c - y * s, x * s + y * c];
}

function turnPiece(piece: LoopPiece, turn: (at: readonly [number, number]) => [number, number]): LoopPiece {
  if (piece.kind === 'line') return piece;
  if (piece.kind === 'arc') {
    const [x, y] = turn([piece.x, piece.y]);
    return { ...piece, x, y };
  }
  return { ...piece, points: piece.points.map(turn), cut: piece.cut?.map(turn) };
}
