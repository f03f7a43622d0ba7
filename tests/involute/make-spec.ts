import type { GearSpec } from '../../src/involute/gear-spec.ts';

/** Degrees as radians. */
export const rad = (degrees: number): number => (degrees * Math.PI) / 180;
export const deg = (radians: number): number => (radians * 180) / Math.PI;

/** A spec from what differs from a full-depth 20° spur wheel of module 1. */
export function makeSpec(given: Partial<GearSpec> & { readonly teeth: number }): GearSpec {
  return {
    kind: 'external',
    module: 1,
    pressureAngle: rad(20),
    helixAngle: 0,
    profileShift: 0,
    addendum: 1,
    dedendum: 1.25,
    rootRadius: 0.38,
    thinning: 0,
    tipDiameter: null,
    ...given,
  };
}
