import type { DrawnGear, Wheel } from '../../index.ts';
import type { Slot } from '../state/slot.ts';
import { placePin } from './place-pin.ts';
import { findSection } from './section-profile.ts';
import { traceRack } from './trace-path.ts';

/** Where a caliper's jaws stand for one reading on one gear. Lengths mm, angles rad, y up. */
export interface JawPlace {
  readonly view: 'front' | 'section';
  readonly shape: 'flat' | 'span' | 'blade' | 'pins' | 'inside' | 'inside-blade' | 'inside-pins' | 'rod';
  /** Direction in which the caliper measures, from +x counter-clockwise; all else is in axes turned by it */
  readonly angle: number;
  /** Middle between the faces, along that direction and across it */
  readonly middle: number;
  readonly across: number;
  readonly opening: number;
  /**
   * How far the jaws reach into the gap; for `span` the lowest point of their tips across the direction; for `flat`
   * how far past the contact they may go, 0 where nothing is in their way
   */
  readonly reach: number;
  readonly pin?: { readonly radius: number; readonly along: number; readonly across: number } | undefined;
}

type Kind = 'external' | 'internal' | 'rack';

/** Where the jaws stand, undefined for what a caliper doesn't read on this gear or what is not drawn. */
export function placeJaws(gear: DrawnGear, slot: Slot, kind: Kind, wheel: Wheel): JawPlace | undefined {
  const onSection = placeOnSection(gear, slot, wheel, kind);
  if (onSection) return onSection;
  if (kind === 'rack') return placeOnRack(gear, slot);
  const isInternal = kind === 'internal';
  const z = gear.teeth;
  const tip = gear.tipDiameterMm / 2;
  const root = gear.rootDiameterMm / 2;
  // On odd counts a tooth stands opposite a gap: the jaws touch the two that are most nearly opposite.
  const off = z % 2 === 0 ? 0 : Math.PI / (2 * z);
  switch (slot.of) {
    case 'outside': {
      const angle = -off;
      return {
        view: 'front',
        shape: isInternal ? 'inside' : 'flat',
        angle,
        middle: 0,
        across: isInternal ? tip * Math.sin(off) : 0,
        opening: isInternal ? 2 * tip * Math.cos(off) : spreadAlong(gear, angle),
        reach: 0,
      };
    }
    case 'root':
      return {
        view: 'front',
        shape: isInternal ? 'inside-blade' : 'blade',
        angle: gapAngle(z, off),
        middle: 0,
        across: root * Math.sin(off),
        opening: 2 * root * Math.cos(off),
        reach: Math.abs(tip - root),
      };
    case 'over-pins': {
      if (slot.pinMm === undefined) return undefined;
      const center = placePin(gear, slot.pinMm / 2, isInternal);
      if (center === undefined) return undefined;
      const along = center * Math.cos(off);
      return {
        view: 'front',
        shape: isInternal ? 'inside-pins' : 'pins',
        angle: gapAngle(z, off),
        middle: 0,
        across: center * Math.sin(off),
        opening: 2 * along + (isInternal ? -slot.pinMm : slot.pinMm),
        reach: 0,
        pin: { radius: slot.pinMm / 2, along, across: center * Math.sin(off) },
      };
    }
    case 'span':
      return isInternal || slot.teeth === undefined ? undefined : placeSpan(gear, slot.teeth);
    case 'tooth-depth': {
      const gap = nearestTo(Math.PI / 2, z, Math.PI / z);
      return {
        view: 'front',
        shape: 'rod',
        angle: gap,
        middle: (tip + root) / 2,
        across: 0,
        opening: Math.abs(tip - root),
        reach: 0,
      };
    }
    case 'bore':
    case 'shaft': {
      const diameter = findSection(wheel, gear, kind).boreDiameter;
      if (isInternal || diameter === undefined) return undefined;
      const shape = slot.of === 'bore' ? 'inside' : 'flat';
      return { view: 'front', shape, angle: 0, middle: 0, across: 0, opening: diameter, reach: 0 };
    }
    default:
      return undefined;
  }
}

/** A gap's direction, or for odd counts the direction from one gap to the one most nearly opposite. */
function gapAngle(teeth: number, off: number): number {
  return off === 0 ? Math.PI / teeth : off;
}

/** The angle `offset + n · 2π/z` nearest to `angle`. */
function nearestTo(angle: number, teeth: number, offset: number): number {
  const pitch = (2 * Math.PI) / teeth;
  return offset + Math.round((angle - offset) / pitch) * pitch;
}

function spreadAlong(gear: DrawnGear, angle: number): number {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  let least = Infinity;
  let most = -Infinity;
  const { outline } = gear;
  for (let k = 0; k < outline.length; k += 2) {
    const along = outline[k] * c + outline[k + 1] * s;
    if (along < least) least = along;
    if (along > most) most = along;
  }
  return most - least;
}

/**
 * Flat jaws over k teeth about the top of the gear: parallel faces touch convex flanks where these reach farthest
 * across the group, which is the base tangent.
 */
function placeSpan(gear: DrawnGear, k: number): JawPlace | undefined {
  const { outline, perTooth, teeth } = gear;
  if (!(k >= 1) || k > teeth / 2) return undefined;
  const middle = nearestTo(Math.PI / 2, teeth, k % 2 === 1 ? 0 : Math.PI / teeth);
  const angle = middle - Math.PI / 2;
  const firstTooth = Math.round((middle * teeth) / (2 * Math.PI) - (k - 1) / 2);
  const half = Math.floor(perTooth / 2);
  const total = outline.length / 2;
  let most = -Infinity;
  let across = 0;
  // From the middle of the last tooth down its outer flank. A convex flank reaches out less and less on the way down,
  // to nothing where the jaw touches; where that turns round, the rounding of the bottom begins, and no jaw gets there.
  let radius = gear.tipDiameterMm / 2;
  let slope = Infinity;
  for (let step = 0; step <= half; step++) {
    const at = 2 * (((firstTooth + k - 1) * perTooth + half + step + total) % total);
    const out = -outline[at] * Math.cos(angle) - outline[at + 1] * Math.sin(angle);
    const nextRadius = Math.hypot(outline[at], outline[at + 1]);
    const fall = radius - nextRadius;
    const nextSlope = fall > 1e-4 * gear.moduleMm ? (out - most) / fall : Infinity;
    if (out < most || nextSlope > slope + 0.02) break;
    slope = nextSlope;
    radius = nextRadius;
    most = out;
    across = -outline[at] * Math.sin(angle) + outline[at + 1] * Math.cos(angle);
  }
  if (!(most > 0)) return undefined;
  const root = gear.rootDiameterMm / 2;
  const floor = Math.sqrt(Math.max(0, root * root - most * most)) + 0.15 * gear.moduleMm;
  return {
    view: 'front',
    shape: 'span',
    angle,
    middle: 0,
    across,
    opening: 2 * most,
    reach: Math.max(floor, across - 0.6 * gear.moduleMm),
  };
}

function placeOnSection(gear: DrawnGear, slot: Slot, wheel: Wheel, kind: Kind): JawPlace | undefined {
  const section = findSection(wheel, gear, kind);
  const lies = { view: 'section', shape: 'flat', reach: 0 } as const;
  switch (slot.of) {
    case 'face-width':
      return {
        ...lies,
        angle: 0,
        middle: section.faceWidth / 2,
        across: -section.radius * 0.8,
        opening: section.faceWidth,
      };
    case 'overall-length':
      return {
        ...lies,
        angle: 0,
        middle: section.length / 2,
        across: -Math.min(section.hubRadius ?? section.radius, section.radius) * 0.8,
        opening: section.length,
      };
    case 'hub-diameter':
      return section.hubRadius === undefined
        ? undefined
        : {
            ...lies,
            angle: Math.PI / 2,
            middle: 0,
            across: -(section.faceWidth + section.length) / 2,
            opening: 2 * section.hubRadius,
            reach: (section.length - section.faceWidth) / 2,
          };
    default:
      return undefined;
  }
}

function placeOnRack(gear: DrawnGear, slot: Slot): JawPlace | undefined {
  const piece = traceRack(gear);
  if (slot.of === 'tooth-depth') {
    return {
      view: 'front',
      shape: 'rod',
      angle: Math.PI / 2,
      middle: (piece.tip + piece.root) / 2,
      across: piece.teeth % 2 === 0 ? 0 : piece.pitch / 2,
      opening: piece.tip - piece.root,
      reach: 0,
    };
  }
  if (slot.of !== 'rack-pitch') return undefined;
  // From a flank to the same flank so many teeth on; the piece drawn shows as many as it has.
  const pitches = Math.min(slot.pitches ?? 1, piece.teeth - 1);
  return {
    view: 'front',
    shape: 'span',
    angle: 0,
    middle: 0,
    across: 0,
    opening: pitches * piece.pitch,
    reach: piece.root + 0.3 * gear.moduleMm,
  };
}
