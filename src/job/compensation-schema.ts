import { z } from 'zod/mini';
import { numberWithin } from './field-schemas.ts';

/** Figures of a compensation, all a side; of its uncertainty too. What is left out is 0. */
export const compensationSchema = z.looseObject({
  scalePercent: z.optional(numberWithin('stretch')),
  outsidePerSideMm: z.optional(numberWithin('offset')),
  teethPerSideMm: z.optional(numberWithin('offset')),
  holesPerSideMm: z.optional(numberWithin('offset')),
  firstLayerPerSideMm: z.optional(numberWithin('offset')),
});
