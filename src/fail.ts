/**
 * The one failure that a user can cause: which field, what was wrong, what to do next.
 *
 * Thrown where the input or the wish can't be met, caught in two places only (the command line's entry and the
 * page's boundary). A programmer's mistake throws a plain Error; an expected outcome is an ordinary return value.
 */
export class Fail extends Error {
  readonly code: FailCode;
  /** Where in what the user gave: a path such as `wheels[0].readings[2].mm`, or '' for the whole. */
  readonly field: string;
  /** What to do next, one sentence. */
  readonly remedy: string;
  /** What was typed or found, so that nothing is lost. */
  readonly details: Readonly<Record<string, unknown>>;

  constructor(
    code: FailCode,
    field: string,
    message: string,
    remedy: string,
    details: Record<string, unknown> = {},
  ) {
    super(message);
    this.name = 'Fail';
    this.code = code;
    this.field = field;
    this.remedy = remedy;
    this.details = details;
  }
}

/** A failure as plain data, for JSON and for crossing from a worker. */
export interface PlainFail {
  readonly code: FailCode;
  readonly field: string;
  readonly message: string;
  readonly remedy: string;
  readonly details: Readonly<Record<string, unknown>>;
}

export function describeFail({ code, field, message, remedy, details }: Fail): PlainFail {
  return { code, field, message, remedy, details };
}

/** Every code with what it stands for. A test raises each of them. */
export const failCodes = {
  'not-json': 'the text is not JSON',
  'not-a-job': 'JSON, but not a Sparetooth job',
  'not-a-compensation': 'JSON, but not a Sparetooth compensation',
  'wrong-version': 'a job of a version this program does not know',
  'too-large': 'the file is larger than a job can sensibly be',
  'bad-value': 'a field holds something it can not hold',
  'no-such-wheel': 'the job has no wheel with that id',
  'no-such-file': 'the file is not there or can not be read',
  'would-overwrite': 'a file of that name is there already',
  'cannot-write': 'the folder can not be written to',
  'no-port': 'the port is taken, or may not be used',
  'no-page': 'the built page is not beside the program',
  'bad-usage': 'the command line was not understood',
  'pointed-rack': "the generating rack's teeth come to a point before their full depth",
  'pointed-tooth': 'the tooth comes to a point below the tip circle',
  'bad-geometry': 'the spec describes no wheel that can exist',
  'not-identified': 'no answer to make a part from',
  'too-fine': 'the process can not make teeth that fine',
} as const;

export type FailCode = keyof typeof failCodes;
