import { z } from 'zod';
import { identifier, numberWithin, takings } from './field-schemas.ts';
import { counts } from './limits.ts';
import { specSchema } from './spec-schema.ts';

const taken = z.enum(['open', 'closed']).optional();
const uMm = numberWithin('uncertainty').optional();
const jaws = z.enum(['settled', 'rocked', 'true']).optional();
const oneLength = { mm: takings('length').optional(), uMm, taken, jaws };
const teethReading = {
  count: numberWithin('starts').optional(),
  chance: numberWithin('chance').optional(),
  left: numberWithin('someTeeth').optional(),
  missing: z.array(numberWithin('someTeeth')).min(1).max(counts.takings.greatest).optional(),
  pitches: numberWithin('spanned').optional(),
  overDeg: numberWithin('turn').optional(),
  uDeg: numberWithin('angleUncertainty').optional(),
};
const span = { teeth: numberWithin('spanned').optional() };
const pin = { pinMm: numberWithin('length').optional() };
const plug = { goesMm: numberWithin('length').optional(), stopsMm: numberWithin('length').optional() };
const posts = {
  mate: identifier.optional(),
  overPostsMm: numberWithin('length').optional(),
  betweenPostsMm: numberWithin('length').optional(),
  postsMm: z.tuple([numberWithin('length'), numberWithin('length')]).optional(),
};
const helix = {
  deg: numberWithin('helixAngle').optional(),
  uDeg: numberWithin('angleUncertainty').optional(),
};
const roll = {
  with: identifier.optional(),
  spec: specSchema.optional(),
  felt: z.enum(['smooth', 'bumps', 'jams']).optional(),
};

/**
 * One reading: `of` says what was measured, and with it which other fields it has. A reading without `of` is kept
 * and left aside, its fields held to their types all the same.
 */
export const readingSchema = z.discriminatedUnion('of', [
  z.looseObject({ of: z.literal('teeth'), ...teethReading }),
  z.looseObject({ of: z.literal('outside'), ...oneLength }),
  z.looseObject({ of: z.literal('root'), ...oneLength }),
  z.looseObject({ of: z.literal('tooth-depth'), ...oneLength }),
  z.looseObject({ of: z.literal('span'), ...oneLength, ...span }),
  z.looseObject({ of: z.literal('over-pins'), ...oneLength, ...pin }),
  z.looseObject({ of: z.literal('bore'), ...oneLength, ...plug }),
  z.looseObject({ of: z.literal('shaft'), ...oneLength }),
  z.looseObject({ of: z.literal('face-width'), ...oneLength }),
  z.looseObject({ of: z.literal('hub-diameter'), ...oneLength }),
  z.looseObject({ of: z.literal('overall-length'), ...oneLength }),
  z.looseObject({ of: z.literal('face-offset'), ...oneLength, mm: takings('signedLength').optional() }),
  z.looseObject({ of: z.literal('helix-angle'), ...helix }),
  z.looseObject({ of: z.literal('rack-pitch'), ...oneLength, pitches: numberWithin('spanned').optional() }),
  z.looseObject({ of: z.literal('center-distance'), ...oneLength, ...posts }),
  z.looseObject({ of: z.literal('hand-roll'), ...roll }),
  z.looseObject({
    of: z.undefined().optional(),
    ...teethReading,
    ...oneLength,
    mm: takings('signedLength').optional(),
    ...span,
    ...pin,
    ...plug,
    ...posts,
    ...helix,
    ...roll,
  }),
]);
