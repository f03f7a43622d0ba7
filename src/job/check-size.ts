import { Fail } from '../fail.ts';

/**
 * Throws Fail `too-large` where a file of that many bytes is no job. For those who know a file's size before they
 * read it.
 */
export function checkSize(bytes: number): void {
  if (bytes <= largestJob) return;
  throw new Fail(
    'too-large',
    '',
    `the file has ${bytes === Number.POSITIVE_INFINITY ? 'more than 5' : Math.ceil(bytes / 1_000_000)} MB; a job has 5 MB at most`,
    'Choose the job file itself; pictures, scans and sounds stay outside it.',
    { bytes, largest: largestJob },
  );
}

/** The same for a file of a person's own parts. Throws Fail `too-large`. */
export function checkPartsSize(bytes: number): void {
  if (bytes <= largestParts) return;
  throw new Fail(
    'too-large',
    '',
    `the file has ${Math.ceil(bytes / 1_000_000)} MB; a parts file has ${largestParts / 1_000_000} MB at most`,
    'Choose the list of parts itself, saved as CSV; split it where it really is so long.',
    { bytes, largest: largestParts },
  );
}

/** Half a million rows of a hundred characters. */
const largestParts = 50_000_000;

/** A job of a hundred wheels with every reading taken ten times is a tenth of this. */
const largestJob = 5_000_000;
