import { Fail } from '../fail.ts';

/** The version of the job file that this program writes. */
export const jobVersion = 1;

/**
 * Checks that a JSON value is a job of a version known here, and returns it brought forward to `jobVersion`. There
 * is one version so far, so it comes back as it is; a later one adds its steps here, oldest first.
 *
 * Throws Fail `not-a-job` for a value that is no job, `wrong-version` for one that is newer, older than the first,
 * or says no version.
 */
export function migrateJob(value: unknown): Record<string, unknown> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new Fail(
      'not-a-job',
      '',
      `the file holds ${Array.isArray(value) ? 'a list' : `only ${shortly(value)}`}, not a job`,
      'A job is one group in { } with "format": "sparetooth-job".',
    );
  }
  const job = value as Record<string, unknown>;
  const format = Object.hasOwn(job, 'format') ? job.format : undefined;
  if (format !== 'sparetooth-job') {
    throw new Fail(
      'not-a-job',
      'format',
      format === undefined ? 'the file does not say that it is a job' : `${shortly(format)} is not a job`,
      'If it is one, put in "format": "sparetooth-job" and "version": 1.',
      { found: format },
    );
  }
  const version = Object.hasOwn(job, 'version') ? job.version : undefined;
  if (version === jobVersion) return job;
  if (version === undefined) {
    throw wrongVersion(version, 'the job does not say which version it is', 'Put in "version": 1.');
  }
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    throw wrongVersion(
      version,
      `${shortly(version)} is no version of a job`,
      'Write "version": 1, a number without quotation marks.',
    );
  }
  throw wrongVersion(
    version,
    `the job is of version ${version}; this program reads up to version ${jobVersion}`,
    'Open it with a newer Sparetooth; this one changed nothing.',
  );
}

function wrongVersion(version: unknown, message: string, remedy: string): Fail {
  return new Fail('wrong-version', 'version', message, remedy, { found: version, known: jobVersion });
}

function shortly(value: unknown): string {
  if (typeof value === 'object' && value !== null) return Array.isArray(value) ? 'a list' : 'a group';
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
