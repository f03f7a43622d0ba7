import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { expectStatus, openFile } from './drive-page.ts';
import { look, openPage } from './open-page.ts';
import { expectAnswer, tabTo } from './walk.ts';

const openTrain = async (page: Page, name: string): Promise<void> => {
  await openFile(page, `demo-data/${name}.json`);
  await expectStatus(page, `Opened ${name}.json`);
  await page.getByRole('button', { name: 'gear train' }).click();
  await page.locator('.TrainSheet').waitFor();
};

/** What the page holds of the job, as its file has it. */
async function saveJob(page: Page): Promise<unknown> {
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    (async () => {
      await page.getByText('File', { exact: true }).click();
      await page.getByRole('button', { name: 'Save as a file' }).click();
    })(),
  ]);
  return JSON.parse(readFileSync(await file.path()).toString());
}

test('a train with a lost and a split gear gets another that keeps the speed, and one step brings the old one back', async () => {
  const page = await openPage();
  await openTrain(page, 'paper-recorder');
  const before = await saveJob(page);
  await page.getByRole('button', { name: 'What fits?' }).first().click();
  await expectAnswer(page, /new gears? keeps? the speed exactly/);
  await page.getByText(/proven: the best of/).waitFor();
  await look(page, 'walk-train-fits');
  await page.getByRole('button', { name: 'Put these in the train' }).click();
  await expectStatus(page, /now stands in this job/);
  await expectAnswer(page, /turns of motor give one turn of roller/);
  await page.getByText('That is what is wanted, exactly.').waitFor();
  const after = (await saveJob(page)) as { wheels: { id: string; spec?: unknown; state?: string }[] };
  expect(after.wheels.every((wheel) => wheel.spec !== undefined)).toBe(true);
  expect(after.wheels.some((wheel) => wheel.state === 'lost')).toBe(false);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect.poll(() => saveJob(page)).toEqual(before);
});

test('a gear with broken teeth is replaced by one that is sold, and one step brings the old one back', async () => {
  const page = await openPage();
  await openTrain(page, 'slide-changer');
  await expectAnswer(page, /moves toothed bar of the carriage/);
  const before = await saveJob(page);
  await page.getByRole('button', { name: 'What fits?' }).first().click();
  await expectAnswer(page, /something fits for pinion/);
  await page.getByRole('button', { name: /^What fits in place of pinion/ }).click();
  await expectAnswer(page, /A gear that is sold fits/);
  await page.getByText('Words to search for').waitFor();
  await page.getByText(/spur gear, module 0\.8/).waitFor();
  await page.getByRole('button', { name: /^Put it in place of/ }).click();
  await expectStatus(page, /now stands in place of/);
  await page.getByRole('button', { name: 'What is it?' }).first().click();
  await page.getByText('as this job says').waitFor();
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect.poll(() => saveJob(page)).toEqual(before);
});

test('a gear is added to a train and said to run against another, by the keyboard alone', async () => {
  const page = await openPage();
  await page.getByRole('button', { name: 'Start with my gear' }).click();
  await page.getByRole('heading', { name: 'Which looks like yours?' }).first().waitFor();
  await tabTo(page, /^gear train$/);
  await page.keyboard.press('Enter');
  await expectAnswer(page, /One gear alone/);
  await tabTo(page, /^Gear spur/);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'What gear-2 runs against' }).waitFor();
  await tabTo(page, /^Take it$/);
  await page.keyboard.press('Enter');
  await page.getByText('gear-1 is a gear, alone on its post; it turns gear-2.').waitFor();
  await look(page, 'walk-train-by-keyboard');
  for (let step = 0; step < 2; step++) await page.getByRole('button', { name: /^Undo/ }).click();
  await expectAnswer(page, /One gear alone/);
});

test('the address leads back to the train, and back leads to the gear before', async () => {
  const page = await openPage();
  await openFile(page, 'demo-data/slide-changer.json');
  await expectStatus(page, 'Opened slide-changer.json');
  await page.waitForTimeout(300);
  await page.getByRole('button', { name: 'gear train' }).click();
  await page.locator('.TrainSheet').waitFor();
  expect(new URL(page.url()).hash).toMatch(/\/train\/what-is-it$/);
  const again = await openPage({ beside: page, hash: new URL(page.url()).hash });
  await again.locator('.TrainSheet').waitFor();
  await page.goBack();
  await expect.poll(() => page.locator('.TrainSheet').count()).toBe(0);
});

test('gears turn while that is asked, and stop at a touch where they stand', async () => {
  const page = await openPage({ isStill: false });
  await openTrain(page, 'paper-recorder');
  const turned = page.locator('[data-turns="motor-pinion"]');
  const read = (): Promise<string> => turned.evaluate((one) => getComputedStyle(one).transform);
  const still = await read();
  await page.getByRole('button', { name: 'Turn it' }).click();
  await expect.poll(read).not.toBe(still);
  await page.locator('.TrainSheet').click({ position: { x: 200, y: 200 } });
  await page.getByRole('button', { name: 'Turn it' }).waitFor();
  const stopped = await read();
  await page.waitForTimeout(200);
  expect(await read()).toBe(stopped);
  // The wheel and the pinion go at their ratio: 64 to 16 teeth, the other way round.
  const angles = await page.evaluate(() =>
    ['motor-pinion', 'second-wheel'].map((id) => {
      const element = document.querySelector(`[data-turns="${id}"]`);
      const [animation] = element?.getAnimations() ?? [];
      const timing = animation?.effect?.getComputedTiming();
      return { progress: Number(animation?.currentTime) / Number(timing?.duration) };
    }),
  );
  expect(angles[0].progress / angles[1].progress).toBeCloseTo(4, 6);
});

test('own parts are kept on this machine with their bad rows, looked through, and given back byte for byte', async () => {
  const page = await openPage();
  await openFile(page, 'demo-data/paper-recorder.json');
  await expectStatus(page, 'Opened paper-recorder.json');
  await page.getByText('File', { exact: true }).click();
  await page.getByRole('button', { name: 'My spare parts' }).click();
  await page.getByTestId('add-parts').setInputFiles('demo-data/drawer-of-spares.csv');
  await page.getByText(/rows could not be used/).waitFor();
  await page.getByText(/"twelve" is not a number/).waitFor();
  await page.waitForTimeout(300);
  const again = await openPage({ beside: page, hash: new URL(page.url()).hash });
  await again.getByText('File', { exact: true }).click();
  await again.getByRole('button', { name: 'My spare parts' }).click();
  await again.getByText(/"twelve" is not a number/).waitFor();
  const [file] = await Promise.all([
    again.waitForEvent('download'),
    again.getByRole('button', { name: 'Save this list again' }).click(),
  ]);
  expect(readFileSync(await file.path())).toEqual(readFileSync('demo-data/drawer-of-spares.csv'));
});
