import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';

/**
 * Everything that makes a toothing a part. Lengths mm. The lower face of its teeth lies at z = 0, the axis is z.
 *
 * A part may carry more than one toothing: `others` stand on the same axis at their own heights, and what lies inside
 * something larger at the same height is swallowed by it.
 */
export interface WheelForm extends ToothedSection {
  /** Runs through the whole part. None on internal wheels and racks. */
  readonly bore: Bore;
  /** Outside diameter of an internal wheel's ring; needed there, else ignored. */
  readonly rimDiameter?: number;
  /** Through holes that tell trial parts apart; single external wheels without hubs alone. */
  readonly marks?: { readonly count: number; readonly diameter: number };
  /** The other toothings of a compound gear; external wheels alone. */
  readonly others?: readonly PlacedSection[];
  readonly crossHole?: CrossHole;
}

/** One toothing and what is cut into it or stands on its faces. All but teeth, width and phase: external alone. */
export interface ToothedSection {
  readonly spec: GearSpec;
  readonly faceWidth: number;
  /**
   * Rims: the outline at each free face is cut back to the tip circle less this on the radius (internal: widened),
   * and runs straight to the whole outline this deep, so 45° at the tip. 0 for none; none on racks.
   */
  readonly chamfer: number;
  readonly hubs: readonly Hub[];
  /** Angle of tooth 0 from +x at this section's lower face, rad; 0 where left out. */
  readonly phase?: number;
  readonly sector?: Sector;
  readonly web?: Web;
  readonly holes?: LighteningHoles;
  readonly flanges?: readonly Flange[];
  readonly phaseMark?: PhaseMark;
}

/** A further toothing of the same part. */
export interface PlacedSection extends ToothedSection {
  /** Height of its lower face over the first section's, either way */
  readonly offset: number;
  /** How the user names it: it starts the field of a Fail. `others[k]` where left out. */
  readonly place?: string;
}

/**
 * `flat`: d, from the flat to the opposite wall; double-d, across the two flats. `diameter` of a spline or knurl goes
 * across its deepest points, `depth` from there inward: a spline's grooves have parallel sides `width` apart, a
 * knurl's are notches.
 */
export type Bore =
  | { readonly shape: 'none' }
  | { readonly shape: 'round'; readonly diameter: number }
  | { readonly shape: 'd'; readonly diameter: number; readonly flat: number }
  | { readonly shape: 'double-d'; readonly diameter: number; readonly flat: number }
  | { readonly shape: 'hex'; readonly acrossFlats: number }
  | { readonly shape: 'square'; readonly acrossFlats: number }
  | {
      readonly shape: 'spline';
      readonly diameter: number;
      readonly count: number;
      readonly depth: number;
      readonly width: number;
    }
  | { readonly shape: 'knurl'; readonly diameter: number; readonly count: number; readonly depth: number };

export type Side = 'top' | 'bottom';

/** A round boss on a face of the teeth, no wider than their roots. */
export interface Hub {
  readonly side: Side;
  readonly diameter: number;
  readonly length: number;
}

/** A disk on a face of the teeth, wider than their tips. */
export interface Flange {
  readonly side: Side;
  readonly diameter: number;
  readonly thickness: number;
}

/** The thinner disk between a hub and the rim under the teeth. */
export interface Web {
  readonly thickness: number;
  readonly hubDiameter: number;
  /** Inside of the rim */
  readonly rimDiameter: number;
  /** From the section's lower face to the web; the middle where left out */
  readonly fromFace?: number;
}

/** Round through holes in the web or disk; the first one in the direction of tooth 0. */
export interface LighteningHoles {
  readonly count: number;
  readonly diameter: number;
  readonly circleDiameter: number;
}

/** Teeth over a part of the turn: `teeth` of them from tooth 0 on, the rest a cylinder. */
export interface Sector {
  readonly teeth: number;
  /** Of the part without teeth; the root circle where left out */
  readonly restDiameter?: number;
}

/** A blind round dimple in a face, in line with tooth 0. */
export interface PhaseMark {
  readonly side: Side;
  readonly diameter: number;
  readonly depth: number;
}

/**
 * A round hole across a hub of the first section into the bore, along +x, where a shaped bore has its flat.
 * `isThrough`: out on the other side as well.
 */
export interface CrossHole {
  readonly side: Side;
  readonly diameter: number;
  /** From the face of the teeth to the hole's axis; the hub's middle where left out */
  readonly fromFace?: number;
  readonly isThrough?: boolean;
}

/** The thinnest wall that is still a wall, mm: half a printed line. */
export const leastWall = 0.2;

/** The part's toothings with their heights, the first one at 0. */
export function listSections(form: WheelForm): readonly PlacedSection[] {
  return [{ ...form, offset: 0, place: '' }, ...(form.others ?? [])];
}

/** Radius of the smallest circle about a bore, mm; 0 for none. */
export function findBoreRadius(bore: Bore): number {
  if (bore.shape === 'none') return 0;
  if (bore.shape === 'hex') return bore.acrossFlats / Math.sqrt(3);
  if (bore.shape === 'square') return bore.acrossFlats / Math.SQRT2;
  return bore.diameter / 2;
}

/** Radius of the largest circle within a bore, mm; 0 for none. */
export function findInnerBoreRadius(bore: Bore): number {
  switch (bore.shape) {
    case 'none':
      return 0;
    case 'round':
      return bore.diameter / 2;
    case 'd':
      return bore.flat - bore.diameter / 2;
    case 'double-d':
      return bore.flat / 2;
    case 'hex':
    case 'square':
      return bore.acrossFlats / 2;
    case 'spline':
    case 'knurl':
      return bore.diameter / 2 - bore.depth;
  }
}

/** Radius of the circle that marks stand on, mm: halfway between bore and root. */
export function findMarkCircle(form: WheelForm): number {
  return (findBoreRadius(form.bore) + findDiameters(form.spec).root / 2) / 2;
}
