import { readdirSync, readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { formatJob, identify, parseJob } from '../../src/index.ts';
import { chooseInMenu, expectStatus, openFile } from './drive-page.ts';
import { openPage } from './open-page.ts';
import { expectAnswer } from './walk.ts';

const demos = readdirSync('demo-data').filter((name) => name.endsWith('.json'));

/** Opens a demo job as a person does, and waits until it is open. */
async function openDemo(page: Page, name: string): Promise<void> {
  await openFile(page, `demo-data/${name}`);
  await expectStatus(page, `Opened ${name}`);
}

async function download(page: Page, act: () => Promise<void>): Promise<Buffer> {
  const [file] = await Promise.all([page.waitForEvent('download'), act()]);
  return readFileSync(await file.path());
}

test.each(demos)('%s: the page gives the answer of the command line, to the last digit', async (name) => {
  const { job } = parseJob(readFileSync(`demo-data/${name}`));
  const page = await openPage();
  await openDemo(page, name);
  await expectAnswer(page, /./);
  for (const wheel of job.wheels ?? []) {
    const named = page.getByRole('button', { name: wheel.name ?? wheel.id, exact: true });
    if ((job.wheels ?? []).length > 1) await named.click();
    await page.waitForFunction(() => !document.querySelector('.verdict-working'));
    const figures = await download(page, () => chooseInMenu(page, 'Save the figures of this answer'));
    expect(JSON.parse(figures.toString())).toEqual(
      JSON.parse(JSON.stringify(identify(job, { wheelId: wheel.id }))),
    );
  }
});

test.each(demos)(
  '%s: opened and saved by the page it is the same job, byte for byte as written',
  async (name) => {
    const { job } = parseJob(readFileSync(`demo-data/${name}`));
    const page = await openPage();
    await openFile(page, `demo-data/${name}`);
    const saved = await download(page, () => chooseInMenu(page, 'Save as a file'));
    expect(saved.toString()).toBe(formatJob(job));
    expect(parseJob(saved).job).toEqual(job);
  },
);

test('a gear that two readings leave open is taken to its ending', async () => {
  const page = await openPage();
  await openDemo(page, 'film-splicer.json');
  await expectAnswer(page, /Can't tell yet/);
  for (let step = 0; step < 12; step++) {
    if (await page.getByText('This is as far as your tools can tell.').count()) break;
    await page.getByRole('button', { name: "I can't take this one" }).click();
    await page.waitForTimeout(200);
  }
  await page.getByText('This is as far as your tools can tell.').waitFor();
  await page.getByRole('button', { name: 'Make the trial plate' }).click();
  await page.getByRole('button', { name: 'My resin printer' }).click();
  await expectAnswer(page, /trial part/);
  await page.locator('summary', { hasText: 'Single files' }).click();
  await page.getByText(/The trial plate/).waitFor();
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save STL' }).last().click(),
  ]);
  const bytes = readFileSync(await file.path());
  expect(bytes.length).toBe(84 + 50 * bytes.readUInt32LE(80));
});

test('a mistyped reading is mended by one tap, and the tap can be undone', async () => {
  const page = await openPage();
  await openDemo(page, 'weather-drum.json');
  await expectAnswer(page, /0\.6, 22 teeth/);
  const repair = page.getByRole('button', { name: /^Digits swapped: use/ });
  await repair.click();
  await expect.poll(() => page.getByText("doesn't agree with the others").count()).toBe(0);
  expect(await repair.count()).toBe(0);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await repair.waitFor();
});
