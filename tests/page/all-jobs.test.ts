import { zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { Fail, formatJob, type Job, parseJob } from '../../src/index.ts';
import { packAllJobs, unpackJobs } from '../../src/page/keep/all-jobs.ts';
import { inventedJob } from '../cli/invented-job.ts';

const titled = (title?: string): Job => ({
  format: 'sparetooth-job',
  version: 1,
  ...(title === undefined ? {} : { title }),
});

function failOf(work: () => unknown): Fail {
  try {
    work();
  } catch (error) {
    if (error instanceof Fail) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

/** A zip whose directory tells another size of its files than they have. */
function claimSize(bytes: Uint8Array, size: number): Uint8Array {
  const claimed = bytes.slice();
  const view = new DataView(claimed.buffer);
  for (let at = 0; at < claimed.length - 4; at++) {
    if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, size, true);
  }
  return claimed;
}

describe('a pack of all jobs', () => {
  test('gives every job back as the command line reads it, in order', () => {
    const jobs = [inventedJob as Job, titled('Film splicer'), titled()];
    const files = unpackJobs(packAllJobs(jobs));
    expect(files.map(({ bytes }) => parseJob(bytes).job)).toEqual(jobs);
    expect(new TextDecoder().decode(files[1].bytes)).toBe(formatJob(jobs[1]));
  });

  test('is the same bytes every time', () => {
    const jobs = [titled('One'), titled('Two')];
    expect(packAllJobs(jobs)).toEqual(packAllJobs(jobs));
  });

  test.each([
    [['Slide projector'], ['job-slide-projector.json']],
    [
      ['Same', 'same', 'SAME!'],
      ['job-same.json', 'job-same-2.json', 'job-same-3.json'],
    ],
    [['../../etc/passwd'], ['job-etc-passwd.json']],
    [
      ['CON', 'a/b\\c:d*?"<>|'],
      ['job-con.json', 'job-a-b-c-d.json'],
    ],
    [
      ['Zähluhr 歯車', '…'],
      ['job-zähluhr-歯車.json', 'job-untitled.json'],
    ],
    [['x'.repeat(300)], [`job-${'x'.repeat(60)}.json`]],
    [
      ['7', '__proto__'],
      ['job-7.json', 'job-proto.json'],
    ],
  ])('names %j %j', (titles, names) => {
    expect(unpackJobs(packAllJobs(titles.map(titled))).map(({ name }) => name)).toEqual(names);
  });

  test('of another making opens too: folders and other files are left out', () => {
    const text = new TextEncoder().encode('{}');
    const files = unpackJobs(
      zipSync({ 'my jobs/A.JSON': text, 'photo.png': text, '__MACOSX/._A.json': text, 'b/.c.json': text }),
    );
    expect(files).toEqual([{ name: 'my jobs/A.JSON', bytes: text }]);
  });
});

describe('refused before anything is unpacked', () => {
  test('a job file that unpacks to more than a job holds', () => {
    const bomb = zipSync({ 'a.json': new Uint8Array(20_000_000) });
    expect(bomb.length).toBeLessThan(100_000);
    expect(failOf(() => unpackJobs(bomb)).code).toBe('too-large');
  });

  test('many that unpack to more than 200 MB together', () => {
    const few = zipSync(
      Object.fromEntries(Array.from({ length: 45 }, (_, k) => [`n${k}.json`, new Uint8Array(9)])),
    );
    expect(unpackJobs(few)).toHaveLength(45);
    expect(failOf(() => unpackJobs(claimSize(few, 4_900_000))).code).toBe('too-large');
  });

  test('more files than anyone keeps', () => {
    const none = new Uint8Array();
    const pack = zipSync(Object.fromEntries(Array.from({ length: 1001 }, (_, k) => [`n${k}.json`, none])));
    expect(failOf(() => unpackJobs(pack)).code).toBe('too-large');
  });

  test('a pack that claims to be small unpacks to no more than it claims', () => {
    const [file] = unpackJobs(claimSize(zipSync({ 'a.json': new Uint8Array(20_000_000) }), 1000));
    expect(file.bytes.length).toBe(1000);
  });

  test.each([
    ['no zip', new TextEncoder().encode(formatJob(titled('A')))],
    ['nothing', new Uint8Array()],
    ['half of one', packAllJobs([titled('A')]).slice(0, 60)],
    ['one without jobs', zipSync({ 'photo.png': new Uint8Array(3) })],
  ])('%s', (_, bytes) => {
    const fail = failOf(() => unpackJobs(bytes));
    expect(fail.code).toBe('not-a-job');
    expect(fail.remedy).not.toBe('');
  });

  test('a pack with any one byte flipped is a list of files or a Fail, never another error', () => {
    const pack = packAllJobs([titled('A'), inventedJob as Job]);
    for (let at = 0; at < pack.length; at++) {
      const spoilt = pack.slice();
      spoilt[at] ^= 0xff;
      try {
        unpackJobs(spoilt);
      } catch (error) {
        expect(error, `byte ${at}`).toBeInstanceOf(Fail);
      }
    }
  });
});
