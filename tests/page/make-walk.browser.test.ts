import { readFileSync } from 'node:fs';
import { strFromU8, unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { chooseInMenu, expectStatus, openFile } from './drive-page.ts';
import { look, openPage } from './open-page.ts';
import { expectAnswer } from './walk.ts';

interface SavedWheel {
  readonly id: string;
  readonly making?: { readonly maker?: string; readonly machine?: string; readonly off?: readonly string[] };
  readonly made?: { readonly readings: readonly object[]; readonly compensation?: object };
}

async function download(page: Page, act: () => Promise<void>): Promise<Buffer> {
  const [file] = await Promise.all([page.waitForEvent('download'), act()]);
  return readFileSync(await file.path());
}

async function saveWheel(page: Page): Promise<SavedWheel> {
  const bytes = await download(page, () => chooseInMenu(page, 'Save as a file'));
  const wheels = JSON.parse(bytes.toString()).wheels as SavedWheel[];
  const [found] = wheels.filter(({ id }) => id === 'middle-wheel');
  return found;
}

async function openRecorder(page: Page): Promise<void> {
  await openFile(page, 'demo-data/paper-recorder.json');
  await expectStatus(page, 'Opened paper-recorder.json');
  await page.getByRole('button', { name: 'middle wheel, split', exact: true }).click();
  await page.getByRole('button', { name: 'How to make it' }).first().click();
  await page.getByRole('button', { name: 'My resin printer' }).click();
  await page.getByRole('button', { name: /^Save the folder/ }).waitFor();
}

const readFolder = async (page: Page): Promise<Record<string, Uint8Array>> =>
  unzipSync(await download(page, () => page.getByRole('button', { name: /^Save the folder/ }).click()));

test('from a demo job to a folder of files: a change left out is undone by one step, each maker gets their own', async () => {
  const page = await openPage();
  await openRecorder(page);
  await expectAnswer(page, /that should hold/);
  await look(page, 'walk-make');
  const leave = page.getByRole('button', { name: /^Leave it out ?: larger round/ });
  await leave.click();
  await page.getByRole('button', { name: /^Put it in ?: larger round/ }).waitFor();
  expect((await saveWheel(page)).making?.off).toEqual(['root-fillet']);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await leave.waitFor();
  const printed = await readFolder(page);
  const names = Object.keys(printed);
  expect(names.every((name) => name.startsWith('middle-wheel-for-my-resin/'))).toBe(true);
  expect(names.map((name) => name.split('/')[1]).sort()).toEqual([
    'message.txt',
    'middle-wheel-sheet.pdf',
    'middle-wheel.stl',
    'shopping-list.txt',
  ]);
  const stl = Buffer.from(printed['middle-wheel-for-my-resin/middle-wheel.stl']);
  expect(stl.length).toBe(84 + 50 * stl.readUInt32LE(80));
  expect(strFromU8(printed['middle-wheel-for-my-resin/message.txt'])).toMatch(/Do not scale it/);
  await page.getByRole('button', { name: 'Someone else' }).click();
  await page.getByRole('button', { name: 'A machine shop' }).click();
  await expectAnswer(page, /part of 64 teeth/);
  const shop = Object.keys(await readFolder(page)).map((name) => name.split('/')[1]);
  expect(shop).toEqual(expect.arrayContaining(['middle-wheel.step', 'middle-wheel-sheet.pdf']));
  expect(shop).not.toContain('middle-wheel.stl');
});

test('through the coupon and the check: what the printer adds goes into the files, the part tells what stays', async () => {
  const page = await openPage();
  await openRecorder(page);
  await page.getByText(/No allowance for your printer/).waitFor();
  await page.getByRole('button', { name: 'Measure my printer' }).click();
  await page.getByRole('button', { name: 'Save coupon.stl' }).waitFor();
  const coupon = await download(page, () => page.getByRole('button', { name: 'Save coupon.stl' }).click());
  expect(coupon.length).toBe(84 + 50 * coupon.readUInt32LE(80));
  await page.getByRole('button', { name: /^It is made/ }).click();
  // A machine that prints 0.05 mm a side too much, its first layers 0.05 more, its holes 0.05 too small.
  const readings = [
    '5.10',
    '10.10',
    '20.10',
    '5.20',
    '10.20',
    '20.20',
    '1.85 1.95',
    '2.85 2.95',
    '3.85 3.95',
  ];
  for (const reading of [...readings, '4.85 4.95', '11.05 2']) {
    const title = await page.locator('.make-title').first().textContent();
    await page.locator('.entry-field input').fill(reading);
    await page.keyboard.press('Enter');
    await page.waitForFunction(
      ([old]) => document.querySelector('.make-title')?.textContent !== old,
      [title],
    );
  }
  await page.getByText(/^That was coupon 1/).waitFor();
  await page.getByText(/^Outsides: 0\.0[3-6] mm larger a side/).waitFor();
  await look(page, 'walk-coupon');
  const kept = await download(page, () =>
    page.getByRole('button', { name: 'Save these figures as a file' }).click(),
  );
  expect(JSON.parse(kept.toString())).toMatchObject({ format: 'sparetooth-compensation', process: 'resin' });
  await page.getByRole('button', { name: 'Back to the part' }).click();
  await page.getByText(/An allowance measured on 1 coupon/).waitFor();
  await page.getByRole('button', { name: 'It is made: measure it' }).click();
  const take = async (heading: RegExp, fill: () => Promise<void>): Promise<void> => {
    await page.getByRole('heading', { name: heading }).waitFor();
    await fill();
    await page.getByRole('button', { name: 'Take it' }).click();
  };
  const shows = page.getByLabel(/What the caliper shows/);
  await take(/Across 8 teeth/, () => shows.fill('11.58 11.57 11.59'));
  await take(/Across the tips/, () => shows.fill('33.10 33.12 33.11'));
  await take(/Bore/, async () => {
    await page.getByLabel(/thickest drill that goes/).fill('3.5');
    await page.getByLabel(/that stops/).fill('3.6');
  });
  await page.getByRole('heading', { name: 'For the next one' }).waitFor();
  await look(page, 'walk-made');
  const saved = await saveWheel(page);
  expect(saved.made?.readings).toHaveLength(3);
  expect(saved.made?.compensation).toMatchObject({ outsidePerSideMm: expect.any(Number) });
  await page.getByRole('button', { name: 'Take this for the next one' }).click();
  await page.getByRole('button', { name: 'Put it back as it was' }).click();
  await page.getByRole('button', { name: 'Take this for the next one' }).click();
  await page.getByRole('button', { name: 'Make another one' }).click();
  await page.getByText(/An allowance as set for/).waitFor();
  // Kept on this computer: it is there after the page was loaded again.
  await page.reload();
  await page.getByText(/An allowance as set for/).waitFor();
});
