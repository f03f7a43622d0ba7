import { drawPoints, type Point } from '../acts/sketch/draw-points.ts';

/** A point in space: x right, y away, z up; the viewer stands in front and looks down on it. */
export type Spot = readonly [number, number, number];

/** One flat face, with the lines that are drawn on it. */
export interface Face {
  readonly loops: readonly (readonly Spot[])[];
  readonly lines: readonly (readonly Spot[])[];
}

/** One body: its walls, drawn far to near, then its upper faces. Bodies are drawn in the order given. */
export interface Body {
  readonly walls: readonly Face[];
  readonly tops: readonly Face[];
}

/** A face ready to paint: filled with the film, so that it hides what lies behind, and its lines over it. */
export interface PaintedFace {
  readonly fill: string;
  readonly line: string;
}

/** 33° down: the upper face is still the larger part of what is seen. */
const down = (33 * Math.PI) / 180;
/** Corners that turn by more than this get a line. */
const sharp = (24 * Math.PI) / 180;

/** The walls between two outlines of as many points, counter-clockwise from above (clockwise for a hole). */
export function raiseWalls(lower: readonly Spot[], upper: readonly Spot[]): Face[] {
  const n = lower.length;
  const quads = lower.map((spot, i): Spot[] => {
    const next = (i + 1) % n;
    return [spot, lower[next], upper[next], upper[i]];
  });
  const seen = quads.map((quad) => isSeen(quad));
  return quads.flatMap((quad, i): Face[] => {
    if (!seen[i]) return [];
    const before = (i + n - 1) % n;
    const after = (i + 1) % n;
    const lines: Spot[][] = [[quad[0], quad[1]]];
    if (!seen[before] || turnAt(lower, i) > sharp) lines.push([quad[0], quad[3]]);
    if (!seen[after] || turnAt(lower, after) > sharp) lines.push([quad[1], quad[2]]);
    return [{ loops: [quad], lines }];
  });
}

/** A flat upper face with its outlines drawn. */
export function topFace(...loops: readonly (readonly Spot[])[]): Face {
  return { loops, lines: loops.map((loop) => [...loop, loop[0]]) };
}

/** The bodies painted into a square of that size, fitted with a margin of 4. */
export function paintBodies(bodies: readonly Body[], size: number): PaintedFace[] {
  const faces = bodies.flatMap(({ walls, tops }) => [
    ...[...walls].sort((a, b) => depthOf(a) - depthOf(b)),
    ...[...tops].sort((a, b) => depthOf(a) - depthOf(b)),
  ]);
  const all = faces.flatMap((face) => face.loops.flat()).map((spot) => project(spot));
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = (size - 8) / Math.max(right - left, bottom - top);
  const put = (spot: Spot): Point => {
    const [x, y] = project(spot);
    return [size / 2 + scale * (x - (left + right) / 2), size / 2 + scale * (y - (top + bottom) / 2)];
  };
  return faces.map(({ loops, lines }) => ({
    fill: loops.map((loop) => drawPoints(loop.map(put), true)).join(''),
    line: lines.map((line) => drawPoints(line.map(put))).join(''),
  }));
}

function project([x, y, z]: Spot): Point {
  return [x, -(z * Math.cos(down) + y * Math.sin(down))];
}

function depthOf({ loops }: Face): number {
  const loop = loops[0];
  return loop.reduce((sum, [, y, z]) => sum + z * Math.sin(down) - y * Math.cos(down), 0) / loop.length;
}

function isSeen(quad: readonly Spot[]): boolean {
  let area = 0;
  quad.forEach((spot, i) => {
    const [ax, ay] = project(spot);
    const [bx, by] = project(quad[(i + 1) % quad.length]);
    area += ax * by - bx * ay;
  });
  // y points down on the screen: a face turned to the viewer runs the other way round.
  return area < -1e-9;
}

function turnAt(outline: readonly Spot[], i: number): number {
  const n = outline.length;
  const [a, b, c] = [outline[(i + n - 1) % n], outline[i], outline[(i + 1) % n]];
  const turn = Math.atan2(c[1] - b[1], c[0] - b[0]) - Math.atan2(b[1] - a[1], b[0] - a[0]);
  return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn)));
}
