import { spawnSync } from 'node:child_process';
import { type Browser, chromium, type Page } from 'playwright-core';
import { servePage } from '../../src/cli/serve-page.ts';
import { chromiumArgs } from '../page/chromium-args.ts';
import { findFreePort } from '../page/find-free-port.ts';

/** A page of the same address with one button and a script of one line: what any page costs in this browser. */
const bare = `<!doctype html><title>bare</title><button hidden>on</button>
<script type="module">document.querySelector('button').hidden = false</script>`;

/**
 * What a person waits for, in the built page: from opening it in a fresh window to the first answer that can be
 * touched, beside a bare page in the same browser, turn about; and from Enter to the sharpened drawing, the frame that
 * shows it included.
 */
export async function run(brief: boolean): Promise<void> {
  const found = spawnSync(process.execPath, ['tools/find-chromium.mjs'], { encoding: 'utf8' });
  if (found.status !== 0) {
    console.log('page: no Chromium is here, so nothing was measured');
    return;
  }
  const served = await servePage('dist/page', await findFreePort());
  const browser = await chromium.launch({
    executablePath: found.stdout.trim(),
    args: [...chromiumArgs],
  });
  try {
    const rounds = brief ? 1 : 10;
    const first: number[] = [];
    const nothing: number[] = [];
    for (let round = 0; round < rounds; round++) {
      nothing.push(await openBare(browser, served.address));
      first.push(await openFresh(browser, served.address));
    }
    console.log(`page, a fresh window at 1440 × 900, ${rounds} times`);
    tell('opened to the first answer that can be touched', first);
    tell('a bare page', nothing);
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await page.goto(served.address);
    const took = await takeReadings(page, brief ? 2 : 20);
    console.log(`page, one reading after another (across the tips of a 23-tooth gear), ${took.length} times`);
    tell('Enter to the sharpened drawing on screen', took);
  } finally {
    await browser.close();
    await served.stop();
  }
}

async function openFresh(browser: Browser, address: string): Promise<number> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  const start = performance.now();
  await page.goto(address, { waitUntil: 'commit' });
  await page.waitForFunction(
    () =>
      /Metric size/.test(document.querySelector('[data-testid=answer]')?.textContent ?? '') &&
      !document.querySelector('.verdict-working'),
  );
  const took = performance.now() - start;
  await context.close();
  return took;
}

async function openBare(browser: Browser, address: string): Promise<number> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  await page.route('**/*', (route) => route.fulfill({ contentType: 'text/html', body: bare }));
  const start = performance.now();
  await page.goto(address, { waitUntil: 'commit' });
  await page.waitForFunction(() => document.querySelector('button')?.hidden === false);
  const took = performance.now() - start;
  await context.close();
  return took;
}

/** Takes one value after another in the same field; each changes the answer, so each redraws. */
async function takeReadings(page: Page, count: number): Promise<number[]> {
  await page.getByRole('button', { name: 'Start with my gear' }).click();
  await page.getByRole('button', { name: /^Straight teeth/ }).click();
  await page.getByRole('button', { name: /Don.t know/ }).click();
  await page.getByLabel(/^Teeth$/).fill('23');
  await page.keyboard.press('Enter');
  const times: number[] = [];
  for (let k = 0; k < count; k++) {
    if (k > 0)
      await page
        .getByRole('button', { name: /^across the tips/ })
        .first()
        .click();
    const field = page.getByLabel(/What the caliper shows/);
    await field.fill(k % 2 === 0 ? '12.44' : '19.92');
    // The wait is set up first; the clock starts with the key.
    const drawn = page.evaluate(
      () =>
        new Promise<number>((done) => {
          const paths = (): string =>
            [...document.querySelectorAll('.frame-sheet svg path')]
              .map((one) => one.getAttribute('d'))
              .join();
          const before = paths();
          let start = 0;
          const look = (): void => {
            const isDrawn = paths() !== before && !document.querySelector('.verdict-working');
            if (isDrawn) requestAnimationFrame(() => done(performance.now() - start));
            else requestAnimationFrame(look);
          };
          window.addEventListener(
            'keydown',
            () => {
              start = performance.now();
              requestAnimationFrame(look);
            },
            { capture: true, once: true },
          );
        }),
    );
    await field.press('Enter');
    times.push(await drawn);
  }
  return times;
}

function tell(what: string, times: readonly number[]): void {
  const sorted = [...times].sort((a, b) => a - b);
  console.log(
    `  ${what}: median ${sorted[Math.floor(sorted.length / 2)].toFixed(0)} ms (${sorted[0].toFixed(0)} to ${sorted[sorted.length - 1].toFixed(0)})`,
  );
}
