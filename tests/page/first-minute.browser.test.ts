import { expect, test } from 'vitest';
import { look, openPage } from './open-page.ts';
import { expectAnswer, readAnswer, tabTo } from './walk.ts';

test('a first visit shows an invented gear in focus, said to be invented, and one way to start', async () => {
  const page = await openPage();
  await expectAnswer(page, /Metric size 0\.5, 10 teeth/);
  expect(await page.getByText('An invented example').count()).toBeGreaterThan(0);
  expect(await page.getByRole('button', { name: 'Start with my gear' }).count()).toBe(1);
});

test('by keyboard alone a newcomer gets from nothing to a first answer', async () => {
  const page = await openPage();
  await expectAnswer(page, /Metric size/);
  await tabTo(page, /^Start with my gear$/);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Which looks like yours?' }).first().waitFor();
  await tabTo(page, /^Straight teeth/);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'What happened to it?' }).first().waitFor();
  await tabTo(page, /^Worn/);
  await page.keyboard.press('Space');
  await tabTo(page, /^Go on$/);
  await page.keyboard.press('Enter');
  // From here on the field takes the focus by itself: a caliper that types like a keyboard just works.
  await page.getByLabel(/^Teeth$/).waitFor();
  await page.keyboard.type('24');
  await page.keyboard.press('Enter');
  await page.getByLabel(/What the caliper shows/).waitFor();
  await page.keyboard.type('12,98 12.97 13');
  await page.keyboard.press('Enter');
  await expectAnswer(page, /metric size 0\.5, 24 teeth|Metric size 0\.5, 24 teeth/);
  await look(page, 'keyboard-first-answer');
});

test('by touch on a tablet standing upright a newcomer gets to a first answer', async () => {
  const page = await openPage({ width: 768, height: 1024, touch: true });
  await expectAnswer(page, /Metric size/);
  await page.getByRole('button', { name: 'Start with my gear' }).tap();
  await page.getByRole('button', { name: /^Straight teeth/ }).tap();
  await page.getByRole('button', { name: /^Worn/ }).tap();
  await page.getByRole('button', { name: 'Go on' }).tap();
  await page.getByLabel(/^Teeth$/).fill('24');
  await page.getByRole('button', { name: 'Take it' }).tap();
  await page.getByLabel(/What the caliper shows/).fill('12.98');
  await page.getByRole('button', { name: 'Take it' }).tap();
  await expectAnswer(page, /size 0\.5, 24 teeth/);
  await look(page, 'touch-first-answer');
});

test('what is typed and not taken is still there after the window was closed', async () => {
  const page = await openPage();
  await page.getByRole('button', { name: 'Start with my gear' }).click();
  await page.getByRole('button', { name: /^Straight teeth/ }).click();
  await page.getByRole('button', { name: /Don.t know/ }).click();
  await page.getByLabel(/^Teeth$/).fill('2x');
  await page.waitForTimeout(300);
  const { hash } = new URL(page.url());
  const again = await openPage({ beside: page, hash });
  await expect.poll(() => again.getByLabel(/^Teeth$/).inputValue()).toBe('2x');
});

test('a wrong text stays in its field, with what is wrong and what to do', async () => {
  const page = await openPage();
  await page.getByRole('button', { name: 'Start with my gear' }).click();
  await page.getByRole('button', { name: /^Straight teeth/ }).click();
  await page.getByRole('button', { name: /Don.t know/ }).click();
  await page.getByLabel(/^Teeth$/).fill('two');
  await page.keyboard.press('Enter');
  await page.getByText('Type a whole number, such as 23.').waitFor();
  expect(await page.getByLabel(/^Teeth$/).inputValue()).toBe('two');
  await page.getByLabel(/^Teeth$/).fill('24');
  await page.keyboard.press('Enter');
  await page.getByLabel(/What the caliper shows/).fill('1.2.3');
  await page.keyboard.press('Enter');
  await page.getByText(/more than one point/).waitFor();
  expect(await page.getByLabel(/What the caliper shows/).inputValue()).toBe('1.2.3');
});

test('undo and redo bring every step back, also after the window was closed', async () => {
  const page = await openPage();
  await page.getByRole('button', { name: 'Start with my gear' }).click();
  await page.getByRole('button', { name: /^Straight teeth/ }).click();
  await page.getByRole('button', { name: /Don.t know/ }).click();
  await page.getByLabel(/^Teeth$/).fill('24');
  await page.keyboard.press('Enter');
  await page.getByLabel(/What the caliper shows/).fill('12.98');
  await page.keyboard.press('Enter');
  await expectAnswer(page, /0\.5, 24 teeth/);
  const full = await readAnswer(page);
  await page.waitForTimeout(300);
  const again = await openPage({ beside: page, hash: new URL(page.url()).hash });
  await expectAnswer(again, /0\.5, 24 teeth/);
  for (let step = 0; step < 4; step++) await again.getByRole('button', { name: /^Undo/ }).click();
  await again.getByRole('heading', { name: 'Which looks like yours?' }).first().waitFor();
  for (let step = 0; step < 4; step++) await again.getByRole('button', { name: /^Redo/ }).click();
  await expectAnswer(again, /0\.5, 24 teeth/);
  expect(await readAnswer(again)).toBe(full);
});
