import { z } from 'zod/mini';
import { Fail } from '../fail.ts';
import { checkSize } from './check-size.ts';
import { compensationSchema } from './compensation-schema.ts';
import { explainIssue } from './explain-issue.ts';
import { type Known, numberWithin, takings } from './field-schemas.ts';
import { counts } from './limits.ts';
import { scanJson } from './scan-json.ts';

const couponReadingSchema = z.looseObject({
  of: z.enum(['outside', 'foot', 'bore', 'gap']),
  nominalMm: z.optional(numberWithin('length')),
  mm: z.optional(takings('length')),
  goesMm: z.optional(numberWithin('length')),
  stopsMm: z.optional(numberWithin('length')),
  pinMm: z.optional(numberWithin('length')),
  uMm: z.optional(numberWithin('uncertainty')),
});

const couponSchema = z.looseObject({
  readings: z.optional(z.array(couponReadingSchema).check(z.maxLength(counts.readings.greatest))),
});

const kitSchema = z.looseObject({
  caliper: z.optional(z.string()),
  uMm: z.optional(numberWithin('uncertainty')),
  zeroMm: z.optional(numberWithin('zero')),
  zeroUMm: z.optional(numberWithin('zeroUncertainty')),
});

const fileSchema = z.looseObject({
  format: z.literal('sparetooth-compensation'),
  version: z.literal(1),
  machine: z.optional(z.string()),
  material: z.optional(z.string()),
  /** A key of the processes */
  process: z.optional(z.string()),
  notes: z.optional(z.string()),
  kit: z.optional(kitSchema),
  coupons: z.optional(z.array(couponSchema).check(z.maxLength(counts.takings.greatest))),
  /** Worked out from the coupons, or set by a person where there are none */
  compensation: z.optional(compensationSchema),
  uncertainty: z.optional(compensationSchema),
});

/** What one machine does with one material: kept by the person, carried from computer to computer. */
export type CompensationFile = Known<z.infer<typeof fileSchema>>;

/**
 * A compensation file from its text, every field held to its type and limits; it is the text's own content, unknown
 * fields and the order of fields included.
 *
 * Throws Fail: `too-large` above 5 MB; `not-json` with line and column; `not-a-compensation`, `wrong-version`;
 * `bad-value` with the field's path and all that was wrong in `details.all`.
 */
export function parseCompensation(text: string | Uint8Array): CompensationFile {
  checkSize(text.length);
  const source = (typeof text === 'string' ? text : decode(text)).replace(/^\ufeff/, '');
  scanJson(source);
  const value: unknown = JSON.parse(source);
  checkFormat(value);
  const result = fileSchema.safeParse(value);
  if (!result.success) {
    const problems = result.error.issues.map((issue) => explainIssue(issue, value));
    const [{ field, message, remedy }] = problems;
    throw new Fail('bad-value', field, message, remedy, { all: problems });
  }
  return value as CompensationFile;
}

/** The file as text, a newline at the end; the same file always gives the same bytes, unknown fields included. */
export function formatCompensation(file: CompensationFile): string {
  return `${JSON.stringify(file, null, 2)}\n`;
}

function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Fail('not-json', '', 'the file is not a text in UTF-8', 'Choose the compensation file.');
  }
}

function checkFormat(value: unknown): void {
  const { format, version } = (typeof value === 'object' && value !== null ? value : {}) as Record<
    string,
    unknown
  >;
  if (format !== 'sparetooth-compensation') {
    throw new Fail(
      'not-a-compensation',
      'format',
      format === 'sparetooth-job'
        ? 'this is a job, not a compensation'
        : 'the file does not say that it is a compensation',
      'Choose a file with "format": "sparetooth-compensation"; the command coupon writes one to fill in.',
      { found: format },
    );
  }
  if (version === 1) return;
  throw new Fail(
    'wrong-version',
    'version',
    version === undefined ? 'the file does not say which version it is' : 'the file is of another version',
    'This program reads version 1; open it with a newer one, or put in "version": 1.',
    { found: version, known: 1 },
  );
}
