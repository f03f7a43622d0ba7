import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** What the slip answers now. */
export async function readAnswer(page: Page): Promise<string> {
  return ((await page.getByTestId('answer').textContent()) ?? '').trim();
}

/** Waits until the slip answers in these words. */
export async function expectAnswer(page: Page, words: RegExp): Promise<void> {
  await page.waitForFunction(
    ([source]) =>
      new RegExp(source).test(document.querySelector('[data-testid=answer]')?.textContent ?? '') &&
      !document.querySelector('.verdict-working'),
    [words.source],
    { timeout: 20_000 },
  );
}

/** Which element has the focus, as a person would call it: its label or text. */
export async function readFocus(page: Page): Promise<string> {
  return page.evaluate(() => {
    const element = document.activeElement as HTMLInputElement | null;
    return (
      element?.labels?.[0]?.textContent ?? element?.getAttribute('aria-label') ?? element?.textContent ?? ''
    );
  });
}

/** Presses Tab until what has the focus is called so; fails after more steps than a page has. */
export async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let step = 0; step < 80; step++) {
    await page.keyboard.press('Tab');
    if (name.test(await readFocus(page))) return;
  }
  expect(await readFocus(page), `nothing called ${name} takes the focus`).toMatch(name);
}
