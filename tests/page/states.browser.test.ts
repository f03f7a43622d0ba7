import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { chooseInMenu, expectStatus, openFile } from './drive-page.ts';
import { look, openPage, type PageOptions } from './open-page.ts';
import { expectAnswer } from './walk.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** A table, a laptop, a tablet upright, a telephone. */
const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 768, height: 1024 },
  { width: 390, height: 844 },
] as const;

interface State {
  readonly name: string;
  readonly options?: PageOptions;
  readonly reach: (page: Page) => Promise<void>;
}

const openDemo =
  (name: string) =>
  async (page: Page): Promise<void> => {
    await openFile(page, `demo-data/${name}.json`);
    await expectStatus(page, `Opened ${name}.json`);
    await expectAnswer(page, /./);
  };

const startOwn = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Start with my gear' }).click();
  await page.getByRole('heading', { name: 'Which looks like yours?' }).first().waitFor();
};

const startCount = async (page: Page): Promise<void> => {
  await startOwn(page);
  await page.getByRole('button', { name: /^Straight teeth/ }).click();
  await page.getByRole('button', { name: /Don.t know/ }).click();
  await page.getByLabel(/^Teeth$/).waitFor();
};

const makePart = async (page: Page, name: string): Promise<void> => {
  await openDemo(name)(page);
  await page.getByRole('button', { name: 'How to make it' }).first().click();
  await page.getByRole('button', { name: 'My resin printer' }).click();
  await page.getByRole('button', { name: /^Save the folder/ }).waitFor();
  await expectAnswer(page, /part of/);
};

/** A made part with its readings: the middle wheel of an invented recorder, a little fat at the teeth. */
const checkPart = async (page: Page, readings: readonly object[]): Promise<void> => {
  await expectAnswer(page, /Metric size/);
  const job = JSON.parse(readFileSync('demo-data/paper-recorder.json', 'utf8'));
  const wheel = job.wheels.find((one: { id: string }) => one.id === 'middle-wheel');
  wheel.made = {
    process: 'resin',
    material: 'resin',
    spec: { teeth: 64, moduleMm: 0.5, thinningMm: 0.05, bore: { shape: 'round', diameterMm: 2.55 } },
    readings,
  };
  await page.getByTestId('open-file').setInputFiles({
    name: 'made.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(job)),
  });
  await expectStatus(page, 'Opened made.json');
  await page.getByRole('button', { name: 'middle wheel, split', exact: true }).click();
  await page.getByRole('button', { name: 'Is the new one right?' }).click();
};

const madeReadings = [
  { of: 'span', teeth: 8, mm: [11.54, 11.55] },
  { of: 'outside', mm: [33.04, 33.06] },
  { of: 'bore', goesMm: 2.5, stopsMm: 2.6 },
];

const openTrain =
  (name: string) =>
  async (page: Page): Promise<void> => {
    await openDemo(name)(page);
    await page.getByRole('button', { name: 'gear train' }).click();
    await page.locator('.TrainSheet').waitFor();
  };

const askWhatFits = async (page: Page, name: string, gear: string): Promise<void> => {
  await openDemo(name)(page);
  await page.getByRole('button', { name: gear, exact: true }).click();
  await page.getByRole('button', { name: 'What fits?' }).first().click();
  await page.locator('.ProofSheet').waitFor();
  await expectAnswer(page, /fits/);
};

const states: readonly State[] = [
  { name: 'first-visit', reach: (page) => expectAnswer(page, /Metric size 0\.5/) },
  { name: 'which-looks-like-yours', reach: startOwn },
  {
    name: 'kind-not-covered',
    reach: async (page) => {
      await startOwn(page);
      await page.getByRole('button', { name: /^Cone/ }).click();
      await expectAnswer(page, /Stop here/);
    },
  },
  {
    name: 'what-happened',
    reach: async (page) => {
      await startOwn(page);
      await page.getByRole('button', { name: /^Straight teeth/ }).click();
      await page.getByRole('button', { name: /^Split/ }).click();
    },
  },
  { name: 'empty-count-the-teeth', reach: startCount },
  {
    name: 'error-under-the-field',
    reach: async (page) => {
      await startCount(page);
      await page.getByLabel(/^Teeth$/).fill('two dozen');
      await page.keyboard.press('Enter');
      await page.getByText(/whole number/).waitFor();
    },
  },
  {
    name: 'all-it-could-still-be',
    reach: async (page) => {
      await startCount(page);
      await page.getByLabel(/^Teeth$/).fill('23');
      await page.keyboard.press('Enter');
      await expectAnswer(page, /Most likely/);
    },
  },
  {
    name: 'typing-a-reading',
    reach: async (page) => {
      await startCount(page);
      await page.getByLabel(/^Teeth$/).fill('23');
      await page.keyboard.press('Enter');
      await page.getByLabel(/What the caliper shows/).fill('12.43 12.45');
    },
  },
  {
    name: 'working',
    // The worker is held back once the page is up, so that the old answer stands dimmed.
    options: {
      prepare: () => {
        const post = Worker.prototype.postMessage;
        let sent = 0;
        Worker.prototype.postMessage = function (this: Worker, ...given: unknown[]) {
          sent++;
          if (sent <= 1) post.apply(this, given as Parameters<typeof post>);
        } as typeof post;
      },
    },
    reach: async (page) => {
      await expectAnswer(page, /Metric size/);
      await page
        .getByRole('button', { name: /^across the tips/ })
        .first()
        .click();
      await page.getByLabel(/What the caliper shows/).fill('6.5');
      await page.keyboard.press('Enter');
      await page.locator('.verdict-working').waitFor();
    },
  },
  { name: 'undecided-ending', reach: openDemo('film-splicer') },
  { name: 'likely-split-gear', reach: openDemo('coin-counter') },
  { name: 'a-third-of-the-teeth-gone', reach: openDemo('chart-recorder') },
  { name: 'inch-gear', reach: openDemo('label-printer') },
  { name: 'slip', reach: openDemo('weather-drum') },
  {
    name: 'bad-file',
    reach: async (page) => {
      await expectAnswer(page, /Metric size/);
      await page.getByTestId('open-file').setInputFiles({
        name: 'notes.txt',
        mimeType: 'text/plain',
        buffer: Buffer.from('24 teeth, 12.98 across'),
      });
      await expectStatus(page, /after the end of the job|JSON/);
    },
  },
  {
    name: 'storage-refused',
    options: {
      prepare: () => {
        Object.defineProperty(window, 'indexedDB', { value: undefined });
      },
    },
    reach: (page) => expectStatus(page, "This browser won't keep your work"),
  },
  { name: 'make', reach: (page) => makePart(page, 'slide-projector') },
  { name: 'make-trial', reach: (page) => makePart(page, 'film-splicer') },
  {
    name: 'who-makes-it',
    reach: async (page) => {
      await openDemo('slide-projector')(page);
      await page.getByRole('button', { name: 'How to make it' }).first().click();
      await page.getByRole('heading', { name: 'Who makes it?' }).waitFor();
    },
  },
  {
    name: 'make-too-fine',
    reach: async (page) => {
      await openDemo('coin-counter')(page);
      await page.getByRole('button', { name: 'How to make it' }).first().click();
      await page.getByRole('button', { name: 'My filament printer' }).click();
      await expectAnswer(page, /too fine/);
    },
  },
  {
    name: 'make-everything-unfolded',
    reach: async (page) => {
      await makePart(page, 'coin-counter');
      for (const words of ['Message to paste', 'Shopping list', 'Single files'])
        await page.locator('summary', { hasText: words }).click();
    },
  },
  {
    name: 'making-sheet',
    reach: async (page) => {
      await makePart(page, 'coin-counter');
      await page.getByRole('button', { name: 'Making sheet' }).click();
      await page.locator('.sheet-page').first().waitFor();
    },
  },
  {
    name: 'coupon-to-make',
    reach: async (page) => {
      await makePart(page, 'coin-counter');
      await page.getByRole('button', { name: 'Measure my printer' }).click();
      await page.getByRole('button', { name: 'Save coupon.3mf' }).waitFor();
    },
  },
  {
    name: 'coupon-to-read',
    reach: async (page) => {
      await makePart(page, 'coin-counter');
      await page.getByRole('button', { name: 'Measure my printer' }).click();
      await page.getByRole('button', { name: /^It is made/ }).click();
      await page.getByLabel(/What the caliper shows/).fill('5.1');
      await page.keyboard.press('Enter');
      await expectAnswer(page, /My printer, as measured/);
      await page.getByRole('heading', { name: /Across the 10 mm width/ }).waitFor();
    },
  },
  {
    name: 'new-one-to-measure',
    reach: async (page) => {
      await checkPart(page, []);
      await page.getByLabel(/What the caliper shows/).waitFor();
    },
  },
  {
    name: 'new-one-checked',
    reach: async (page) => {
      await checkPart(page, madeReadings);
      await expectAnswer(page, /The new one/);
      await page.getByRole('heading', { name: 'For the next one' }).waitFor();
    },
  },
  {
    name: 'new-one-rolled',
    reach: async (page) => {
      await checkPart(page, madeReadings);
      await page.getByRole('button', { name: 'Rolled with its mate' }).click();
      await page.locator('.ProofSheet').waitFor();
    },
  },
  {
    name: 'repair-record',
    reach: async (page) => {
      await checkPart(page, madeReadings);
      await page.getByRole('heading', { name: 'For the next one' }).waitFor();
      await page.getByRole('button', { name: 'Repair record' }).first().click();
      await page.locator('.record-text').first().waitFor();
    },
  },
  {
    name: 'solid-cut-open',
    reach: async (page) => {
      await makePart(page, 'coin-counter');
      await page.getByRole('button', { name: 'Show the solid' }).click();
      await page.getByRole('button', { name: 'Cut it open' }).click();
      await page
        .getByText(/Cut open along its axis/)
        .first()
        .waitFor({ state: 'attached' });
    },
  },
  {
    name: 'solid-without-webgl',
    options: {
      prepare: () => {
        HTMLCanvasElement.prototype.getContext = () => null;
      },
    },
    reach: async (page) => {
      await makePart(page, 'coin-counter');
      await page.getByRole('button', { name: 'Show the solid' }).click();
      await page.getByText(/WebGL/).waitFor();
    },
  },
  {
    name: 'make-not-yet',
    reach: async (page) => {
      await startCount(page);
      await page.getByRole('button', { name: 'How to make it' }).first().click();
      await page.getByRole('button', { name: 'My resin printer' }).click();
      await expectAnswer(page, /Not yet/);
    },
  },
  {
    name: 'kit',
    reach: async (page) => {
      await openDemo('coin-counter')(page);
      await chooseInMenu(page, 'My tools and this machine');
    },
  },
  {
    name: 'all-jobs',
    reach: async (page) => {
      await openDemo('coin-counter')(page);
      await chooseInMenu(page, 'All jobs on this machine');
      await page.locator('.jobs-list').getByText('Coin counter, sorter gear').waitFor();
    },
  },
  {
    name: 'names',
    reach: async (page) => {
      await openDemo('coin-counter')(page);
      await chooseInMenu(page, 'Name this gear and job');
    },
  },
  {
    name: 'before-you-take-it-apart',
    reach: async (page) => {
      await expectAnswer(page, /Metric size/);
      await chooseInMenu(page, 'Before you take it apart');
    },
  },
  {
    name: 'lay-it-on-the-drawing',
    reach: async (page) => {
      await openDemo('coin-counter')(page);
      await page
        .getByRole('button', { name: /^teeth/ })
        .first()
        .click();
      await page.getByRole('button', { name: 'Lay it on the drawing' }).click();
      await page.getByRole('heading', { name: 'Lay it on the drawing' }).waitFor();
    },
  },
  { name: 'train', reach: openTrain('slide-changer') },
  {
    name: 'train-troubles',
    reach: async (page) => {
      await expectAnswer(page, /Metric size/);
      const spec = { teeth: 20, moduleMm: 0.5 };
      const job = {
        format: 'sparetooth-job',
        version: 1,
        title: 'Three gears in a ring',
        wheels: ['one', 'two', 'three'].map((id) => ({ id, spec })),
        meshes: [
          { driver: 'one', driven: 'two', centerMm: 10 },
          { driver: 'two', driven: 'three', centerMm: 10 },
          { driver: 'three', driven: 'one', centerMm: 10 },
        ],
      };
      await page.getByTestId('open-file').setInputFiles({
        name: 'ring.json',
        mimeType: 'application/json',
        buffer: Buffer.from(JSON.stringify(job)),
      });
      await expectStatus(page, 'Opened ring.json');
      await page.getByRole('button', { name: 'gear train' }).click();
      await expectAnswer(page, /can't all turn together/);
    },
  },
  {
    name: 'lost-gear',
    reach: async (page) => {
      await openDemo('paper-recorder')(page);
      await page.getByRole('button', { name: 'pinion on the middle wheel, lost', exact: true }).click();
      await page.getByLabel('Across the post').waitFor();
    },
  },
  {
    name: 'train-pair-rolled',
    reach: async (page) => {
      await openTrain('paper-recorder')(page);
      await page.getByRole('button', { name: 'see it rolled' }).first().click();
      await page.locator('.ProofSheet').waitFor();
    },
  },
  {
    name: 'train-of-one-gear',
    reach: async (page) => {
      await expectAnswer(page, /Metric size/);
      await page.getByRole('button', { name: 'gear train' }).click();
      await expectAnswer(page, /One gear alone/);
    },
  },
  {
    name: 'train-turning',
    options: { isStill: false },
    reach: async (page) => {
      await openTrain('slide-changer')(page);
      await page.getByRole('button', { name: 'Turn it' }).click();
      await page.getByText(/slower than the machine/).waitFor();
    },
  },
  {
    name: 'train-what-is-wanted',
    reach: async (page) => {
      await openTrain('chart-recorder')(page);
      await page.getByText('Something else instead').click();
      await page.getByRole('button', { name: 'what should come out?' }).click();
    },
  },
  {
    name: 'train-what-it-runs-against',
    reach: async (page) => {
      await openTrain('slide-changer')(page);
      await page.getByText('Something else instead').click();
      await page.getByRole('button', { name: 'add a gear' }).last().click();
      await page.getByRole('button', { name: /^Belt wheel/ }).click();
      await page.getByRole('heading', { name: /runs against$/ }).waitFor();
    },
  },
  {
    name: 'train-what-fits',
    reach: async (page) => {
      await openTrain('paper-recorder')(page);
      await page.getByRole('button', { name: 'What fits?' }).first().click();
      await expectAnswer(page, /the speed/);
    },
  },
  { name: 'what-fits', reach: (page) => askWhatFits(page, 'paper-recorder', 'middle wheel, split') },
  {
    name: 'proof-jams',
    reach: async (page) => {
      await askWhatFits(page, 'paper-recorder', 'middle wheel, split');
      await page.locator('.fit-row', { hasText: 'inch size 48' }).first().click();
      await page.getByText(/^Binds here/).waitFor();
    },
  },
  {
    name: 'own-parts-with-bad-rows',
    reach: async (page) => {
      await openDemo('coin-counter')(page);
      await chooseInMenu(page, 'My spare parts');
      await page.getByTestId('add-parts').setInputFiles('demo-data/drawer-of-spares.csv');
      await page.getByText(/rows could not be used/).waitFor();
    },
  },
  {
    name: 'menu',
    reach: async (page) => {
      await expectAnswer(page, /Metric size/);
      await page.locator('summary', { hasText: 'File' }).click();
    },
  },
];

/** What axe finds, in words that say where; nothing is what it has to be. */
async function listFaults(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe);
  return page.evaluate(async () => {
    const { run } = (window as unknown as { axe: { run: (options: object) => Promise<AxeResults> } }).axe;
    const { violations } = await run({ resultTypes: ['violations'] });
    return violations.flatMap((one) =>
      one.nodes.map((node) => `${one.id}: ${one.help}: ${node.html.slice(0, 120)}`),
    );
  });
}

interface AxeResults {
  readonly violations: readonly {
    readonly id: string;
    readonly help: string;
    readonly nodes: readonly { readonly html: string }[];
  }[];
}

/** The page is never wider than its window: nothing is to be scrolled sideways. */
const findOverflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Targets that a finger misses: buttons and fields below 48 px, apart from words in a line. */
const listSmallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        'button, summary, select, input:not([type=radio], [type=checkbox], .unseen)',
      ),
    ]
      .filter((one) => one.checkVisibility() && !one.classList.contains('unseen'))
      .filter((one) => one.getBoundingClientRect().height < 47.5)
      .map((one) => `${one.tagName} ${one.textContent?.slice(0, 40)} ${one.getBoundingClientRect().height}`),
  );

describe.each(states)('$name', ({ name, options, reach }) => {
  test('pleases axe in light and dark, fits every window, and has targets for fingers', async () => {
    const page = await openPage({ ...options });
    await reach(page);
    for (const size of sizes) {
      await page.setViewportSize(size);
      // One frame for the layout to follow the window.
      await page.evaluate(
        () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
      );
      expect(await findOverflow(page), `${size.width} px`).toBe(0);
      expect(await listSmallTargets(page), `${size.width} px`).toEqual([]);
      await page.evaluate(() => window.scrollTo(0, 0));
      await look(page, name);
      // Light on the table, dark on the telephone: each state is held to both, each once.
      if (size.width === 1440) expect(await listFaults(page), 'light').toEqual([]);
      if (size.width !== 390) continue;
      await page.emulateMedia({ colorScheme: 'dark' });
      expect(await listFaults(page), 'dark').toEqual([]);
      await look(page, `${name}-dark`);
    }
  });
});
