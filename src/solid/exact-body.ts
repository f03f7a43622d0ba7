import type { CubicSpline } from '../numeric/fit-spline.ts';

/** A point or direction, mm. */
export type Triple = readonly [number, number, number];

/**
 * A solid by its boundary, exactly: what exchange formats ask for. Every edge belongs to two loops, once in its own
 * direction and once against it.
 */
export interface ExactBody {
  readonly vertices: readonly Triple[];
  readonly edges: readonly ExactEdge[];
  readonly faces: readonly ExactFace[];
}

export interface ExactEdge {
  readonly from: number;
  readonly to: number;
  readonly curve: ExactCurve;
}

/** An arc runs counter-clockwise about its axis; a spline ends in its edge's vertices. */
export type ExactCurve =
  | { readonly kind: 'line' }
  | {
      readonly kind: 'arc';
      readonly center: Triple;
      readonly axis: Triple;
      readonly reference: Triple;
      readonly radius: number;
    }
  | { readonly kind: 'spline'; readonly spline: SpaceSpline };

/** A B-spline in space, cubic or of degree 1; each knot with how often it counts. */
export interface SpaceSpline {
  readonly degree: 1 | 3;
  readonly points: readonly Triple[];
  readonly knots: Knots;
}

export interface Knots {
  readonly values: ArrayLike<number>;
  readonly counts: readonly number[];
}

/**
 * The surface of a face, with the direction of its own normal: a plane's is `normal`; a cylinder's and cone's look
 * away from the axis (the cone's radius grows by tan `halfAngle` along its axis); that of an extrusion is the curve's
 * direction times the extrusion's; that of a patch its u direction times its v direction.
 */
export type ExactSurface =
  | { readonly kind: 'plane'; readonly at: Triple; readonly normal: Triple; readonly reference: Triple }
  | {
      readonly kind: 'cylinder';
      readonly at: Triple;
      readonly axis: Triple;
      readonly reference: Triple;
      readonly radius: number;
    }
  | {
      readonly kind: 'cone';
      readonly at: Triple;
      readonly axis: Triple;
      readonly reference: Triple;
      readonly radius: number;
      readonly halfAngle: number;
    }
  | { readonly kind: 'extrusion'; readonly spline: SpaceSpline; readonly direction: Triple }
  | { readonly kind: 'patch'; readonly patch: Patch };

/** A tensor product B-spline surface: control points u by u, all of one u after the other. */
export interface Patch {
  readonly degreeU: 1 | 3;
  readonly degreeV: 1 | 3;
  readonly points: readonly (readonly Triple[])[];
  readonly knotsU: Knots;
  readonly knotsV: Knots;
}

/** `isAlong`: the material's outside lies where the surface's normal looks. Loops run counter-clockwise seen from there. */
export interface ExactFace {
  readonly surface: ExactSurface;
  readonly isAlong: boolean;
  /** The outer loop first */
  readonly loops: readonly (readonly EdgeUse[])[];
}

export interface EdgeUse {
  readonly edge: number;
  readonly isForward: boolean;
}

/** A body under construction. */
export interface BodyBuilder {
  readonly addVertex: (at: Triple) => number;
  readonly addEdge: (from: number, to: number, curve: ExactCurve) => number;
  readonly addFace: (face: ExactFace) => void;
  readonly vertexAt: (vertex: number) => Triple;
  readonly finish: () => ExactBody;
}

export function startBody(): BodyBuilder {
  const vertices: Triple[] = [];
  const edges: ExactEdge[] = [];
  const faces: ExactFace[] = [];
  return {
    addVertex: (at) => vertices.push(at) - 1,
    addEdge: (from, to, curve) => edges.push({ from, to, curve }) - 1,
    addFace: (face) => {
      faces.push(face);
    },
    vertexAt: (vertex) => vertices[vertex],
    finish: () => ({ vertices, edges, faces }),
  };
}

/** The same edges the other way round. */
export function reverseLoop(loop: readonly EdgeUse[]): EdgeUse[] {
  return loop.map(({ edge, isForward }) => ({ edge, isForward: !isForward })).reverse();
}

/** A plane spline's knots: the ends counted as often as the degree asks. */
export function knotsOf({ knots }: CubicSpline): Knots {
  return { values: knots, counts: Array.from(knots, (_, k) => (k === 0 || k === knots.length - 1 ? 4 : 1)) };
}

/** The knots of one straight span. */
export const straightKnots: Knots = { values: [0, 1], counts: [2, 2] };
