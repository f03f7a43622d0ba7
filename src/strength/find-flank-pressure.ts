import { findContactRatio } from '../involute/contact-ratio.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { findWorkingPair } from '../involute/working-pair.ts';

/** What a wheel is made of, as far as its elasticity goes. */
export interface Elasticity {
  /** E, MPa */
  readonly modulus: number;
  /** ν */
  readonly poisson: number;
}

/** Greatest pressure between two flanks, MPa, by where the whole load stands. */
export interface FlankPressure {
  readonly atPitchPoint: number;
  /** The greatest of the pitch point and the two ends of single contact */
  readonly greatest: number;
  /** Half the width of the flattened strip at the pitch point, mm */
  readonly halfWidth: number;
}

/**
 * The Hertz pressure of a pair under a tangential force at the working circle.
 *
 * Two cylinders: p = √(w E_r/(π ρ)), 1/E_r = (1 − ν1²)/E1 + (1 − ν2²)/E2, 1/ρ = 1/ρ1 ± 1/ρ2 (internal −), in a strip
 * 2 √(4 w ρ/(π E_r)) wide (Johnson, Contact Mechanics, 4.2; Shigley eq. 14-11 to 14-14 is the same). On the
 * pitch point ρ = r_w sin α_wt; along the line of action one radius grows by what the other loses (internal: both
 * grow). Helical: radii over cos β_b, the load over the face width as it is.
 *
 * It is the pressure of stiff cylinders that touch in a narrow strip: soft teeth spread the load and lie below it.
 *
 * Throws Fail as `findWorkingPair` and `findContactRatio` do.
 *
 * @param force tangential, at the working circle, N
 */
export function findFlankPressure(
  first: GearSpec,
  second: GearSpec,
  elasticities: readonly [Elasticity, Elasticity],
  force: number,
  faceWidth: number,
  centerDistance?: number,
): FlankPressure {
  const pair = findWorkingPair(first, second, centerDistance);
  const path = findContactRatio(first, second, centerDistance === undefined ? {} : { centerDistance });
  const { base, tip, transverseModule, transversePressureAngle, baseHelixAngle } = findDiameters(first);
  const sine = Math.sin(pair.workingPressureAngle);
  const [d1, d2] = pair.workingDiameters;
  const atPitch: [number, number] = [(d1 / 2) * sine, (d2 / 2) * sine];
  const w = force / (faceWidth * Math.cos(pair.workingPressureAngle));
  const [one, two] = elasticities.map(({ modulus, poisson }) => (1 - poisson ** 2) / modulus);
  const E = 1 / (one + two);
  const side = second.kind === 'internal' ? 1 : -1;
  const radiusAt = (along: number): number => {
    const mate = atPitch[1] + side * along;
    return 1 / (1 / (atPitch[0] + along) - side / mate) / Math.cos(baseHelixAngle);
  };
  const pressureAt = (along: number): number => Math.sqrt((w * E) / (Math.PI * radiusAt(along)));
  const basePitch = Math.PI * transverseModule * Math.cos(transversePressureAngle);
  const end = Math.sqrt(Math.max(0, tip ** 2 - base ** 2)) / 2 - atPitch[0];
  const ends = [end - Math.min(basePitch, path.length), end - path.length + Math.min(basePitch, path.length)];
  const all = [0, ...ends].filter((along) => atPitch[0] + along > 0 && atPitch[1] + side * along > 0);
  return {
    atPitchPoint: pressureAt(0),
    greatest: Math.max(...all.map(pressureAt)),
    halfWidth: Math.sqrt((4 * w * radiusAt(0)) / (Math.PI * E)),
  };
}
