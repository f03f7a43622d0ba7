import type { Bore } from './wheel-form.ts';

/**
 * A bore's section, counter-clockwise about the origin, x0, y0, …; a D's flat faces +x, so do a hex's and square's.
 * Arcs are sampled to the chord error. Empty for no bore.
 */
export function traceBore(bore: Bore, chordError: number): Float64Array {
  switch (bore.shape) {
    case 'none':
      return new Float64Array(0);
    case 'round':
      return traceCircle(bore.diameter / 2, chordError);
    case 'd': {
      const radius = bore.diameter / 2;
      const half = Math.acos((bore.flat - radius) / radius);
      return Float64Array.from(arc(radius, half, 2 * Math.PI - half, chordError));
    }
    case 'double-d': {
      const radius = bore.diameter / 2;
      const half = Math.acos(bore.flat / bore.diameter);
      return Float64Array.from([
        ...arc(radius, half, Math.PI - half, chordError),
        ...arc(radius, Math.PI + half, 2 * Math.PI - half, chordError),
      ]);
    }
    case 'hex':
      return tracePolygon(6, bore.acrossFlats / Math.sqrt(3));
    case 'square':
      return tracePolygon(4, bore.acrossFlats / Math.SQRT2);
  }
}

/** A circle about the origin, counter-clockwise. */
export function traceCircle(radius: number, chordError: number): Float64Array {
  const points = arc(radius, 0, 2 * Math.PI, chordError);
  return Float64Array.from(points.slice(0, -2));
}

function tracePolygon(corners: number, radius: number): Float64Array {
  const points = new Float64Array(2 * corners);
  for (let k = 0; k < corners; k++) {
    const angle = ((k + 0.5) * 2 * Math.PI) / corners;
    points[2 * k] = radius * Math.cos(angle);
    points[2 * k + 1] = radius * Math.sin(angle);
  }
  return points;
}

function arc(radius: number, from: number, to: number, chordError: number): number[] {
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
