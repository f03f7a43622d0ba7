import type { SketchSubject } from '../sketch-subject.ts';
import type { Point } from './draw-points.ts';

/** A gear to sketch: one outline about its axis, mm, y up, tooth 0 on +x. */
export interface SketchGear {
  readonly teeth: number;
  /** Counter-clockwise; every tooth's run starts in the middle of the space before it */
  readonly points: readonly Point[];
  readonly perTooth: number;
  readonly tip: number;
  readonly root: number;
  readonly bore: number;
}

/** Where a gear stands in a sketch. */
export interface GearPlace {
  readonly x: number;
  readonly y: number;
  /** Sketch units a mm */
  readonly scale: number;
  /** Counter-clockwise, rad */
  readonly turn: number;
}

/** Teeth of a sketch before the count is known; even, so that the plainest case is shown. */
const unknownTeeth = 18;

/** The subject as a gear to sketch: from its leading outline, or a plain gear of its count where there is none. */
export function makeSketchGear(subject: SketchSubject): SketchGear {
  const teeth = Math.max(5, subject.teeth ?? unknownTeeth);
  const given = readOutline(subject, teeth);
  const points = given ?? tracePlain(subject, teeth);
  const radii = points.map(([x, y]) => Math.hypot(x, y));
  const greatest = Math.max(...radii);
  const least = Math.min(...radii);
  const isInside = subject.kind === 'internal';
  const tip = isInside ? least : greatest;
  const root = isInside ? greatest : least;
  const bore = Math.min(0.72 * root, subject.boreMm === undefined ? 0.3 * tip : subject.boreMm / 2);
  return { teeth, points, perTooth: points.length / teeth, tip, root, bore };
}

/** A run of teeth placed in a sketch, from the space before `first` to the space behind the last. */
export function placeTeeth(gear: SketchGear, place: GearPlace, first = 0, count = gear.teeth): Point[] {
  const placed: Point[] = [];
  const total = gear.points.length;
  const closing = count < gear.teeth ? 1 : 0;
  for (let k = 0; k < count * gear.perTooth + closing; k++) {
    const at = (((first * gear.perTooth + k) % total) + total) % total;
    placed.push(placePoint(gear.points[at], place));
  }
  return placed;
}

export function placePoint([x, y]: Point, { x: atX, y: atY, scale, turn }: GearPlace): Point {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  return [atX + scale * (x * c - y * s), atY - scale * (x * s + y * c)];
}

function readOutline({ outline, kind }: SketchSubject, teeth: number): Point[] | undefined {
  if (!outline || kind === 'rack' || outline.length === 0 || (outline.length / 2) % teeth !== 0)
    return undefined;
  const points: Point[] = [];
  for (let i = 0; i < outline.length; i += 2) points.push([outline[i], outline[i + 1]]);
  return points;
}

/** A plain 20° involute gear; an internal one is the room that such a gear leaves, turned by half a pitch. */
function tracePlain(subject: SketchSubject, teeth: number): Point[] {
  const isInside = subject.kind === 'internal';
  const size = subject.tipDiameterMm ? subject.tipDiameterMm / (teeth + (isInside ? -2 : 2)) : 1;
  const outer = (size * (teeth + (isInside ? 2.4 : 2))) / 2;
  const inner = (size * (teeth - (isInside ? 1.8 : 2.5))) / 2;
  const base = (size * teeth * Math.cos(pressureAngle)) / 2;
  const half: Point[] = [];
  const from = Math.max(inner, Math.min(base, outer));
  for (let i = 0; i <= 6; i++) {
    const radius = from + ((outer - from) * i) / 6;
    const angle = Math.acos(Math.min(1, base / radius));
    half.push([radius, Math.PI / 2 / teeth + rollOf(pressureAngle) - rollOf(angle)]);
  }
  if (inner < from) half.unshift([inner, half[0][1]]);
  const pitch = (2 * Math.PI) / teeth;
  const rising = half.map(([radius, angle]): Point => [radius, -Math.max(0.004, angle)]);
  const falling = half.map(([radius, angle]): Point => [radius, Math.max(0.004, angle)]).reverse();
  const shift = (points: readonly Point[], by: number): Point[] =>
    points.map(([radius, angle]): Point => [radius, angle + by]);
  const run: Point[] = isInside
    ? [...shift(falling, -pitch / 2), [inner, 0], ...shift(rising, pitch / 2)]
    : [[inner, -pitch / 2], ...rising, ...falling];
  return Array.from({ length: teeth }, (_, tooth) =>
    run.map(([radius, angle]): Point => {
      const at = angle + tooth * pitch;
      return [radius * Math.cos(at), radius * Math.sin(at)];
    }),
  ).flat();
}

const pressureAngle = Math.PI / 9;

function rollOf(angle: number): number {
  return Math.tan(angle) - angle;
}
