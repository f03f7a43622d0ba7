import { Fail } from '../fail.ts';
import { checkReferences } from './check-references.ts';
import { checkSize } from './check-size.ts';
import { explainIssue } from './explain-issue.ts';
import { formatPath } from './format-path.ts';
import { type Job, jobSchema } from './job-schema.ts';
import { listNotices, type Notice } from './list-notices.ts';
import { migrateJob } from './migrate-job.ts';
import { findLine, scanJson } from './scan-json.ts';

export interface ParsedJob {
  readonly job: Job;
  readonly notices: readonly Notice[];
}

/**
 * A job from its text or its bytes (UTF-8, with or without a byte order mark), every field held to its type and
 * limits, and the notices a person should see.
 *
 * The job is the text's own content, unknown fields and the order of fields included; nothing is filled in.
 *
 * Throws Fail: `too-large` above 5 MB, before anything is parsed; `not-json` with line and column; `not-a-job`,
 * `wrong-version`; `bad-value` or `no-such-wheel` with the field's path, its line in the message, and all that was
 * wrong in `details.all`.
 */
export function parseJob(text: string | Uint8Array): ParsedJob {
  checkSize(text.length);
  const source = typeof text === 'string' ? text.replace(/^\ufeff/, '') : decode(text);
  scanJson(source);
  const value = migrateJob(JSON.parse(source));
  const result = jobSchema.safeParse(value);
  if (!result.success) {
    const problems = result.error.issues.map((issue) => explainIssue(issue, value));
    const [first] = problems;
    const line = lineOf(source, first.field);
    throw new Fail(
      'bad-value',
      first.field,
      line === undefined ? first.message : `${first.message} (line ${line})`,
      first.remedy,
      {
        ...(line === undefined ? {} : { line }),
        all: problems.map(({ field, message, remedy }) => ({ field, message, remedy })),
      },
    );
  }
  // The value itself, not the schema's copy: the copy would put known fields first and lose the typed order.
  const job = value as Job;
  checkReferences(job);
  return { job, notices: listNotices(job) };
}

function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const wide = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
    throw new Fail(
      'not-json',
      '',
      wide ? 'the text is UTF-16' : 'the file is not a text in UTF-8',
      wide ? 'Save it as UTF-8.' : 'Choose the job file; if it is one, save it as UTF-8.',
    );
  }
}

/** The line a field stands on; undefined for one that is missing. */
function lineOf(source: string, field: string): number | undefined {
  let offset: number | undefined;
  scanJson(source, (path, start) => {
    if (offset === undefined && formatPath(path) === field) offset = start;
  });
  return offset === undefined ? undefined : findLine(source, offset).line;
}
