import type { GearSpec } from '../../src/involute/gear-spec.ts';

/**
 * Where a stepped rack cutter's envelope lies, worked out without the product: the cutter is a closed profile of
 * points in the transverse section, rolled over the blank in small steps; a blank point is cut away when it lies
 * inside the cutter at any step. For a ray from the wheel's axis (or a circle about it) the boundary is found by
 * bisection on that test, so nothing here knows an involute or a trochoid.
 */
export interface Envelope {
  /** Whether the point (mm, space axis on +y) survives all cutter positions */
  readonly isLeft: (x: number, y: number) => boolean;
}

export function stepRackCutter(spec: GearSpec): Envelope {
  const { module: m, pressureAngle: a, helixAngle: b } = spec;
  const stretch = 1 / Math.cos(b);
  const half = (Math.PI * m) / 4 + spec.thinning / 2;
  const limit = ((half / m - spec.dedendum * Math.tan(a)) * Math.cos(a)) / (1 - Math.sin(a));
  const radius = Math.min(spec.rootRadius, limit) * m;
  const tip = -spec.dedendum * m;
  const cv = tip + radius;
  const cu = half + cv * Math.tan(a) - radius / Math.cos(a);
  const r = (spec.teeth * m * stretch) / 2;
  const lift = spec.profileShift * m;
  const pitch = Math.PI * m * stretch;
  // Half width of the cutter's tooth (normal section, stretched) at height v over its datum line; −1: below its tip.
  const halfWidth = (v: number): number => {
    if (v < tip) return -1;
    const flankFrom = cv - radius * Math.sin(a);
    if (v >= flankFrom) return (half + v * Math.tan(a)) * stretch;
    const down = cv - v;
    return (cu + Math.sqrt(Math.max(0, radius * radius - down * down))) * stretch;
  };
  const isLeft = (x: number, y: number): boolean => {
    const radiusAt = Math.hypot(x, y);
    const angle = Math.atan2(x, y);
    // Rolled by S the point stands at angle + S/r from the line of centers; the nearest cutter tooth's axis at S.
    const depth = (turn: number): number => {
      const at = angle + turn;
      const v = radiusAt * Math.cos(at) - r - lift;
      const u = radiusAt * Math.sin(at) - turn * r;
      const within = u - pitch * Math.round(u / pitch);
      return halfWidth(v) - Math.abs(within);
    };
    // Deepest reach of the cutter into the point over all roll positions: coarse steps, then golden section.
    const reach = Math.min(1.3, (8 * m) / r);
    const from = -angle - reach;
    const to = -angle + reach;
    const steps = 96;
    let best = -1;
    let at = 0;
    for (let k = 0; k <= steps; k++) {
      const turn = from + ((to - from) * k) / steps;
      const value = depth(turn);
      if (value > best) {
        best = value;
        at = turn;
      }
    }
    if (best > 1e-9) return false;
    let low = at - (to - from) / steps;
    let high = at + (to - from) / steps;
    const ratio = (Math.sqrt(5) - 1) / 2;
    let p = high - ratio * (high - low);
    let q = low + ratio * (high - low);
    let dp = depth(p);
    let dq = depth(q);
    for (let round = 0; round < 34; round++) {
      if (dp > dq) {
        high = q;
        q = p;
        dq = dp;
        p = high - ratio * (high - low);
        dp = depth(p);
      } else {
        low = p;
        p = q;
        dp = dq;
        q = low + ratio * (high - low);
        dq = depth(q);
      }
    }
    return Math.max(dp, dq, best) <= 1e-9;
  };
  return { isLeft };
}
