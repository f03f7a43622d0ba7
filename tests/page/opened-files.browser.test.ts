import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { Fail, parseJob } from '../../src/index.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { fullJob } from '../job/full-job.ts';
import { mutateJob } from '../job/mutate-job.ts';
import { chooseInMenu, expectStatus, filmSplicer, openFile, readKept, readStatus } from './drive-page.ts';
import { openPage } from './open-page.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'sparetooth-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

function write(name: string, bytes: Uint8Array | string): string {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
}

/** The eight bytes that begin every PNG (PNG specification, 5.2), and some more. */
const picture = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0xff, 0xd8]);

test('a file that is no job is refused with what it is and what to do, and the next one opens', async () => {
  const page = await openPage();
  const alert = page.getByRole('alert');
  for (const [make, words] of [
    [() => write('large.json', new Uint8Array(50_000_000)), 'The file has 50 MB; a job has 5 MB at most'],
    [() => write('photo.json', picture), 'The file is not a text in UTF-8'],
    [() => write('empty.json', ''), 'is empty'],
    [() => write('other.json', '{"a":1}'), 'does not say that it is a job'],
    [() => write('photo.zip', picture), 'no pack of jobs'],
  ] as const) {
    await openFile(page, make());
    await expect.poll(() => alert.textContent()).toContain(words);
  }
  expect(await readKept(page)).toEqual([]);
  await openFile(page, filmSplicer);
  await expectStatus(page, 'Opened film-splicer.json');
  expect(await alert.textContent()).toBe('');
});

const seed = 20253;

test(`20 spoilt job files (seed ${seed}): each opens or is refused with words, and the page goes on`, async () => {
  const page = await openPage();
  const random = startRandom(seed);
  let refused = 0;
  for (let k = 0; k < 20; k++) {
    const { bytes, kind } = mutateJob(fullJob, random);
    const name = `spoilt-${k}.json`;
    let words = `Opened ${name}.`;
    try {
      parseJob(bytes);
    } catch (error) {
      if (!(error instanceof Fail)) throw error;
      refused++;
      words = error.remedy;
    }
    await openFile(page, write(name, bytes));
    await expect.poll(() => readStatus(page), { message: `${kind} ${k}`, timeout: 30_000 }).toContain(words);
    expect(await readStatus(page), kind).not.toMatch(/undefined|\[object|went wrong/);
  }
  expect(refused).toBeGreaterThan(0);
  expect(refused).toBeLessThan(20);
  await chooseInMenu(page, 'New job');
  await expect.poll(async () => (await readKept(page)).at(-1)).toBeDefined();
});
