import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Random, startRandom } from '../../src/numeric/random.ts';
import { listPlaces, valueAt } from '../job/mutate-job.ts';
import { runInProcess } from './run-in-process.ts';

const jobs: readonly unknown[] = readdirSync('demo-data')
  .filter((name) => name.endsWith('.json'))
  .map((name) => JSON.parse(readFileSync(`demo-data/${name}`, 'utf8')));
const seed = 78;
const count = 60;

// Every type is right here and most values are within their limits, so it is the inference and the solid that meet
// wheels which no machine ever held.
test(`${count} jobs with readings that no gear gives (seed ${seed}): answered or refused, never half made`, async () => {
  const random = startRandom(seed);
  const folder = mkdtempSync(join(tmpdir(), 'sparetooth-'));
  let answered = 0;
  try {
    for (let k = 0; k < count; k++) {
      const job = stretch(jobs[k % jobs.length], random) as { wheels: { id: string }[] };
      const text = JSON.stringify(job);
      const out = join(folder, String(k));
      const words = ['make', '-', '--wheel', job.wheels[0].id, '--out', out, '--as', 'stl', '--json'];
      const told = await runInProcess(['identify', '-', '--json'], text);
      const made = await runInProcess(words, text);
      for (const ran of [told, made]) {
        const document = JSON.parse(ran.out);
        expect(ran.out, text).not.toMatch(/NaN|Infinity/);
        if ('error' in document) {
          expect(document.error.remedy, text).toMatch(/\S/);
          expect(ran.code, text).toBeGreaterThan(0);
        } else expect(ran.code, text).toBeLessThan(2);
      }
      expect(readdirSync(folder).includes(String(k)), text).toBe(made.code === 0);
      if (told.code < 2) answered++;
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  // Enough got past the limits for the test to mean something.
  expect(answered).toBeGreaterThan(count / 4);
});

/** Up to three numbers of a job's wheels moved by up to four powers of ten; counts drawn from 1 to 999. */
function stretch(job: unknown, random: Random): unknown {
  const copy = structuredClone(job);
  const places = listPlaces(copy).filter(
    (path) => path[0] === 'wheels' && typeof valueAt(copy, path) === 'number',
  );
  const changes = 1 + Math.floor(random.uniform() * 3);
  for (let k = 0; k < changes; k++) {
    const path = places[Math.floor(random.uniform() * places.length)];
    const isCount = path.some((part) => typeof part === 'string' && counted.has(part));
    const old = valueAt(copy, path) as number;
    const value = isCount
      ? Math.floor(10 ** (random.uniform() * 3))
      : Number(((old || 1) * 10 ** (random.uniform() * 8 - 4)).toPrecision(4));
    (valueAt(copy, path.slice(0, -1)) as Record<string | number, unknown>)[path.at(-1) as string] = value;
  }
  return copy;
}

const counted = new Set(['count', 'left', 'missing', 'pitches', 'teeth']);
