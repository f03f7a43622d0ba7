import type { GearSpec } from './involute/gear-spec.ts';
import { findSpanTeeth } from './involute/span.ts';
import { specOfFields } from './job/spec-fields.ts';
import type { SpecFields } from './job/spec-schema.ts';

/** Over how many teeth a caliper best reads a toothing's span; undefined where none can be read. */
export function chooseSpanTeeth(fields: SpecFields, kind: GearSpec['kind']): number | undefined {
  return kind === 'external' ? findSpanTeeth(specOfFields(fields, kind, 'spec')) : undefined;
}
