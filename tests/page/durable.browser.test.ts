import { readFileSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Download } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { parseJob } from '../../src/index.ts';
import { unpackJobs } from '../../src/page/keep/all-jobs.ts';
import {
  addGear,
  chooseInMenu,
  countGears,
  expectStatus,
  filmSplicer,
  openFile,
  openOwnJob,
  readKept,
  readStatus,
} from './drive-page.ts';
import { openPage } from './open-page.ts';

const readDownload = async (download: Download): Promise<Uint8Array> => readFileSync(await download.path());
const splicer = parseJob(readFileSync(filmSplicer)).job;

describe('nothing typed is lost', () => {
  test('a job is where it was left after its window was killed, with its undo', async () => {
    const page = await openPage();
    await openOwnJob(page);
    await addGear(page);
    await expect.poll(async () => (await readKept(page))[0].gears).toBe(2);
    const keeping = await openPage({ beside: page, hash: '#/example' });
    await page.close({ runBeforeUnload: false });
    const next = await openPage({ beside: keeping });
    await expect.poll(() => countGears(next)).toBe(2);
    await next.getByRole('button', { name: 'Undo: a gear added' }).click();
    await expect.poll(() => countGears(next)).toBe(1);
    await next.getByRole('button', { name: 'Redo: a gear added' }).click();
    await expect.poll(() => countGears(next)).toBe(2);
  });

  test('a half-typed reading is still in its field', async () => {
    const page = await openPage();
    await openOwnJob(page);
    const start = () =>
      page
        .getByLabel('Sheet')
        .getByRole('button', { name: /^bottom of the teeth/ })
        .click();
    const field = page.getByLabel('Slip').locator('input[inputmode=decimal]').first();
    await start();
    await field.fill('5.4');
    // The next thing asked of storage is answered after what was typed is written.
    await readKept(page);
    await page.reload();
    await start();
    await expect.poll(() => field.inputValue()).toBe('5.4');
  });

  test('where the browser keeps nothing, the page says so and hands the job over as a file', async () => {
    const page = await openPage({
      prepare: () => void Object.defineProperty(window, 'indexedDB', { value: undefined }),
    });
    await expectStatus(page, "This browser won't keep your work: save a file.");
    await openFile(page, filmSplicer);
    await expectStatus(page, 'Opened film-splicer.json');
    expect(await readStatus(page)).toContain("This browser won't keep your work");
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save a file' }).click(),
    ]);
    expect(parseJob(await readDownload(download)).job).toEqual(splicer);
  });

  test('where the disk is full, the page says so, and keeps on once there is room', async () => {
    const page = await openPage();
    await openOwnJob(page);
    await page.evaluate(() => {
      const put = IDBObjectStore.prototype.put;
      Object.assign(window, { heal: () => Object.assign(IDBObjectStore.prototype, { put }) });
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('planted', 'QuotaExceededError');
      };
    });
    await addGear(page);
    await expectStatus(page, 'no room left to keep your work');
    expect(await countGears(page)).toBe(2);
    expect((await readKept(page))[0].gears).toBe(1);
    await page.evaluate(() => (window as unknown as { heal: () => void }).heal());
    await addGear(page);
    await expect.poll(async () => (await readKept(page))[0].gears).toBe(3);
    await expect.poll(() => readStatus(page)).not.toContain('no room left');
  });

  test('what a newer page keeps is left alone, and the page says so', async () => {
    const page = await openPage({
      prepare: () => {
        indexedDB.open('sparetooth', 99).onsuccess = (event) =>
          (event.target as IDBOpenDBRequest).result.close();
      },
    });
    await expectStatus(page, 'A newer Sparetooth keeps jobs on this machine');
  });
});

describe('two windows on one job', () => {
  test('show the same job: a change in one appears in the other', async () => {
    const one = await openPage();
    await openOwnJob(one);
    const two = await openPage({ beside: one, hash: new URL(one.url()).hash });
    await expect.poll(() => countGears(two)).toBe(1);
    await addGear(one);
    await expect.poll(() => countGears(two)).toBe(2);
    await expectStatus(two, 'Changed in another window');
    await addGear(two);
    await expect.poll(() => countGears(one)).toBe(3);
    expect(await readKept(one)).toHaveLength(1);
  });

  test('never overwrite each other: changed in both at once, both are kept', async () => {
    const one = await openPage();
    await openOwnJob(one);
    // A window that hears of nothing: what two do in the same instant.
    const two = await openPage({
      beside: one,
      hash: new URL(one.url()).hash,
      prepare: () => void Object.defineProperty(window, 'BroadcastChannel', { value: undefined }),
    });
    await expect.poll(() => countGears(two)).toBe(1);
    await addGear(one);
    await addGear(one);
    await expect.poll(async () => (await readKept(one))[0].gears).toBe(3);
    await addGear(two);
    await expectStatus(two, 'Both are kept');
    await expect.poll(async () => (await readKept(two)).map(({ gears }) => gears).sort()).toEqual([2, 3]);
    expect(await countGears(two)).toBe(2);
    expect(await countGears(one)).toBe(3);
  });
});

test('all jobs go into one file that the command line reads, and come back on another machine', async () => {
  const page = await openPage();
  await openOwnJob(page);
  await openFile(page, 'demo-data/coin-counter.json');
  await expect.poll(async () => (await readKept(page)).length).toBe(2);
  await chooseInMenu(page, 'All jobs on this machine');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save all as one file' }).click(),
  ]);
  const jobs = unpackJobs(await readDownload(download)).map(({ bytes }) => parseJob(bytes).job);
  expect(jobs).toHaveLength(2);
  expect(jobs).toContainEqual(splicer);
  const other = await openPage();
  const pack = join(await mkdtemp(join(tmpdir(), 'sparetooth-')), 'all.zip');
  await download.saveAs(pack);
  await openFile(other, pack);
  await expectStatus(other, '2 jobs taken in.');
  expect((await readKept(other)).map(({ title }) => title).sort()).toEqual(
    jobs.map(({ title }) => title).sort(),
  );
});
