import { z } from 'zod/mini';
import { type Known, numberWithin } from './field-schemas.ts';

/** Shape of the hole; `flatMm` runs from the flat to the opposite wall, on a double-D from flat to flat. */
const boreSchema = z.looseObject({
  shape: z.optional(z.enum(['round', 'd', 'double-d', 'hex', 'square', 'none'])),
  diameterMm: z.optional(numberWithin('length')),
  flatMm: z.optional(numberWithin('length')),
  acrossFlatsMm: z.optional(numberWithin('length')),
});

const hubSchema = z.looseObject({
  side: z.optional(z.enum(['top', 'bottom'])),
  diameterMm: z.optional(numberWithin('length')),
  lengthMm: z.optional(numberWithin('length')),
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
});

export type SpecFields = Known<z.infer<typeof specSchema>>;
