import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { failCodes } from '../../src/fail.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { fullJob } from '../job/full-job.ts';
import { mutateJob } from '../job/mutate-job.ts';
import { inventedJob } from './invented-job.ts';
import { runInProcess } from './run-in-process.ts';

const seed = 77;
const count = 120;

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'sparetooth-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

test(`${count} spoilt jobs (seed ${seed}) through identify and make: an answer, or a Fail and nothing written`, async () => {
  const random = startRandom(seed);
  const met = new Map<number, number>();
  for (let k = 0; k < count; k++) {
    // Every fourth has all fields there are; the others can be answered when they are only a little spoilt.
    const mutation = mutateJob(k % 4 === 0 ? fullJob : inventedJob, random);
    const out = join(folder, String(k));
    const words =
      k % 3 === 0
        ? ['make', '-', '--wheel', 'p1', '--out', out, '--as', 'stl', '--json']
        : ['identify', '-', '--wheel', 'p1', '--json'];
    const ran = await runInProcess(words, mutation.bytes);
    const label = `${mutation.kind} ${k} ${mutation.path?.join('.')}: ${ran.err}`;
    met.set(ran.code, (met.get(ran.code) ?? 0) + 1);
    const document = JSON.parse(ran.out);
    if (mutation.mustFail) expect(ran.code, label).toBe(2);
    if ('error' in document) {
      expect(Object.keys(failCodes), label).toContain(document.error.code);
      expect(document.error.remedy, label).not.toBe('');
      expect(() => readdirSync(out), label).toThrow();
    } else {
      expect(ran.code, label).toBeLessThan(2);
      expect(ran.out, label).not.toMatch(/NaN|Infinity/);
      if (k % 3 === 0) expect(readdirSync(out), label).toHaveLength(document.files.length);
    }
  }
  expect(met.get(0)).toBeGreaterThan(10);
  expect(met.get(2)).toBeGreaterThan(40);
});
