import type { Page } from 'playwright-core';
import { describe, expect, inject, test } from 'vitest';
import type { Keeper } from '../../src/page/keep/keeper.ts';
import type { OpenJob } from '../../src/page/state/open-job.ts';
import { openPage, type PageOptions } from './open-page.ts';

declare global {
  interface Window {
    keeper: Keeper;
    heard: string[];
  }
}

/** A window with its own keeper; another one beside it shares its storage. */
async function openWindow(options: PageOptions = {}): Promise<Page> {
  const page = await openPage({ address: inject('keepAddress'), ...options });
  await startKeeper(page);
  return page;
}

async function startKeeper(page: Page): Promise<void> {
  await page.evaluate(async () => {
    window.keeper = await window.openKeeper();
    window.heard = [];
    window.keeper.onSavedElsewhere((id) => window.heard.push(id));
  });
}

/** A job after two changes, the second undone. */
function openJob(id: string, title: string, revision = 0): OpenJob {
  const step = (text: string) => ({ format: 'sparetooth-job', version: 1, title: text }) as const;
  return {
    id,
    revision,
    job: { ...step(title), wheels: [{ id: 'gear-1', readings: [{ of: 'outside', mm: [12.44, 12.46] }] }] },
    past: [{ job: step('before'), what: 'the reading' }],
    future: [{ job: step('after'), what: 'the count' }],
  };
}

const save = (page: Page, open: OpenJob) => page.evaluate((one) => window.keeper.save(one), open);
const load = (page: Page, id: string) => page.evaluate((one) => window.keeper.load(one), id);
const condition = (page: Page) => page.evaluate(() => window.keeper.condition());
const list = (page: Page) => page.evaluate(() => window.keeper.list());

/** What lies in storage, past the keeper. */
function stored(page: Page, id: string): Promise<unknown> {
  return page.evaluate(
    (key) =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('sparetooth');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const getting = opening.result.transaction('jobs').objectStore('jobs').get(key);
          getting.onsuccess = () => {
            opening.result.close();
            resolve(getting.result);
          };
        };
      }),
    id,
  );
}

/** Puts a record into storage past the keeper, as another version of the page would have. */
async function plant(page: Page, record: unknown): Promise<void> {
  await page.evaluate(
    (value) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('sparetooth');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const putting = opening.result.transaction('jobs', 'readwrite');
          putting.objectStore('jobs').put(value);
          putting.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    record,
  );
}

/** The database itself made by a page of a later version. */
function makeNewer(): void {
  const opening = indexedDB.open('sparetooth', 99);
  opening.onupgradeneeded = () => {
    opening.result.createObjectStore('jobs', { keyPath: 'id' }).put({ id: 'theirs', format: 9 });
  };
  opening.onsuccess = () => opening.result.close();
}

describe('what is saved', () => {
  test('comes back in another window with its undo history, and is listed', async () => {
    const page = await openWindow();
    expect(await condition(page)).toBe('kept');
    const open = openJob('a', 'Slide projector');
    expect(await save(page, open)).toEqual({ outcome: 'saved', revision: 1 });
    const other = await openWindow({ beside: page });
    expect(await load(other, 'a')).toEqual({ ...open, revision: 1 });
    const [summary] = await list(other);
    expect(summary).toMatchObject({ id: 'a', title: 'Slide projector', gears: 1 });
    expect(Date.now() - summary.changed).toBeLessThan(60_000);
    expect(await load(other, 'nothing')).toBeUndefined();
  });

  test('is there after the tab was killed the moment the save was done', async () => {
    const page = await openWindow();
    const keeping = await openWindow({ beside: page });
    await save(page, openJob('a', 'Before the crash'));
    await page.close({ runBeforeUnload: false });
    const next = await openWindow({ beside: keeping });
    expect((await load(next, 'a'))?.job.title).toBe('Before the crash');
  });

  test('is there after the process of its window was killed', async () => {
    const page = await openWindow();
    const doomed = await page.context().newPage();
    await doomed.goto(inject('keepAddress'));
    await startKeeper(doomed);
    expect((await save(doomed, openJob('a', 'Before the crash'))).outcome).toBe('saved');
    const crashed = doomed.waitForEvent('crash');
    doomed.goto('chrome://crash').catch(() => {});
    await crashed;
    await doomed.close();
    expect((await load(page, 'a'))?.job.title).toBe('Before the crash');
  });

  test('is gone, drafts too, once it is removed', async () => {
    const page = await openWindow();
    await save(page, openJob('a', 'One'));
    await save(page, openJob('b', 'Two'));
    await page.evaluate(() => window.keeper.keepDrafts('a', { outside: '12.4' }));
    await page.evaluate(() => window.keeper.remove('a'));
    expect((await list(page)).map(({ id }) => id)).toEqual(['b']);
    expect(await stored(page, 'a')).toBeUndefined();
    expect(await page.evaluate(() => window.keeper.loadDrafts('a'))).toEqual({});
  });

  test('holds a hundred steps of undo without growing a hundredfold', async () => {
    const page = await openWindow();
    const sizes = await page.evaluate(
      async (open) => {
        const readings = Array.from({ length: 300 }, (_, k) => ({
          of: 'span' as const,
          teeth: 2,
          mm: 2 + k / 1000,
        }));
        const job = { ...open.job, wheels: [{ id: 'gear-1', readings }] };
        const steps = Array.from({ length: 100 }, (_, k) => ({
          job: { ...job, title: `step ${k}` },
          what: `step ${k}`,
        }));
        const used = async () => (await navigator.storage.estimate()).usage ?? 0;
        const before = await used();
        const saved = await window.keeper.save({ ...open, job, past: steps, future: [] });
        const back = await window.keeper.load(open.id);
        return {
          saved,
          past: back?.past.length,
          bytes: (await used()) - before,
          one: JSON.stringify(job).length,
        };
      },
      openJob('a', 'Long'),
    );
    expect(sizes.saved).toEqual({ outcome: 'saved', revision: 1 });
    expect(sizes.past).toBe(100);
    expect(sizes.bytes).toBeLessThan(20 * sizes.one);
  });
});

describe('two windows on one job', () => {
  test('never overwrite each other: the later one is told, and gets what the other saved', async () => {
    const one = await openWindow();
    const two = await openWindow({ beside: one });
    await save(one, openJob('a', 'Start'));
    expect(await save(two, openJob('a', 'Theirs', 1))).toEqual({ outcome: 'saved', revision: 2 });
    const came = await save(one, openJob('a', 'Mine', 1));
    expect(came).toEqual({ outcome: 'elsewhere', theirs: openJob('a', 'Theirs', 2) });
    expect(await stored(one, 'a')).toMatchObject({ revision: 2, job: { title: 'Theirs' } });
    // Asking again does not wear it down, and what the window loads meanwhile is no leave to overwrite.
    await load(one, 'a');
    expect((await save(one, openJob('a', 'Mine', 1))).outcome).toBe('elsewhere');
    expect(await save(one, openJob('a', 'Mine, on theirs', 2))).toEqual({ outcome: 'saved', revision: 3 });
  });

  test('hear of each other, not of themselves', async () => {
    const one = await openWindow();
    const two = await openWindow({ beside: one });
    await save(one, openJob('a', 'Start'));
    await expect.poll(() => two.evaluate(() => window.heard)).toEqual(['a']);
    expect(await one.evaluate(() => window.heard)).toEqual([]);
  });

  test('of a hundred saves at once from both, none is lost unsaid', async () => {
    const one = await openWindow();
    const two = await openWindow({ beside: one });
    await save(one, openJob('a', 'Start'));
    const race = (page: Page, who: string) =>
      page.evaluate(
        async ([open, name]) => {
          const said: string[] = [];
          let revision = 1;
          for (let k = 0; k < 50; k++) {
            const came = await window.keeper.save({
              ...open,
              revision,
              job: { ...open.job, title: `${name} ${k}` },
            });
            if (came.outcome === 'saved') said.push(`${came.revision} ${name} ${k}`);
            revision = came.outcome === 'saved' ? came.revision : revision;
            if (came.outcome === 'elsewhere') revision = came.theirs.revision;
          }
          return said;
        },
        [openJob('a', ''), who] as const,
      );
    const said = (await Promise.all([race(one, 'one'), race(two, 'two')])).flat();
    const revisions = said.map((line) => Number.parseInt(line, 10)).sort((a, b) => a - b);
    expect(new Set(revisions).size).toBe(revisions.length);
    expect(revisions).toEqual(revisions.map((_, k) => k + 2));
    const last = said.find((line) => line.startsWith(`${revisions.at(-1)} `));
    expect(await stored(one, 'a')).toMatchObject({ job: { title: last?.replace(/^\d+ /, '') } });
  });

  test('a window that types on while it saves is not taken for another one', async () => {
    const page = await openWindow();
    const outcomes = await page.evaluate(
      (open) =>
        Promise.all(
          ['a', 'b', 'c'].map((title) => window.keeper.save({ ...open, job: { ...open.job, title } })),
        ),
      openJob('a', ''),
    );
    expect(outcomes.map(({ outcome }) => outcome)).toEqual(['saved', 'saved', 'saved']);
    expect(await stored(page, 'a')).toMatchObject({ revision: 3, job: { title: 'c' } });
  });

  test('keep what was typed into different fields of either', async () => {
    const one = await openWindow();
    const two = await openWindow({ beside: one });
    await one.evaluate(() => window.keeper.keepDrafts('a', { outside: '12.4' }));
    await two.evaluate(() => window.keeper.keepDrafts('a', { root: '9.' }));
    await one.evaluate(() => window.keeper.keepDrafts('a', { outside: '12.44' }));
    expect(await two.evaluate(() => window.keeper.loadDrafts('a'))).toEqual({ outside: '12.44', root: '9.' });
    await one.evaluate(() => window.keeper.keepDrafts('a', {}));
    expect(await two.evaluate(() => window.keeper.loadDrafts('a'))).toEqual({ root: '9.' });
    await one.evaluate(() => window.keeper.keepSettings({ unit: 'in' }));
    await two.evaluate(() => window.keeper.keepSettings({ mirrored: true }));
    await two.evaluate(() => window.keeper.keepLastOpen('a'));
    expect(await one.evaluate(() => window.keeper.loadSettings())).toEqual({ unit: 'in', mirrored: true });
    expect(await one.evaluate(() => window.keeper.lastOpen())).toBe('a');
  });
});

describe('where the browser keeps nothing, it says so and works on in memory', () => {
  test.each<[string, () => void]>([
    ['no storage', () => void Object.defineProperty(window, 'indexedDB', { value: undefined })],
    [
      'storage that throws',
      () => {
        IDBFactory.prototype.open = () => {
          throw new DOMException('not here', 'SecurityError');
        };
      },
    ],
  ])('%s is refused', async (_, prepare) => {
    const page = await openWindow({ prepare });
    expect(await condition(page)).toBe('refused');
    const open = openJob('a', 'In memory');
    expect(await save(page, open)).toEqual({ outcome: 'not-kept', condition: 'refused' });
    expect(await load(page, 'a')).toEqual(open);
    expect((await list(page)).map(({ title }) => title)).toEqual(['In memory']);
    await page.evaluate(() => window.keeper.keepDrafts('a', { outside: '12.4' }));
    await page.evaluate(() => window.keeper.keepSettings({ unit: 'in' }));
    await page.evaluate(() => window.keeper.keepLastOpen('a'));
    expect(
      await page.evaluate(() =>
        Promise.all([window.keeper.loadDrafts('a'), window.keeper.loadSettings(), window.keeper.lastOpen()]),
      ),
    ).toEqual([{ outside: '12.4' }, { unit: 'in' }, 'a']);
    await page.evaluate(() => window.keeper.remove('a'));
    expect(await list(page)).toEqual([]);
  });

  test('storage that runs full is told, what was saved stays, and it is tried again', async () => {
    const page = await openWindow();
    await save(page, openJob('a', 'Saved in time'));
    await page.evaluate(() => {
      const put = IDBObjectStore.prototype.put;
      Object.assign(window, { heal: () => Object.assign(IDBObjectStore.prototype, { put }) });
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('planted', 'QuotaExceededError');
      };
    });
    const later = openJob('a', 'Too late', 1);
    expect(await save(page, later)).toEqual({ outcome: 'not-kept', condition: 'full' });
    expect(await condition(page)).toBe('full');
    expect(await load(page, 'a')).toEqual(later);
    expect(await stored(page, 'a')).toMatchObject({ revision: 1, job: { title: 'Saved in time' } });
    await page.evaluate(() => (window as unknown as { heal: () => void }).heal());
    await page.evaluate(() => window.keeper.remove('another'));
    expect(await condition(page)).toBe('kept');
    expect(await stored(page, 'a')).toMatchObject({ revision: 2, job: { title: 'Too late' } });
  });

  test('a real quota is told as full too', async () => {
    const page = await openPage({ address: inject('keepAddress') });
    const session = await page.context().newCDPSession(page);
    const { origin } = new URL(page.url());
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 2_000_000 });
    await startKeeper(page);
    await save(page, openJob('a', 'Saved in time'));
    const large = {
      ...openJob('a', 'Too late', 1),
      job: { ...openJob('a', '').job, notes: 'x'.repeat(3_000_000) },
    };
    expect(await save(page, large)).toEqual({ outcome: 'not-kept', condition: 'full' });
    expect(await stored(page, 'a')).toMatchObject({ revision: 1, job: { title: 'Saved in time' } });
    await session.send('Storage.overrideQuotaForOrigin', { origin });
    expect(await save(page, large)).toEqual({ outcome: 'saved', revision: 2 });
    expect(await condition(page)).toBe('kept');
  });
});

describe('what another version wrote', () => {
  test('a record of the first format opens, and is brought forward when it is saved', async () => {
    const page = await openWindow();
    const { job } = openJob('old', 'From long ago');
    await plant(page, { id: 'old', job });
    expect(await list(page)).toEqual([{ id: 'old', title: 'From long ago', changed: 0, gears: 1 }]);
    const open = await load(page, 'old');
    expect(open).toEqual({ id: 'old', revision: 0, job, past: [], future: [] });
    if (open) expect(await save(page, open)).toEqual({ outcome: 'saved', revision: 1 });
    expect(await stored(page, 'old')).toMatchObject({ format: 1, revision: 1, job, past: [], future: [] });
  });

  test('a record of a newer format is listed and left exactly as it is', async () => {
    const page = await openWindow();
    const theirs = { id: 'a', format: 2, job: { title: 'Tomorrow', wheels: [] }, more: [1, 2] };
    await plant(page, theirs);
    expect(await list(page)).toEqual([{ id: 'a', title: 'Tomorrow', changed: 0, gears: 0, isNewer: true }]);
    expect(await load(page, 'a')).toBeUndefined();
    expect(await condition(page)).toBe('newer');
    expect(await save(page, openJob('a', 'Mine', 7))).toEqual({ outcome: 'not-kept', condition: 'newer' });
    expect((await load(page, 'a'))?.job.title).toBe('Mine');
    await page.evaluate(() => window.keeper.remove('a'));
    expect(await stored(page, 'a')).toEqual(theirs);
    // Other jobs are kept as ever.
    expect(await save(page, openJob('b', 'Today'))).toEqual({ outcome: 'saved', revision: 1 });
  });

  test('a newer database is left as it is, and this page works in memory', async () => {
    const page = await openWindow({ prepare: makeNewer });
    expect(await condition(page)).toBe('newer');
    expect(await save(page, openJob('a', 'Mine'))).toEqual({ outcome: 'not-kept', condition: 'newer' });
    expect((await load(page, 'a'))?.job.title).toBe('Mine');
    expect(await stored(page, 'theirs')).toEqual({ id: 'theirs', format: 9 });
  });

  test('a window that was open when a newer page came makes way and says so', async () => {
    const page = await openWindow();
    await save(page, openJob('a', 'Saved in time'));
    await page.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const opening = indexedDB.open('sparetooth', 99);
          opening.onblocked = () => reject(new Error('blocked'));
          opening.onsuccess = () => {
            opening.result.close();
            resolve();
          };
        }),
    );
    expect(await save(page, openJob('a', 'Too late', 1))).toEqual({
      outcome: 'not-kept',
      condition: 'newer',
    });
    expect(await condition(page)).toBe('newer');
    expect(await stored(page, 'a')).toMatchObject({ job: { title: 'Saved in time' } });
  });
});
