import { Fail } from '../fail.ts';
import type { GearSpec } from './gear-spec.ts';

/**
 * The tooth of the rack that generates a wheel, in the normal section, mm: half of it, from its axis (u = 0) to the
 * flank that cuts the right side of a space. v runs from the datum line, positive away from the wheel's axis.
 */
export interface GeneratingRack {
  /** Half width of the cutting tooth at the datum line: π m/4 and half the wheel's thinning */
  readonly halfWidth: number;
  /** v of the tip: −h_f m */
  readonly tip: number;
  /** Radius of the tip corner as used */
  readonly cornerRadius: number;
  /** Center of the tip corner */
  readonly cornerU: number;
  readonly cornerV: number;
  /** Whether the spec asked for a larger corner than the rack's tip can hold */
  readonly isClipped: boolean;
}

/**
 * The generating rack of a spec. The wheel's thinning is cut by a rack tooth that much wider, so the flanks move in
 * and root and tip stay. A corner larger than the tip can hold, ρ = w (cos α)/(1 − sin α) with w the tip's half
 * width at full depth, is clipped (for no thinning: (π/4 − h_f tan α) cos α/(1 − sin α)).
 *
 * Throws Fail `pointed-rack` where the rack's teeth come to a point before their depth.
 */
export function findGeneratingRack(spec: GearSpec): GeneratingRack {
  const { module: m, pressureAngle: a, dedendum } = spec;
  const halfWidth = (Math.PI * m) / 4 + spec.thinning / 2;
  const tip = -dedendum * m;
  const halfTip = halfWidth + tip * Math.tan(a);
  if (!(halfTip > 0)) {
    const greatest = Math.floor((halfWidth / m / Math.tan(a)) * 1000) / 1000;
    throw new Fail(
      'pointed-rack',
      'dedendum',
      `the rack's teeth come to a point before a dedendum of ${dedendum}`,
      `Use a dedendum below ${greatest}, or a smaller pressure angle.`,
      { dedendum, greatest },
    );
  }
  const greatestRadius = (halfTip * Math.cos(a)) / (1 - Math.sin(a));
  const asked = spec.rootRadius * m;
  const cornerRadius = Math.min(asked, greatestRadius);
  const cornerV = tip + cornerRadius;
  return {
    halfWidth,
    tip,
    cornerRadius,
    cornerU: Math.max(0, halfWidth + cornerV * Math.tan(a) - cornerRadius / Math.cos(a)),
    cornerV,
    isClipped: asked > greatestRadius * (1 + 1e-12),
  };
}
