import { unzipSync, zipSync } from 'fflate';
import { checkSize, Fail, formatJob, type Job } from '../../index.ts';

/** One file of a pack: the bytes are not a job yet, they still have to be read as one. */
export interface PackedJob {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** More than anyone keeps; a pack that claims more is no pack of jobs. */
const mostJobs = 1000;
const mostBytes = 200_000_000;

/**
 * All jobs as one zip, a job file each, as the command line reads them. Names follow the titles; the same jobs in
 * the same order give the same bytes, in any time zone.
 */
export function packAllJobs(jobs: readonly Job[]): Uint8Array {
  const files = new Map<string, Uint8Array>();
  for (const job of jobs) {
    const stem = `job-${stemOf(job.title ?? '')}`;
    let name = `${stem}.json`;
    for (let number = 2; files.has(name); number++) name = `${stem}-${number}.json`;
    files.set(name, new TextEncoder().encode(formatJob(job)));
  }
  // Local time on purpose: zip stores local time without a zone, so the bytes agree in every time zone.
  return zipSync(Object.fromEntries(files), { level: 6, mtime: new Date(2026, 0, 1) });
}

/**
 * The job files of a zip, in its order; files that are not named .json are left out. Sizes are checked before
 * anything is unpacked, so a small file can't grow into a huge one.
 *
 * Throws Fail `not-a-job` for what is no zip, is damaged or holds no job file, `too-large` for a job file over 5 MB,
 * more than 1,000 of them, or more than 200 MB together.
 */
export function unpackJobs(bytes: Uint8Array): PackedJob[] {
  const names: string[] = [];
  let total = 0;
  let files: Record<string, Uint8Array>;
  try {
    files = unzipSync(bytes, {
      filter({ name, originalSize }) {
        if (!isJobName(name)) return false;
        checkSize(originalSize);
        total += originalSize;
        names.push(name);
        checkPack(names.length, total);
        return true;
      },
    });
  } catch (error) {
    if (error instanceof Fail) throw error;
    throw new Fail(
      'not-a-job',
      '',
      'the file is no pack of jobs, or it is damaged',
      'Choose the file that Sparetooth wrote, or one job file.',
      { reason: error instanceof Error ? error.message : String(error) },
    );
  }
  if (names.length === 0) {
    throw new Fail('not-a-job', '', 'no job file is in this pack', 'Choose the file that Sparetooth wrote.');
  }
  return [...new Set(names)].map((name) => ({ name, bytes: files[name] }));
}

/** Zips of more are never read: what is in them would be over the limit, or is no job. */
const largestPack = 100_000_000;

/** Throws Fail `too-large` where a file of that many bytes is no pack: for those who know its size before they read it. */
export function checkPackSize(bytes: number): void {
  if (bytes <= largestPack) return;
  throw new Fail(
    'too-large',
    '',
    `the file has ${Math.ceil(bytes / 1_000_000)} MB; a pack of jobs has 100 MB at most`,
    'Choose the file that Sparetooth wrote, or unpack it and open the job files one by one.',
    { bytes, largest: largestPack },
  );
}

function checkPack(count: number, total: number): void {
  if (count <= mostJobs && total <= mostBytes) return;
  throw new Fail(
    'too-large',
    '',
    count > mostJobs
      ? `more than ${mostJobs} job files are in this pack`
      : 'this pack unpacks to over 200 MB',
    'Unpack it and open the job files one by one.',
    { count, total },
  );
}

/** Files that some systems put beside the real ones are no jobs. */
function isJobName(name: string): boolean {
  const own = name.split('/').at(-1) ?? '';
  return /\.json$/i.test(own) && !own.startsWith('.') && !name.startsWith('__MACOSX/');
}

/** A title as a file name that every system takes. */
function stemOf(title: string): string {
  const words = title
    .normalize('NFC')
    .toLowerCase()
    .match(/[\p{L}\p{M}\p{N}]+/gu);
  return [...(words ?? ['untitled']).join('-')].slice(0, 60).join('');
}
