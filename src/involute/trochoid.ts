import { bisect } from '../numeric/bisect.ts';
import { findBaseSpaceAngle } from './base-space-angle.ts';
import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { findGeneratingRack } from './generating-rack.ts';

/**
 * The root of a generated wheel, transverse section: the curve that the rack's rounded tip corner cuts beside a space
 * whose axis is +y, and where the involute takes over.
 */
export interface Trochoid {
  /** Writes x, y of the right side of the space for a corner angle θ: 0 at the rack's tip, `end` at its flank. */
  readonly pointAt: (theta: number, out: [number, number]) => void;
  /** θ where the curve hands over to the involute (or to the tip circle, where `meetsTip`) */
  readonly end: number;
  /** Radius there */
  readonly endRadius: number;
  /** Whether the corner has cut away involute */
  readonly isUndercut: boolean;
  /** Whether no involute is left below the tip circle */
  readonly meetsTip: boolean;
}

/**
 * The trochoid of an external wheel.
 *
 * A rack point cuts where its normal passes the pitch point (Litvin & Fuentes, Gear Geometry and Applied Theory, ch.
 * 6): with V its height over the pitch line and n its normal, it stands at U = V n_u/n_v then, and the wheel has
 * turned by (U − u)/r. On a helical wheel the normal section's corner circle is an ellipse in the transverse section:
 * u is stretched by 1/cos β and n_u shrinks as much. Undercut where the corner's end lies below −r sin² α_t under the
 * pitch line: then trochoid and involute cross, and the crossing is found by bisection.
 */
export function findTrochoid(spec: GearSpec): Trochoid {
  const rack = findGeneratingRack(spec);
  const { reference, base, tip, transversePressureAngle } = findDiameters(spec);
  const r = reference / 2;
  const stretch = 1 / Math.cos(spec.helixAngle);
  const lift = spec.profileShift * spec.module;
  const pointAt = (theta: number, out: [number, number]): void => {
    const sine = Math.sin(theta);
    const cosine = Math.cos(theta);
    const u = (rack.cornerU + rack.cornerRadius * sine) * stretch;
    const height = rack.cornerV - rack.cornerRadius * cosine + lift;
    const along = (-height * sine) / (stretch * cosine);
    const turn = (along - u) / r;
    const c = Math.cos(turn);
    const s = Math.sin(turn);
    out[0] = along * c - (r + height) * s;
    out[1] = along * s + (r + height) * c;
  };
  const flank = Math.PI / 2 - spec.pressureAngle;
  const lowest = rack.cornerV - rack.cornerRadius * Math.sin(spec.pressureAngle) + lift;
  const isUndercut = lowest < -r * Math.sin(transversePressureAngle) ** 2;
  const at: [number, number] = [0, 0];
  const squareAt = (theta: number): number => {
    pointAt(theta, at);
    return at[0] * at[0] + at[1] * at[1];
  };
  let end = flank;
  if (isUndercut) {
    const baseSquare = (base * base) / 4;
    const baseSpace = findBaseSpaceAngle(spec);
    end = bisect(
      (theta) => {
        const square = squareAt(theta);
        if (square <= baseSquare) return true;
        const roll = Math.sqrt(square / baseSquare - 1);
        return Math.atan2(at[0], at[1]) > baseSpace + roll - Math.atan(roll);
      },
      0,
      flank,
    ).holding;
  }
  const tipSquare = (tip * tip) / 4;
  const meetsTip = squareAt(end) >= tipSquare;
  if (meetsTip) end = bisect((theta) => squareAt(theta) < tipSquare, 0, end).holding;
  return { pointAt, end, endRadius: meetsTip ? tip / 2 : Math.sqrt(squareAt(end)), isUndercut, meetsTip };
}
