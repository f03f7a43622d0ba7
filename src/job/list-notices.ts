import type { z } from 'zod/mini';
import { findMissingValue } from './find-missing-value.ts';
import { formatPath, type Path } from './format-path.ts';
import { type Job, jobSchema } from './job-schema.ts';

/** Something in a job that is readable but worth a word: where, and what. */
export interface Notice {
  readonly field: string;
  readonly message: string;
}

/**
 * What a person should know about a job that was read: fields that are not known here (kept, not used), readings
 * that don't say what was measured or what it came to, takings so far apart that a decimal comma may be meant.
 */
export function listNotices(job: Job): Notice[] {
  const notices: Notice[] = [];
  listUnknown(jobSchema, job, [], (path) =>
    notices.push({ field: formatPath(path), message: 'not known here: kept, but not used' }),
  );
  (job.wheels ?? []).forEach((wheel, w) => {
    (wheel.readings ?? []).forEach((reading, r) => {
      const path: Path = ['wheels', w, 'readings', r];
      const missing = findMissingValue(reading);
      if (missing !== undefined) {
        notices.push({
          field: formatPath(path),
          message:
            missing === 'of'
              ? 'does not say what was measured ("of"): kept, but not used'
              : `says nothing yet, for want of "${missing}": kept, but not used`,
        });
      }
      const mm = 'mm' in reading ? reading.mm : undefined;
      if (Array.isArray(mm) && mm.length > 1) {
        const numbers = mm as readonly number[];
        const least = Math.min(...numbers.map(Math.abs));
        const greatest = Math.max(...numbers.map(Math.abs));
        if (greatest > farApart * least && numbers.every(Number.isInteger)) {
          notices.push({
            field: formatPath([...path, 'mm']),
            message: `reads as ${numbers.length} takings (${numbers.slice(0, 3).join(' and ')}); was a decimal comma meant? Write ${numbers[0]}.${numbers[1]}`,
          });
        }
      }
    });
  });
  return notices;
}

// Takings of one length differ by hundredths; a fifth apart and without a decimal is a comma gone wrong.
const farApart = 1.2;

function listUnknown(schema: z.core.$ZodType, value: unknown, path: Path, found: (path: Path) => void): void {
  const definition = schema._zod.def as unknown as Definition;
  if (typeof value !== 'object' || value === null) return;
  if (definition.type === 'optional' || definition.type === 'nullable') {
    listUnknown(definition.innerType, value, path, found);
  } else if (definition.type === 'array' && Array.isArray(value)) {
    value.forEach((element, index) => {
      listUnknown(definition.element, element, [...path, index], found);
    });
  } else if (definition.type === 'union' && !Array.isArray(value)) {
    const option = definition.options.find((one) => acceptsOf(one, (value as { of?: unknown }).of));
    if (option) listUnknown(option, value, path, found);
  } else if (definition.type === 'object' && !Array.isArray(value)) {
    for (const [key, inner] of Object.entries(value)) {
      if (Object.hasOwn(definition.shape, key))
        listUnknown(definition.shape[key], inner, [...path, key], found);
      else found([...path, key]);
    }
  }
}

/** The parts of zod's own definition of a schema that the walk reads. */
type Definition =
  | { readonly type: 'object'; readonly shape: Readonly<Record<string, z.core.$ZodType>> }
  | { readonly type: 'array'; readonly element: z.core.$ZodType }
  | { readonly type: 'union'; readonly options: readonly z.core.$ZodType[] }
  | { readonly type: 'optional' | 'nullable'; readonly innerType: z.core.$ZodType };

/** Whether an option of the union of readings is the one for this `of`. */
function acceptsOf(option: z.core.$ZodType, of: unknown): boolean {
  const definition = option._zod.def as unknown as Definition;
  if (definition.type !== 'object' || !Object.hasOwn(definition.shape, 'of')) return false;
  return definition.shape.of._zod.values?.has(of as never) ?? of === undefined;
}
