import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { signedArea } from '../../src/plane/polygon.ts';
import type { Bore, WheelForm } from '../../src/solid/wheel-form.ts';

/**
 * The volume that the form's definition gives, from an outline sampled to the chord error `fine`: section area times height, the
 * chamfers by Simpson's rule on the section between clipped and whole outline (exact: its area is quadratic in the
 * height). A helix turns sections and leaves their area.
 */
export function exactVolume(form: WheelForm, fine: number): number {
  const { spec, faceWidth: b, chamfer: c } = form;
  const { points } = traceOutline(spec, fine);
  const whole = signedArea(points);
  if (spec.kind === 'rack') return whole * b;
  const { tip } = findDiameters(spec);
  const internal = spec.kind === 'internal';
  const limit = internal ? tip / 2 + c : tip / 2 - c;
  const sectionAt = (t: number): number => {
    const section = new Float64Array(points.length);
    for (let k = 0; k < points.length; k += 2) {
      const radius = Math.hypot(points[k], points[k + 1]);
      const clipped = internal ? Math.max(radius, limit) : Math.min(radius, limit);
      const factor = (clipped + (radius - clipped) * t) / radius;
      section[k] = points[k] * factor;
      section[k + 1] = points[k + 1] * factor;
    }
    return signedArea(section);
  };
  const chamfered = c > 0 ? ((sectionAt(0) + 4 * sectionAt(0.5) + whole) * c) / 6 : 0;
  const toothed = whole * (b - 2 * c) + 2 * chamfered;
  if (internal) return (Math.PI * (form.rimDiameter ?? 0) ** 2 * b) / 4 - toothed;
  const hubs = form.hubs.reduce((sum, hub) => sum + (Math.PI * hub.diameter ** 2 * hub.length) / 4, 0);
  const length = b + form.hubs.reduce((sum, hub) => sum + hub.length, 0);
  return toothed + hubs - areaOfBore(form.bore) * length;
}

/** Closed forms of the bores' sections. */
export function areaOfBore(bore: Bore): number {
  switch (bore.shape) {
    case 'none':
      return 0;
    case 'round':
      return (Math.PI * bore.diameter ** 2) / 4;
    case 'hex':
      return (Math.sqrt(3) / 2) * bore.acrossFlats ** 2;
    case 'square':
      return bore.acrossFlats ** 2;
    case 'knurl': {
      // Triangles from the axis between a notch's bottom and a ridge, half a pitch apart.
      const r = bore.diameter / 2;
      return bore.count * r * (r - bore.depth) * Math.sin(Math.PI / bore.count);
    }
    case 'spline': {
      // The minor circle, and of each groove what lies between the two circles within its parallel sides.
      const [r, inner, w] = [bore.diameter / 2, bore.diameter / 2 - bore.depth, bore.width / 2];
      const under = (radius: number): number =>
        w * Math.sqrt(radius * radius - w * w) + radius * radius * Math.asin(w / radius);
      return Math.PI * inner * inner + bore.count * (under(r) - under(inner));
    }
    case 'd':
    case 'double-d': {
      const r = bore.diameter / 2;
      const d = bore.shape === 'd' ? bore.flat - r : bore.flat / 2;
      const segment = r * r * Math.acos(d / r) - d * Math.sqrt(r * r - d * d);
      return Math.PI * r * r - segment * (bore.shape === 'd' ? 1 : 2);
    }
  }
}
