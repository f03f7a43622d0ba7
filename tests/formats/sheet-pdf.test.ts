import { describe, expect, test } from 'vitest';
import { materials } from '../../gear-library/materials.ts';
import { processes } from '../../gear-library/processes.ts';
import { encodeSheetPdf } from '../../src/formats/sheet-pdf.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { type MakingSheet, planMakingSheet } from '../../src/making/making-sheet.ts';
import { writeOrder } from '../../src/making/order-sheet.ts';
import { type Paper, papers } from '../../src/making/sheet-page.ts';
import type { WheelForm } from '../../src/solid/wheel-form.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';
import { openPdf, type ReadPage, readPdf, renderPage } from './read-pdf.ts';

const pinion: WheelForm = {
  spec: makeSpec({ teeth: 17, module: 0.8, profileShift: 0.25, helixAngle: rad(-12), thinning: 0.04 }),
  faceWidth: 6,
  bore: { shape: 'round', diameter: 3 },
  hubs: [{ side: 'top', diameter: 8, length: 4 }],
  chamfer: 0,
};

function sheetOf(
  form: WheelForm,
  key = 'machine-shop',
  more: Partial<MakingSheet['title']> = {},
): MakingSheet {
  const process = processes.find((one) => one.key === key);
  const material = materials.find((one) => one.key === process?.materials[0]);
  if (!process || !material) throw new Error(key);
  const sheet = planMakingSheet({
    title: 'Invented machine',
    part: 'pinion',
    number: 'p1',
    isInvented: true,
    process,
    material,
    plan: {
      form,
      isTrial: true,
      warnings: ['A first warning that is a little longer than one line of the sheet can be.'],
      about: { bore: [], helix: [] },
    },
    evidence: {
      id: 'p1',
      kind: form.spec.kind,
      damage: [],
      readings: [{ of: 'center-distance', mate: 'w1', mm: [20.1, 20.2] }],
      kit: { pinsMm: [1.4] },
      machine: {},
      mates: [{ id: 'w1', kind: 'external', teeth: 33 }],
    },
  });
  return { ...sheet, title: { ...sheet.title, ...more } };
}

async function print(sheet: MakingSheet, paper: Paper = papers.a4): Promise<Uint8Array> {
  return encodeSheetPdf(sheet, writeOrder(sheet, 2), paper);
}

async function pagesOf(sheet: MakingSheet, paper: Paper = papers.a4): Promise<ReadPage[]> {
  return readPdf(await openPdf(await print(sheet, paper)));
}

/** The words of a page's row at a height, left to right. */
function rowOf(page: ReadPage, label: string): string[] {
  const found = page.texts.find(({ text }) => text === label);
  if (!found) throw new Error(`no row ${label}`);
  return page.texts
    .filter(({ y }) => Math.abs(y - found.y) < 0.3)
    .sort((a, b) => a.x - b.x)
    .map(({ text }) => text);
}

describe('the check bar', () => {
  test.each(Object.values(papers))(
    '$name: is 50.0 ± 0.1 mm long when the page is rendered',
    async (paper) => {
      const bytes = await print(sheetOf(pinion), paper);
      const document = await openPdf(bytes);
      const pages = await readPdf(document);
      const perMm = 12;
      for (const [index, page] of pages.entries()) {
        const lettering = page.texts.find(({ text }) => text.startsWith('Bar: 50 mm'));
        // The bar stands left of its words; the longest narrow level line there.
        const bar = page.lines
          .filter(({ points: [x1, y1, x2, y2], lineWidth }) => lineWidth < 0.3 && y1 === y2 && x2 > x1)
          .filter(({ points: [, y, x2] }) => lettering && Math.abs(y - lettering.y) < 8 && x2 < lettering.x)
          .sort((a, b) => b.points[2] - b.points[0] - (a.points[2] - a.points[0]))
          .at(0);
        if (!bar) throw new Error('no bar');
        const [x1, y, x2] = bar.points;
        expect(x2 - x1).toBeCloseTo(50, 3);
        if (index > 0) continue;
        // In pixels: from the middle of the first tick to the middle of the last, 3 mm over the bar.
        const { gray, width, height } = await renderPage(document, index + 1, perMm);
        const row = height - Math.round((y + 3) * perMm);
        const dark: number[] = [];
        for (let x = Math.round((x1 - 2) * perMm); x < Math.round((x2 + 2) * perMm); x++)
          if (gray[row * width + x] < 128) dark.push(x);
        const [first, last] = [dark[0], dark[dark.length - 1]];
        const middle = (from: number, by: 1 | -1): number => {
          let end = from;
          while (gray[row * width + end + by] < 128) end += by;
          return (from + end) / 2;
        };
        expect(Math.abs((middle(last, -1) - middle(first, 1)) / perMm - 50)).toBeLessThan(0.1);
      }
    },
  );
});

describe('the printed sheet', () => {
  test('is the size of its paper, asks not to be scaled and holds no date', async () => {
    for (const paper of Object.values(papers)) {
      const bytes = await print(sheetOf(pinion), paper);
      const document = await openPdf(bytes);
      for (const page of await readPdf(document)) {
        expect(page.width).toBeCloseTo(paper.width, 3);
        expect(page.height).toBeCloseTo(paper.height, 3);
      }
      expect(await document.getViewerPreferences()).toMatchObject({ PrintScaling: 'None' });
      const { info } = await document.getMetadata();
      expect(Object.keys(info)).not.toEqual(expect.arrayContaining([expect.stringMatching(/Date$/)]));
      expect(info).toMatchObject({ Creator: 'Sparetooth' });
      expect(await print(sheetOf(pinion), paper)).toEqual(bytes);
    }
  });

  test('its gear data table says what the spec says, to the last decimal', async () => {
    const [page] = await pagesOf(sheetOf(pinion));
    const { spec } = pinion;
    const { reference, base, tip, root } = findDiameters(spec);
    const value = (label: string): string => rowOf(page, label).slice(0, 3).at(-1) ?? '';
    expect(rowOf(page, 'Number of teeth').slice(0, 3)).toEqual(['Number of teeth', 'z', '17']);
    expect(value('Normal module')).toBe('0.8000 mm');
    expect(value('Normal pressure angle')).toBe('20.000 deg');
    expect(value('Helix angle')).toBe('12.000 deg');
    expect(rowOf(page, 'Hand of helix')[1]).toBe('left');
    expect(value('Profile shift coefficient')).toBe('0.2500');
    expect(value('Basic rack: addendum, in modules')).toBe('1.000');
    expect(value('Basic rack: dedendum, in modules')).toBe('1.250');
    expect(value('Basic rack: root radius, in modules')).toBe('0.380');
    expect(value('Reference diameter')).toBe(`${reference.toFixed(3)} mm`);
    expect(value('Base diameter')).toBe(`${base.toFixed(3)} mm`);
    expect(value('Tip diameter')).toBe(`${tip.toFixed(3)} mm`);
    expect(value('Root diameter')).toBe(`${root.toFixed(3)} mm`);
    // m (π/2 + 2 x tan α) less the thinning (ISO 21771).
    const thickness = 0.8 * (Math.PI / 2 + 0.5 * Math.tan(rad(20))) - 0.04;
    expect(value('Tooth thickness, arc at d')).toBe(`${thickness.toFixed(3)} mm`);
    expect(rowOf(page, 'of which taken off for backlash')[1]).toBe('0.040 mm');
    expect(value('Mate: w1')).toBe('33');
    expect(value('Center distance to w1')).toBe('20.150 mm');
  });

  test('its checks and its order hold the numbers of the sheet, and nothing but them', async () => {
    const sheet = sheetOf(pinion);
    const pages = await pagesOf(sheet);
    for (const { what, value, low, high, reads } of sheet.inspections) {
      const row = rowOf(pages[1], what);
      expect(row.slice(0, 4)).toEqual([what, value.toFixed(3), low.toFixed(3), high.toFixed(3)]);
      expect(row.slice(4, 7)).toEqual([
        reads[0].jaws,
        reads[0].value.toFixed(3),
        `${reads[0].low.toFixed(3)} to ${reads[0].high.toFixed(3)}`,
      ]);
      const order = pages[2].texts.map(({ text }) => text).join(' ');
      expect(order).toContain(`${value.toFixed(3)} mm (${low.toFixed(3)} to ${high.toFixed(3)};`);
    }
    // On the views, over the table.
    const table = pages[0].texts.find(({ text }) => text === 'Gear data');
    const dimensions = pages[0].texts
      .filter(({ text, y }) => y > (table?.y ?? 0) && /^Ø?\d+\.\d{3}$/.test(text))
      .map(({ text }) => text.replace('Ø', ''));
    const sizes = sheet.inspections.map(({ value }) => value.toFixed(3));
    expect(dimensions.length).toBe(5);
    for (const dimension of dimensions) expect(sizes).toContain(dimension);
  });

  test('states a scale of ISO 5455, and draws the wheel at it', async () => {
    const [page] = await pagesOf(sheetOf({ ...pinion, spec: makeSpec({ teeth: 20 }) }));
    const scale = page.texts.find(({ text }) => /^\d+:\d+$/.test(text))?.text ?? '';
    expect(['50:1', '20:1', '10:1', '5:1', '2:1', '1:1', '1:2', '1:5', '1:10']).toContain(scale);
    const [drawn, real] = scale.split(':').map(Number);
    // The outside dimension's line is as long as the tips are wide: 22 mm.
    const lengths = page.lines
      .filter(({ points: [x1, , x2], points }) => points.length === 4 && x1 === x2)
      .map(({ points: [, y1, , y2] }) => Math.abs(y2 - y1));
    expect(lengths.some((one) => Math.abs(one - (22 * drawn) / real) < 0.01)).toBe(true);
    expect(new Set(page.lines.map(({ lineWidth }) => Number(lineWidth.toFixed(3))))).toEqual(
      new Set([0.5, 0.25, 0.125]),
    );
  });

  test.each([
    ['a pinion with hub', pinion],
    ['a large wheel', { ...pinion, spec: makeSpec({ teeth: 120, module: 3 }), hubs: [] }],
    [
      'a tiny wheel',
      {
        ...pinion,
        spec: makeSpec({ teeth: 12, module: 0.2 }),
        hubs: [],
        bore: { shape: 'round', diameter: 0.5 },
        faceWidth: 1,
      },
    ],
    [
      'a ring',
      {
        ...pinion,
        spec: makeSpec({ kind: 'internal', teeth: 41 }),
        hubs: [],
        bore: { shape: 'none' },
        rimDiameter: 50,
      },
    ],
    ['a rack', { ...pinion, spec: makeSpec({ kind: 'rack', teeth: 11 }), hubs: [], bore: { shape: 'none' } }],
    [
      'a compound gear',
      {
        ...pinion,
        hubs: [],
        others: [
          {
            spec: makeSpec({ teeth: 40, module: 0.8 }),
            faceWidth: 3,
            chamfer: 0,
            hubs: [],
            offset: 6,
            phase: 0.1,
          },
        ],
      },
    ],
  ] as readonly [string, WheelForm][])(
    '%s: every word and line lies inside the frame or on it',
    async (name, form) => {
      for (const paper of Object.values(papers)) {
        for (const key of ['filament-0.4', 'machine-shop']) {
          const pages = await pagesOf(sheetOf(form, key), paper);
          expect(pages.length).toBe(name === 'a compound gear' ? 4 : 3);
          for (const { texts, lines } of pages) {
            for (const { text, x, y, width } of texts) {
              expect(x, text).toBeGreaterThan(20);
              expect(x + width, text).toBeLessThan(paper.width - 10);
              expect(y, text).toBeGreaterThan(10);
              expect(y, text).toBeLessThan(paper.height - 10);
            }
            for (const { points } of lines) {
              for (let k = 0; k < points.length; k += 2) {
                // The centering marks of the frame reach 5 mm out.
                expect(points[k]).toBeGreaterThan(14.9);
                expect(points[k]).toBeLessThan(paper.width - 4.9);
                expect(points[k + 1]).toBeGreaterThan(4.9);
                expect(points[k + 1]).toBeLessThan(paper.height - 4.9);
              }
            }
          }
          // Only the title block and the bar's strip stand below: as many words on every page.
          const counts = pages.map(({ texts }) => texts.filter(({ y }) => y < 10 + 39).length);
          expect(new Set(counts).size).toBe(1);
        }
      }
    },
  );

  test('the longest words and the most cautions still stand over the title block and in their columns', async () => {
    const long = 'a-wheel-with-a-name-that-somebody-typed-without-ever-stopping-'.repeat(3);
    const plain = sheetOf(pinion, 'filament-0.4');
    const sheet: MakingSheet = {
      ...plain,
      title: { ...plain.title, title: long, part: long, number: long },
      cautions: Array.from({ length: 16 }, (_, k) => `${k + 1}. ${'Many words of caution. '.repeat(8)}`),
      gearData: [
        ...plain.gearData,
        ...Array.from({ length: 20 }, (_, k) => ({
          key: `mate ${k}`,
          name: `Mate: ${long}`,
          symbol: 'z',
          value: k,
          digits: 0,
          unit: '' as const,
        })),
      ],
    };
    const pages = await pagesOf(sheet, papers.letter);
    const counts = pages.map(({ texts }) => texts.filter(({ y }) => y < 10 + 39).length);
    expect(new Set(counts).size).toBe(1);
    // Every caution is there to its last word.
    const words = pages[1].texts.map(({ text }) => text).join(' ');
    expect(words.match(/Many words/g)?.length).toBe(16 * 8);
    for (const { texts } of pages)
      for (const a of texts)
        for (const b of texts)
          if (a !== b && Math.abs(a.y - b.y) < 0.5 && a.x < b.x)
            expect(a.x + a.width, `${a.text} | ${b.text}`).toBeLessThan(b.x + 0.01);
  });

  test('letters that the typeface lacks lose their accents or become ?, and the file is still made', async () => {
    const sheet = sheetOf(pinion, 'resin', { title: 'Čtečka μ 歯車', part: 'x'.repeat(300) });
    const [page] = await pagesOf(sheet);
    expect(page.texts.some(({ text }) => text.includes('Ctecka'))).toBe(true);
    expect(page.texts.some(({ text }) => text.endsWith('...'))).toBe(true);
  });
});
