import type { Bore } from './wheel-form.ts';

/**
 * A bore's section, counter-clockwise about the origin, x0, y0, …; a D's flat faces +x, so do a hex's and square's,
 * a spline's first groove and a knurl's first notch. Arcs are sampled to the chord error. Empty for no bore.
 */
export function traceBore(bore: Bore, chordError: number): Float64Array {
  switch (bore.shape) {
    case 'none':
      return new Float64Array(0);
    case 'round':
      return traceCircle(bore.diameter / 2, chordError);
    case 'd':
    case 'double-d': {
      const points: number[] = [];
      for (const [from, to] of listFlattenedArcs(bore))
        points.push(...sampleArc(bore.diameter / 2, from, to, chordError));
      return Float64Array.from(points);
    }
    case 'hex':
      return tracePolygon(6, bore.acrossFlats / Math.sqrt(3));
    case 'square':
      return tracePolygon(4, bore.acrossFlats / Math.SQRT2);
    case 'spline':
      return traceSpline(bore, chordError);
    case 'knurl':
      return traceKnurl(bore);
  }
}

/** The arcs of a D or double D between its flats, as angles; the first flat closes the last arc to the first. */
export function listFlattenedArcs(
  bore: Extract<Bore, { readonly shape: 'd' | 'double-d' }>,
): readonly (readonly [number, number])[] {
  const radius = bore.diameter / 2;
  if (bore.shape === 'd') {
    const half = Math.acos((bore.flat - radius) / radius);
    return [[half, 2 * Math.PI - half]];
  }
  const half = Math.acos(bore.flat / bore.diameter);
  return [
    [half, Math.PI - half],
    [Math.PI + half, 2 * Math.PI - half],
  ];
}

/** A circle about the origin, counter-clockwise. */
export function traceCircle(radius: number, chordError: number): Float64Array {
  const points = sampleArc(radius, 0, 2 * Math.PI, chordError);
  return Float64Array.from(points.slice(0, -2));
}

/** Points of an arc about the origin, both ends included. */
export function sampleArc(radius: number, from: number, to: number, chordError: number): number[] {
  const step = 2 * Math.acos(Math.max(0, 1 - chordError / radius));
  // Never fewer than an octagon's corners on a whole turn: a hole is a hole at any chord error.
  const count = Math.max(Math.ceil((to - from) / step), Math.ceil((8 * (to - from)) / (2 * Math.PI)));
  const points: number[] = [];
  for (let k = 0; k <= count; k++) {
    const angle = from + ((to - from) * k) / count;
    points.push(radius * Math.cos(angle), radius * Math.sin(angle));
  }
  return points;
}

/** A regular polygon with a flat on +x, its first corner at half a side. */
export function tracePolygon(corners: number, radius: number): Float64Array {
  const points = new Float64Array(2 * corners);
  for (let k = 0; k < corners; k++) {
    const angle = ((k + 0.5) * 2 * Math.PI) / corners;
    points[2 * k] = radius * Math.cos(angle);
    points[2 * k + 1] = radius * Math.sin(angle);
  }
  return points;
}

/** Half the angle of a spline's groove at its floor and at its mouth: its sides are parallel. */
export function findGrooveAngles(bore: Extract<Bore, { readonly shape: 'spline' }>): {
  readonly floor: number;
  readonly mouth: number;
} {
  const outer = bore.diameter / 2;
  return {
    floor: Math.asin(bore.width / 2 / outer),
    mouth: Math.asin(bore.width / 2 / (outer - bore.depth)),
  };
}

function traceSpline(bore: Extract<Bore, { readonly shape: 'spline' }>, chordError: number): Float64Array {
  const { count, diameter, depth } = bore;
  const { floor, mouth } = findGrooveAngles(bore);
  const pitch = (2 * Math.PI) / count;
  const points: number[] = [];
  for (let k = 0; k < count; k++) {
    points.push(...sampleArc(diameter / 2, k * pitch - floor, k * pitch + floor, chordError));
    points.push(...sampleArc(diameter / 2 - depth, k * pitch + mouth, (k + 1) * pitch - mouth, chordError));
  }
  return Float64Array.from(points);
}

/** Notch by notch: its bottom, then the ridge beside it. */
export function traceKnurl(bore: Extract<Bore, { readonly shape: 'knurl' }>): Float64Array {
  const { count, diameter, depth } = bore;
  const points = new Float64Array(4 * count);
  for (let k = 0; k < 2 * count; k++) {
    const radius = diameter / 2 - (k % 2 === 0 ? 0 : depth);
    points[2 * k] = radius * Math.cos((k * Math.PI) / count);
    points[2 * k + 1] = radius * Math.sin((k * Math.PI) / count);
  }
  return points;
}
