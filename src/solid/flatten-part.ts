import { findDiameters } from '../involute/gear-diameters.ts';
import { findOutlineArcs } from '../involute/find-outline-arcs.ts';
import type { ArcLoop } from '../plane/fit-arcs.ts';
import { type Bore, checkForm, findMarkCircle, type WheelForm } from './wheel-form.ts';

/** What a curve of a flat drawing is: to be cut (the first three), or for reading alone. */
export type FlatLayer = 'outline' | 'bore' | 'holes' | 'hub' | 'pitch-circle';

/** One curve of a part seen along its axis, mm. */
export type FlatCurve = { readonly layer: FlatLayer } & (
  | { readonly kind: 'loop'; readonly loop: ArcLoop }
  | { readonly kind: 'circle'; readonly x: number; readonly y: number; readonly radius: number }
  | { readonly kind: 'line'; readonly from: readonly [number, number]; readonly to: readonly [number, number] }
);

/**
 * A part as plane curves, seen on its upper face with the axis at (x, 0): the outline of the teeth, bore and holes,
 * hubs, and the reference circle (a rack: its datum line). Circles are circles; flanks and fillets are arcs within
 * `error` (mm) of the exact curves. A helical part shows its section at the lower face, since no flat drawing holds
 * the helix; chamfers are left out.
 *
 * Throws the Fails of `buildSolid`.
 */
export function flattenPart(form: WheelForm, x: number, error: number): FlatCurve[] {
  checkForm(form);
  const { spec, bore, hubs, rimDiameter, marks } = form;
  const curves: FlatCurve[] = [];
  const circle = (layer: FlatLayer, diameter: number, atX = x, atY = 0): void => {
    curves.push({ layer, kind: 'circle', x: atX, y: atY, radius: diameter / 2 });
  };
  curves.push({ layer: 'outline', kind: 'loop', loop: moveLoop(findOutlineArcs(spec, error), x) });
  if (spec.kind === 'rack') {
    const pitch = (Math.PI * spec.module) / Math.cos(spec.helixAngle);
    curves.push({
      layer: 'pitch-circle',
      kind: 'line',
      from: [x - pitch / 2, 0],
      to: [x + (spec.teeth - 0.5) * pitch, 0],
    });
    return curves;
  }
  if (spec.kind === 'internal' && rimDiameter !== undefined) circle('outline', rimDiameter);
  if (bore.shape === 'round') circle('bore', bore.diameter);
  else if (bore.shape !== 'none')
    curves.push({ layer: 'bore', kind: 'loop', loop: moveLoop(findBoreLoop(bore), x) });
  if (marks && marks.count > 0) {
    const radius = findMarkCircle(form);
    const apart = (1.6 * marks.diameter) / radius;
    for (let k = 0; k < marks.count; k++) {
      const angle = Math.PI / 2 + (k - (marks.count - 1) / 2) * apart;
      circle('holes', marks.diameter, x + radius * Math.cos(angle), radius * Math.sin(angle));
    }
  }
  for (const hub of hubs) circle('hub', hub.diameter);
  circle('pitch-circle', findDiameters(spec).reference);
  return curves;
}

/** A bore's section, flats facing +x as in the solid; counter-clockwise. */
function findBoreLoop(bore: Exclude<Bore, { readonly shape: 'none' | 'round' }>): ArcLoop {
  switch (bore.shape) {
    case 'd': {
      const radius = bore.diameter / 2;
      const half = Math.acos((bore.flat - radius) / radius);
      return arcsLoop(radius, [[half, 2 * Math.PI - half]]);
    }
    case 'double-d': {
      const half = Math.acos(bore.flat / bore.diameter);
      return arcsLoop(bore.diameter / 2, [
        [half, Math.PI - half],
        [Math.PI + half, 2 * Math.PI - half],
      ]);
    }
    case 'hex':
      return polygonLoop(6, bore.acrossFlats / Math.sqrt(3));
    case 'square':
      return polygonLoop(4, bore.acrossFlats / Math.SQRT2);
  }
}

/** Arcs about the origin with straight lines between them, each of less than half a turn a piece. */
function arcsLoop(radius: number, arcs: readonly (readonly [number, number])[]): ArcLoop {
  const points: number[] = [];
  const bulges: number[] = [];
  for (const [from, to] of arcs) {
    const pieces = Math.ceil((to - from) / (Math.PI / 2));
    for (let k = 0; k <= pieces; k++) {
      const angle = from + ((to - from) * k) / pieces;
      points.push(radius * Math.cos(angle), radius * Math.sin(angle));
      bulges.push(k < pieces ? Math.tan((to - from) / pieces / 4) : 0);
    }
  }
  return { points: Float64Array.from(points), bulges: Float64Array.from(bulges) };
}

function polygonLoop(corners: number, radius: number): ArcLoop {
  const points = new Float64Array(2 * corners);
  for (let k = 0; k < corners; k++) {
    const angle = ((k + 0.5) * 2 * Math.PI) / corners;
    points[2 * k] = radius * Math.cos(angle);
    points[2 * k + 1] = radius * Math.sin(angle);
  }
  return { points, bulges: new Float64Array(corners) };
}

function moveLoop({ points, bulges }: ArcLoop, x: number): ArcLoop {
  return { points: points.map((value, k) => (k % 2 === 0 ? value + x : value)), bulges };
}
