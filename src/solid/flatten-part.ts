import { findDiameters } from '../involute/gear-diameters.ts';
import { traceOutline } from '../involute/trace-outline.ts';
import { type ArcLoop, fitArcs } from '../plane/fit-arcs.ts';
import { checkForm } from './check-form.ts';
import { findArcLoop } from './find-arc-loop.ts';
import type { Loop } from './lay-layers.ts';
import { type StackWall, stackPart } from './part-stack.ts';
import { listSections, type WheelForm } from './wheel-form.ts';

/** What a curve of a flat drawing is: to be cut (the first three), or for reading alone. */
export type FlatLayer = 'outline' | 'bore' | 'holes' | 'other-outlines' | 'edges' | 'pitch-circle';

/** One curve of a part seen along its axis, mm. `isHidden`: something wider stands over it. */
export type FlatCurve = { readonly layer: FlatLayer; readonly isHidden?: boolean } & (
  | { readonly kind: 'loop'; readonly loop: ArcLoop }
  | { readonly kind: 'circle'; readonly x: number; readonly y: number; readonly radius: number }
  | {
      readonly kind: 'line';
      readonly from: readonly [number, number];
      readonly to: readonly [number, number];
    }
);

/**
 * A part as plane curves, seen on its upper face with the axis at (x, 0): the outline of its widest teeth, bore,
 * through holes; the outlines of a compound gear's other teeth, the edges of hubs, flanges and webs, and the
 * reference circles (a rack: its datum line). Circles are circles; flanks and fillets are arcs within `error` (mm) of
 * the exact curves. A helical part shows its section at its lower face, since no flat drawing holds the helix;
 * chamfers and holes across the axis are left out.
 *
 * Throws the Fails of `buildSolid`.
 */
export function flattenPart(form: WheelForm, x: number, error: number): FlatCurve[] {
  checkForm(form);
  if (form.spec.kind === 'rack') return flattenRack(form, x, error);
  const { walls } = stackPart(form);
  const low = walls.reduce((least, wall) => Math.min(least, wall.low), Number.POSITIVE_INFINITY);
  const high = walls.reduce((most, wall) => Math.max(most, wall.high), Number.NEGATIVE_INFINITY);
  const toothed = walls.filter((wall) => wall.loop.kind === 'teeth');
  const widest = toothed.reduce((best, wall) => (wall.loop.most > best.loop.most ? wall : best));
  const curves: FlatCurve[] = [];
  const drawn = new Set<string>();
  for (const wall of walls) {
    if (drawn.has(wall.loop.key)) continue;
    drawn.add(wall.loop.key);
    const isThrough =
      walls
        .filter(({ loop }) => loop.key === wall.loop.key)
        .reduce((height, one) => height + one.high - one.low, 0) >=
      high - low - nearly;
    const layer = layerOf(wall, wall.loop.key === widest.loop.key, isThrough, form);
    const curve = drawWall(wall, layer, x, error);
    curves.push(isCovered(wall.loop, walls) ? { ...curve, isHidden: true } : curve);
  }
  for (const { spec } of listSections(form)) {
    curves.push({
      layer: 'pitch-circle',
      kind: 'circle',
      x,
      y: 0,
      radius: findDiameters(spec).reference / 2,
    });
  }
  return curves;
}

/** Heights nearer than this are one, mm, as in the stack. */
const nearly = 1e-5;

/** Whether all of a curve lies under something wider, seen from above. */
function isCovered({ key, most }: Loop, walls: readonly StackWall[]): boolean {
  const top = walls.reduce(
    (high, wall) => (wall.loop.key === key ? Math.max(high, wall.high) : high),
    Number.NEGATIVE_INFINITY,
  );
  return walls.some(
    ({ loop, low, isHole }) =>
      !isHole &&
      low >= top - nearly &&
      loop.least >= most &&
      (loop.kind !== 'circle' || (loop.x === 0 && loop.y === 0)),
  );
}

function layerOf(
  { loop, isHole }: StackWall,
  isWidest: boolean,
  isThrough: boolean,
  form: WheelForm,
): FlatLayer {
  if (loop.kind === 'teeth') return isWidest ? 'outline' : 'other-outlines';
  if (loop.kind === 'bore') return 'bore';
  if (form.spec.kind === 'internal') return 'outline';
  return isHole && isThrough ? 'holes' : 'edges';
}

function drawWall(wall: StackWall, layer: FlatLayer, x: number, error: number): FlatCurve {
  const { loop } = wall;
  if (loop.kind === 'circle') return { layer, kind: 'circle', x: x + loop.x, y: loop.y, radius: loop.radius };
  if (loop.kind === 'bore' && loop.bore.shape === 'round')
    return { layer, kind: 'circle', x, y: 0, radius: loop.bore.diameter / 2 };
  const { points, bulges } = findArcLoop(wall, error);
  return { layer, kind: 'loop', loop: { points: points.map((v, k) => (k % 2 === 0 ? v + x : v)), bulges } };
}

function flattenRack({ spec }: WheelForm, x: number, error: number): FlatCurve[] {
  const outline = traceOutline(spec, 0.05 * error).points;
  const { points, bulges } = fitArcs([...outline, outline[0], outline[1]], 0.85 * error);
  const loop = {
    points: Float64Array.from(points.slice(0, -2), (value, k) => (k % 2 === 0 ? value + x : value)),
    bulges: Float64Array.from(bulges),
  };
  const pitch = (Math.PI * spec.module) / Math.cos(spec.helixAngle);
  return [
    { layer: 'outline', kind: 'loop', loop },
    {
      layer: 'pitch-circle',
      kind: 'line',
      from: [x - pitch / 2, 0],
      to: [x + (spec.teeth - 0.5) * pitch, 0],
    },
  ];
}
