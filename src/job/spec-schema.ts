import { z } from 'zod';
import { type Known, numberWithin } from './field-schemas.ts';

/** Shape of the hole; `flatMm` runs from the flat to the opposite wall, on a double-D from flat to flat. */
const boreSchema = z.looseObject({
  shape: z.enum(['round', 'd', 'double-d', 'hex', 'square', 'none']).optional(),
  diameterMm: numberWithin('length').optional(),
  flatMm: numberWithin('length').optional(),
  acrossFlatsMm: numberWithin('length').optional(),
});

const hubSchema = z.looseObject({
  side: z.enum(['top', 'bottom']).optional(),
  diameterMm: numberWithin('length').optional(),
  lengthMm: numberWithin('length').optional(),
});

/** What a wheel was made to be: known, or accepted from the answer. Every field may be left out. */
export const specSchema = z.looseObject({
  /** Teeth; starts of a worm; how many teeth long a rack is. */
  teeth: numberWithin('starts').optional(),
  moduleMm: numberWithin('module').optional(),
  moduleIn: z.enum(['axial', 'normal']).optional(),
  pressureAngleDeg: numberWithin('pressureAngle').optional(),
  helixAngleDeg: numberWithin('helixAngle').optional(),
  profileShift: numberWithin('profileShift').optional(),
  addendum: numberWithin('toothPart').optional(),
  dedendum: numberWithin('toothPart').optional(),
  rootRadius: numberWithin('rootRadius').optional(),
  thinningMm: numberWithin('thinning').optional(),
  tipDiameterMm: numberWithin('length').nullable().optional(),
  cutterTeeth: numberWithin('teeth').optional(),
  referenceDiameterMm: numberWithin('length').optional(),
  diameterMm: numberWithin('length').optional(),
  pitchMm: numberWithin('length').optional(),
  faceWidthMm: numberWithin('length').optional(),
  chamferMm: numberWithin('lengthOrNone').optional(),
  /** Outside of an internal wheel's ring. */
  rimDiameterMm: numberWithin('length').optional(),
  bore: boreSchema.optional(),
  hubs: z.array(hubSchema).max(2).optional(),
});

export type SpecFields = Known<z.infer<typeof specSchema>>;
