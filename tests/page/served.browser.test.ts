import type { Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { addGear, countGears, openOwnJob, readKept } from './drive-page.ts';
import { openPage } from './open-page.ts';

/** The worker has answered once there are odds. */
const waitForOdds = (page: Page): Promise<void> =>
  expect.poll(() => page.getByLabel('Slip').textContent()).toMatch(/\d+ in \d+/);

test('nothing leaves the machine: a whole job asks for nothing beyond the page’s own address', async () => {
  // The watch of `openPage` is the claim: any request beyond the address fails this.
  const page = await openPage();
  await waitForOdds(page);
  await openOwnJob(page);
  await addGear(page);
  await page.getByRole('button', { name: 'How to make it' }).click();
  await page.reload();
  await expect.poll(() => countGears(page)).toBe(2);
});

test('localhost is sent to 127.0.0.1, so that the work is always at one address', async () => {
  const address = inject('pageAddress');
  const page = await openPage();
  await openOwnJob(page);
  const other = await page.context().newPage();
  await other.goto(address.replace('127.0.0.1', 'localhost'));
  expect(other.url().startsWith(address)).toBe(true);
  expect(await readKept(other)).toHaveLength(1);
  await other.close();
});

test('the single file opens from disk, answers, and keeps its work', async () => {
  const page = await openPage({ address: inject('singleAddress') });
  await waitForOdds(page);
  expect(await page.evaluate(() => document.fonts.check('16px Sheet'))).toBe(true);
  await openOwnJob(page);
  await addGear(page);
  await expect.poll(async () => (await readKept(page))[0].gears).toBe(2);
  await page.reload();
  await expect.poll(() => countGears(page)).toBe(2);
});

test('the single file makes a part too: what is loaded when asked for is in it', async () => {
  const page = await openPage({ address: inject('singleAddress') });
  await waitForOdds(page);
  await openOwnJob(page);
  await page.getByRole('button', { name: 'How to make it' }).first().click();
  await page.getByRole('button', { name: 'My resin printer' }).click();
  const [folder] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /^Save the folder/ }).click(),
  ]);
  expect(folder.suggestedFilename()).toBe('feed-for-my-resin.zip');
});
