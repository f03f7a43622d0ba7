import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { inverseInvolute, involute } from './involute-function.ts';
import { findTrochoid } from './trochoid.ts';

/**
 * Measurement over two pins (spur) or balls (helical) of diameter D, mm; between them on an internal wheel; for a
 * rack, from the datum line to the pin's far side.
 *
 * Pin center at d_b/(2 cos φ) with inv φ = inv α_t + D/(z m_n cos α_n) − η, η half the space's angle at the reference
 * circle; internal with D and η reversed. Even counts M = d_b/cos φ ± D, odd ones with cos(90°/z) (ISO 21771,
 * dimension over balls). Undefined where no pin of that size rests between the flanks.
 *
 * @example m 1, z 20, D 1.7: 22.2941
 */
export function measureOverPins(spec: GearSpec, pinDiameter: number): number | undefined {
  const { module: m, pressureAngle: a, teeth: z } = spec;
  if (spec.kind === 'rack') {
    const halfSpace = (Math.PI * m) / 4 + spec.thinning / 2;
    return pinDiameter / (2 * Math.sin(a)) - halfSpace / Math.tan(a) + pinDiameter / 2;
  }
  const phi = findPinAngle(spec, pinDiameter);
  if (phi === undefined) return undefined;
  const { base } = findDiameters(spec);
  const side = spec.kind === 'internal' ? -1 : 1;
  const factor = z % 2 === 0 ? 1 : Math.cos(Math.PI / (2 * z));
  return (factor * base) / Math.cos(phi) + side * pinDiameter;
}

/** φ, rad: the transverse pressure angle at the pin's center. */
export function findPinAngle(spec: GearSpec, pinDiameter: number): number | undefined {
  const { module: m, pressureAngle: a, teeth: z, profileShift: x } = spec;
  const { transversePressureAngle } = findDiameters(spec);
  const side = spec.kind === 'internal' ? -1 : 1;
  const halfSpace = (Math.PI / 2 - side * 2 * x * Math.tan(a) + spec.thinning / m) / z;
  const inv = involute(transversePressureAngle) + side * (pinDiameter / (z * m * Math.cos(a)) - halfSpace);
  return inv > 0 ? inverseInvolute(inv) : undefined;
}

/** Diameters of pins that rest on the involute flanks and stand proud of the tips, mm. */
export interface PinRange {
  readonly least: number;
  /** The pin that touches at diameter d + 2 x m_n, the middle of the flank */
  readonly ideal: number;
  readonly greatest: number;
}

/**
 * The pins that can be used on an external or internal spur or helical wheel; undefined where none can. The contact
 * of a pin lies at tan α_y = tan φ ∓ D/(d_b cos β_b); bounds found by bisection on the pin's size.
 */
export function findPinRange(spec: GearSpec): PinRange | undefined {
  if (spec.kind === 'rack') return undefined;
  const { base, tip, root, reference, baseHelixAngle } = findDiameters(spec);
  const internal = spec.kind === 'internal';
  const side = internal ? -1 : 1;
  const contactOf = (pin: number): number => {
    const phi = findPinAngle(spec, pin);
    if (phi === undefined) return 0;
    const roll = Math.tan(phi) - (side * pin) / (base * Math.cos(baseHelixAngle));
    return roll <= 0 ? 0 : base * Math.sqrt(1 + roll * roll);
  };
  const proudOf = (pin: number): number => {
    const phi = findPinAngle(spec, pin);
    return phi === undefined ? -1 : side * (base / Math.cos(phi) - tip) + pin;
  };
  const deepest = internal ? root : 2 * findTrochoid(spec).endRadius;
  const middle = reference + 2 * spec.profileShift * spec.module;
  const m = spec.module;
  // A thicker pin touches nearer the tips; its far side rises past them.
  const solve = (holds: (pin: number) => boolean): number => {
    let low = 0.01 * m;
    let high = 6 * m;
    for (let round = 0; round < 60; round++) {
      const pin = (low + high) / 2;
      if (holds(pin)) high = pin;
      else low = pin;
    }
    return high;
  };
  const reaches = (diameter: number) => (pin: number) =>
    side * (contactOf(pin) - diameter) >= 0 && contactOf(pin) > 0;
  const least = Math.max(
    solve((pin) => proudOf(pin) > 0),
    solve(reaches(deepest)),
  );
  const greatest = solve(reaches(tip));
  if (!(least < greatest)) return undefined;
  return { least, ideal: Math.min(greatest, Math.max(least, solve(reaches(middle)))), greatest };
}
