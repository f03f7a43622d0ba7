import { expect, inject, test } from 'vitest';
import { openBrowser, openPage, watch } from './open-page.ts';

// What watches over every other test has to see what it is there for.
test.each([
  ['an error on the console', () => console.error('planted'), /^console: planted$/m],
  [
    'an error that nobody caught',
    () =>
      void setTimeout(() => {
        throw new Error('planted');
      }),
    /^error: planted$/,
  ],
  [
    'a request to another address',
    () => void fetch('http://127.0.0.1:9/planted').catch(() => {}),
    /planted|connect-src/,
  ],
  [
    'a picture from another address',
    () => {
      new Image().src = 'http://127.0.0.1:9/planted.png';
    },
    /img-src/,
  ],
  ['a file that is not there', () => void fetch('/planted').catch(() => {}), /^404 for .*planted$/m],
])('the watch sees %s', async (_, plant, expected) => {
  const address = inject('keepAddress');
  const page = await (await openBrowser()).newPage();
  const faults = watch(page, address);
  await page.goto(address);
  expect(faults).toEqual([]);
  await page.evaluate(plant);
  await expect.poll(() => faults.join('\n')).toMatch(expected);
  await page.close();
});

test.fails('a fault fails the test that opened the page', async () => {
  const page = await openPage({ address: inject('keepAddress') });
  await page.evaluate(() => console.error('planted'));
});
