import type { Page } from 'playwright-core';
import { expect } from 'vitest';

export const filmSplicer = 'demo-data/film-splicer.json';

/** What a person does on the page, by the words that they see. */
export const openFile = (page: Page, file: string): Promise<void> =>
  page.getByTestId('open-file').setInputFiles(file);

export async function chooseInMenu(page: Page, words: string): Promise<void> {
  await page.getByText('File', { exact: true }).click();
  await page.getByRole('button', { name: words }).click();
}

export const addGear = (page: Page): Promise<void> => chooseInMenu(page, 'Add a gear');

/** The words that say what the page did, and what it could not do. */
export const readStatus = async (page: Page): Promise<string> =>
  (await page.locator('.said').textContent()) ?? '';

export async function expectStatus(page: Page, words: string | RegExp): Promise<void> {
  await expect.poll(() => readStatus(page), { timeout: 20_000 }).toMatch(words);
}

/** Without the whole train, which stands before the first gear. */
export const countGears = (page: Page): Promise<number> =>
  page.locator('.train-gear', { hasNotText: /^gear train$/ }).count();

/** A page with the film splicer as a job of its own, open and kept. */
export async function openOwnJob(page: Page): Promise<void> {
  await openFile(page, filmSplicer);
  await expectStatus(page, 'Opened film-splicer.json');
  await expect.poll(async () => (await readKept(page)).length).toBe(1);
}

export interface KeptHere {
  readonly id: string;
  readonly title: string;
  readonly gears: number;
}

/** What lies in this browser's storage, past the page. */
export function readKept(page: Page): Promise<KeptHere[]> {
  return page.evaluate(
    () =>
      new Promise<KeptHere[]>((resolve, reject) => {
        const opening = indexedDB.open('sparetooth');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const getting = opening.result.transaction('jobs').objectStore('jobs').getAll();
          getting.onsuccess = () => {
            opening.result.close();
            resolve(
              getting.result.map(({ id, job }) => ({ id, title: job.title, gears: job.wheels?.length ?? 0 })),
            );
          };
        };
      }),
  );
}
