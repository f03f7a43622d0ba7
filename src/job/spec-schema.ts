import { z } from 'zod/mini';
import { type Known, numberWithin } from './field-schemas.ts';

const length = z.optional(numberWithin('length'));
const side = z.optional(z.enum(['top', 'bottom']));

/**
 * Shape of the hole; `flatMm` runs from the flat to the opposite wall, on a double-D from flat to flat. A spline and a
 * knurl have `count` grooves of `depthMm`, their diameter goes across the deepest points; a spline's are `widthMm` wide.
 */
const boreSchema = z.looseObject({
  shape: z.optional(z.enum(['round', 'd', 'double-d', 'hex', 'square', 'spline', 'knurl', 'none'])),
  diameterMm: length,
  flatMm: length,
  acrossFlatsMm: length,
  count: z.optional(numberWithin('features')),
  depthMm: length,
  widthMm: length,
});

const hubSchema = z.looseObject({ side, diameterMm: length, lengthMm: length });

const flangeSchema = z.looseObject({ side, diameterMm: length, thicknessMm: length });

/** The thinner disk between hub and rim; `fromFaceMm` from the lower face of the teeth, the middle where left out. */
const webSchema = z.looseObject({
  thicknessMm: length,
  hubDiameterMm: length,
  rimDiameterMm: length,
  fromFaceMm: z.optional(numberWithin('lengthOrNone')),
});

/** Lightening holes. */
const holesSchema = z.looseObject({
  count: z.optional(numberWithin('features')),
  diameterMm: length,
  circleDiameterMm: length,
});

/** Teeth over a part of the turn: so many from tooth 0 on; the rest is a cylinder, the root circle where left out. */
const sectorSchema = z.looseObject({
  teeth: z.optional(numberWithin('starts')),
  restDiameterMm: length,
});

const phaseMarkSchema = z.looseObject({ side, diameterMm: length, depthMm: length });

/** For a set screw or pin, across a hub; `fromFaceMm` from the teeth's face to the hole's middle. */
const crossHoleSchema = z.looseObject({
  side,
  diameterMm: length,
  fromFaceMm: length,
  through: z.optional(z.boolean()),
});

/** What a wheel was made to be: known, or accepted from the answer. Every field may be left out. */
export const specSchema = z.looseObject({
  /** Teeth; starts of a worm; how many teeth long a rack is. */
  teeth: z.optional(numberWithin('starts')),
  moduleMm: z.optional(numberWithin('module')),
  moduleIn: z.optional(z.enum(['axial', 'normal'])),
  pressureAngleDeg: z.optional(numberWithin('pressureAngle')),
  helixAngleDeg: z.optional(numberWithin('helixAngle')),
  profileShift: z.optional(numberWithin('profileShift')),
  addendum: z.optional(numberWithin('toothPart')),
  dedendum: z.optional(numberWithin('toothPart')),
  rootRadius: z.optional(numberWithin('rootRadius')),
  thinningMm: z.optional(numberWithin('thinning')),
  tipDiameterMm: z.optional(z.nullable(numberWithin('length'))),
  cutterTeeth: z.optional(numberWithin('teeth')),
  referenceDiameterMm: z.optional(numberWithin('length')),
  diameterMm: z.optional(numberWithin('length')),
  pitchMm: z.optional(numberWithin('length')),
  faceWidthMm: z.optional(numberWithin('length')),
  chamferMm: z.optional(numberWithin('lengthOrNone')),
  /** Outside of an internal wheel's ring. */
  rimDiameterMm: z.optional(numberWithin('length')),
  bore: z.optional(boreSchema),
  hubs: z.optional(z.array(hubSchema).check(z.maxLength(2))),
  flanges: z.optional(z.array(flangeSchema).check(z.maxLength(2))),
  web: z.optional(webSchema),
  holes: z.optional(holesSchema),
  sector: z.optional(sectorSchema),
  crossHole: z.optional(crossHoleSchema),
  phaseMark: z.optional(phaseMarkSchema),
  /** Where tooth 0 points; on a compound gear the angles of its wheels tell how their teeth stand to each other. */
  phaseDeg: z.optional(numberWithin('phase')),
  /** On a compound gear: from the part's lower end to the lower face of these teeth. */
  offsetMm: z.optional(numberWithin('signedLength')),
});

export type SpecFields = Known<z.infer<typeof specSchema>>;
