import { z } from 'zod/mini';
import { identifier, numberWithin, takings } from './field-schemas.ts';
import { counts } from './limits.ts';
import { specSchema } from './spec-schema.ts';

const taken = z.optional(z.enum(['open', 'closed']));
const uMm = z.optional(numberWithin('uncertainty'));
const jaws = z.optional(z.enum(['settled', 'rocked', 'true']));
const oneLength = { mm: z.optional(takings('length')), uMm, taken, jaws };
const teethReading = {
  count: z.optional(numberWithin('starts')),
  chance: z.optional(numberWithin('chance')),
  left: z.optional(numberWithin('someTeeth')),
  missing: z.optional(
    z.array(numberWithin('someTeeth')).check(z.minLength(1), z.maxLength(counts.takings.greatest)),
  ),
  pitches: z.optional(numberWithin('spanned')),
  overDeg: z.optional(numberWithin('turn')),
  uDeg: z.optional(numberWithin('angleUncertainty')),
};
const span = { teeth: z.optional(numberWithin('spanned')) };
const pin = { pinMm: z.optional(numberWithin('length')) };
const plug = { goesMm: z.optional(numberWithin('length')), stopsMm: z.optional(numberWithin('length')) };
const posts = {
  mate: z.optional(identifier),
  overPostsMm: z.optional(numberWithin('length')),
  betweenPostsMm: z.optional(numberWithin('length')),
  postsMm: z.optional(z.tuple([numberWithin('length'), numberWithin('length')])),
};
const helix = {
  deg: z.optional(numberWithin('helixAngle')),
  uDeg: z.optional(numberWithin('angleUncertainty')),
};
const roll = {
  with: z.optional(identifier),
  spec: z.optional(specSchema),
  felt: z.optional(z.enum(['smooth', 'bumps', 'jams'])),
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
  z.looseObject({ of: z.literal('face-offset'), ...oneLength, mm: z.optional(takings('signedLength')) }),
  z.looseObject({ of: z.literal('helix-angle'), ...helix }),
  z.looseObject({ of: z.literal('rack-pitch'), ...oneLength, pitches: z.optional(numberWithin('spanned')) }),
  z.looseObject({ of: z.literal('center-distance'), ...oneLength, ...posts }),
  z.looseObject({ of: z.literal('hand-roll'), ...roll }),
  z.looseObject({
    of: z.optional(z.undefined()),
    ...teethReading,
    ...oneLength,
    mm: z.optional(takings('signedLength')),
    ...span,
    ...pin,
    ...plug,
    ...posts,
    ...helix,
    ...roll,
  }),
]);
