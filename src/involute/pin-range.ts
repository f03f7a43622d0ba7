import { bisect } from '../numeric/bisect.ts';
import { findBaseSpaceAngle } from './base-space-angle.ts';
import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { findGeneratingRack } from './generating-rack.ts';
import { findInternalRoot } from './internal-root.ts';
import { inverseInvolute, involute } from './involute-function.ts';
import { findPinAngle } from './pins.ts';
import { findTrochoid } from './trochoid.ts';

/** Diameters of pins or balls that rest on both flanks of a space and stand proud of the tips, mm. */
export interface PinRange {
  readonly least: number;
  /** The pin that touches at diameter d + 2 x m_n, the middle of the flank (of a rack: on the datum line) */
  readonly ideal: number;
  /** Infinity where a pin of any size touches below the tip, as on the fewest teeth */
  readonly greatest: number;
}

/**
 * The pins (spur) or balls (helical) that can be used on a wheel or rack; undefined where none can.
 *
 * With φ the transverse pressure angle at the pin's center, η_b half the space's angle at the base circle and c the
 * cosine of the base helix angle: D = d_b c (± inv φ + η_b), and it touches where tan α_y = tan φ ∓ (D/d_b) c,
 * external above (ISO 21771, dimension over balls: a ball's normal leans by β_b out of the transverse plane). On an
 * internal wheel φ ≥ 0 also says that the pin is not rounder than the flank. A pin also clears the root circle and
 * an external fillet (of a helical wheel in the transverse section); an internal wheel's fillet is not tried.
 *
 * Throws Fail as the wheel's root does.
 *
 * @example m 1, z 20, 20°: 1.6162, 1.7244, 3.5191
 */
export function findPinRange(spec: GearSpec): PinRange | undefined {
  return spec.kind === 'rack' ? findRackRange(spec) : findWheelRange(spec);
}

/**
 * Whether one pin or ball can be used on a wheel: the same question for one diameter (mm), and far less work. Not for
 * racks: a plain Error. Throws Fail as the wheel's root does.
 */
export function isPinUsable(spec: GearSpec, pin: number): boolean {
  const phi = findPinAngle(spec, pin);
  if (phi === undefined || (spec.kind === 'internal' && findBaseSpaceAngle(spec) <= 0)) return false;
  const { tip } = findDiameters(spec);
  const side = spec.kind === 'internal' ? -1 : 1;
  const { contactAt, reaches } = startSeats(spec);
  return side * (tip - contactAt(phi, pin)) >= 0 && reaches(phi, pin);
}

/** Where a pin with its center at φ touches (a diameter), and whether it stands proud and touches nothing else. */
function startSeats(spec: GearSpec): {
  readonly contactAt: (phi: number, pin: number) => number;
  readonly reaches: (phi: number, pin: number) => boolean;
} {
  const { base, tip, baseHelixAngle } = findDiameters(spec);
  const side = spec.kind === 'internal' ? -1 : 1;
  const lean = Math.cos(baseHelixAngle);
  const rests = checkSeat(spec);
  const contactAt = (phi: number, pin: number): number =>
    base * Math.hypot(1, Math.tan(phi) - (side * pin * lean) / base);
  const reaches = (phi: number, pin: number): boolean => {
    const center = base / 2 / Math.cos(phi);
    const isProud = side * (center - tip / 2) + pin / 2 > 0;
    return isProud && rests(center, pin / 2, contactAt(phi, pin));
  };
  return { contactAt, reaches };
}

function findWheelRange(spec: GearSpec): PinRange | undefined {
  const { base, tip, reference, baseHelixAngle } = findDiameters(spec);
  const side = spec.kind === 'internal' ? -1 : 1;
  const lean = Math.cos(baseHelixAngle);
  const baseSpace = findBaseSpaceAngle(spec);
  if (side < 0 && baseSpace <= 0) return undefined;
  const pinAt = (phi: number): number =>
    phi >= rightAngle - 1e-9
      ? Number.POSITIVE_INFINITY
      : Math.max(0, base * lean * (side * involute(phi) + baseSpace));
  const rollOf = (diameter: number): number => Math.sqrt(Math.max(0, (diameter / base) ** 2 - 1));
  // Grows with φ: 0 where the pin touches at that diameter.
  const angleTouching = (diameter: number): number =>
    bisect(
      (phi) => (Math.tan(phi) - rollOf(diameter)) / lean ** 2 - side * baseSpace - involute(phi) < 0,
      0,
      rightAngle,
    ).failing;

  const smallest = inverseInvolute(Math.max(0, -side * baseSpace));
  const largest = angleTouching(tip);
  const seats = startSeats(spec);
  const reaches = (phi: number): boolean => seats.reaches(phi, pinAt(phi));
  // Largest pins touch at the tip; where even they sink below it or foul the root, none will do. A hair smaller,
  // since at the very end rounding decides.
  const greatest = pinAt(largest);
  if (!(side * (largest - smallest) > 0)) return undefined;
  const nearlyLargest = largest === rightAngle ? rightAngle - 1e-6 : largest - (largest - smallest) * 1e-9;
  if (!reaches(nearlyLargest)) return undefined;
  const least = pinAt(bisect((phi) => !reaches(phi), smallest, nearlyLargest).failing);
  const ideal = pinAt(angleTouching(reference + 2 * spec.profileShift * spec.module));
  return { least, ideal: Math.min(greatest, Math.max(least, ideal)), greatest };
}

const rightAngle = Math.PI / 2;

/** Whether a pin (center and radius from the axis, contact diameter) touches the involute first and nothing else. */
function checkSeat(spec: GearSpec): (center: number, radius: number, contact: number) => boolean {
  const { root } = findDiameters(spec);
  if (spec.kind === 'internal') {
    const { flankStart } = findInternalRoot(spec);
    return (center, radius, contact) => contact / 2 <= flankStart && center + radius <= root / 2;
  }
  const { pointAt, end, endRadius, meetsTip } = findTrochoid(spec);
  if (meetsTip) return () => false;
  const fillet = listPoints(pointAt, end);
  return (center, radius, contact) =>
    contact / 2 >= endRadius &&
    center - radius >= root / 2 &&
    fillet.every(([x, y]) => Math.hypot(x, center - y) >= radius * (1 - 1e-9));
}

/** Points along a fillet; between them a pin could enter by less than a thousandth of the module. */
function listPoints(
  pointAt: (theta: number, out: [number, number]) => void,
  end: number,
): (readonly [number, number])[] {
  return Array.from({ length: 25 }, (_, k) => {
    const at: [number, number] = [0, 0];
    pointAt((end * k) / 24, at);
    return at;
  });
}

/**
 * A rack's space is a V: with w its half width at the datum line, a pin's center stands D/(2 sin α) − w/tan α over
 * that line, and it touches (D/2) sin α lower.
 */
function findRackRange(spec: GearSpec): PinRange | undefined {
  const { module: m, pressureAngle: a } = spec;
  const space = findGeneratingRack(spec);
  const tip = spec.addendum * m;
  const touching = (height: number): number =>
    (2 * (height * Math.sin(a) + space.halfWidth * Math.cos(a))) / Math.cos(a) ** 2;
  const corner = listPoints((theta, out) => {
    out[0] = space.cornerU + space.cornerRadius * Math.sin(theta);
    out[1] = space.cornerV - space.cornerRadius * Math.cos(theta);
  }, rightAngle - a);
  const flankStart = space.cornerV - space.cornerRadius * Math.sin(a);
  const reaches = (pin: number): boolean => {
    const center = pin / 2 / Math.sin(a) - space.halfWidth / Math.tan(a);
    return (
      center + pin / 2 > tip &&
      pin >= touching(flankStart) &&
      center - pin / 2 >= space.tip &&
      corner.every(([u, v]) => Math.hypot(u, center - v) >= (pin / 2) * (1 - 1e-9))
    );
  };
  const greatest = touching(tip);
  if (!reaches(greatest)) return undefined;
  const least = bisect((pin) => !reaches(pin), 0, greatest).failing;
  return { least, ideal: Math.min(greatest, Math.max(least, touching(0))), greatest };
}
