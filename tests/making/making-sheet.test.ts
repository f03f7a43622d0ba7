import { describe, expect, test } from 'vitest';
import { makingLimits } from '../../gear-library/making-limits.ts';
import { makingSettings } from '../../gear-library/making-settings.ts';
import { materials } from '../../gear-library/materials.ts';
import { processes } from '../../gear-library/processes.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { findMakingLimits } from '../../src/making/find-making-limits.ts';
import { type Inspection, listInspections } from '../../src/making/list-inspections.ts';
import { planMakingSheet } from '../../src/making/making-sheet.ts';
import { writeOrder } from '../../src/making/order-sheet.ts';
import { findSectionLines } from '../../src/making/section-lines.ts';
import { papers, startPage } from '../../src/making/sheet-page.ts';
import { expectReading } from '../../src/readings/expected-reading.ts';
import type { WheelForm } from '../../src/solid/wheel-form.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';

function processOf(key: string): (typeof processes)[number] {
  const found = processes.find((one) => one.key === key);
  if (!found) throw new Error(key);
  return found;
}

function formOf(more: Partial<WheelForm>): WheelForm {
  return {
    spec: makeSpec({ teeth: 20 }),
    faceWidth: 5,
    bore: { shape: 'round', diameter: 3 },
    hubs: [],
    chamfer: 0,
    ...more,
  };
}

function inspect(form: WheelForm, key: string, pins: readonly number[] = []): readonly Inspection[] {
  return listInspections(form, findMakingLimits(processOf(key), form.spec), pins);
}

function rowOf(rows: readonly Inspection[], key: string): Inspection {
  const found = rows.find((one) => one.key === key);
  if (!found) throw new Error(`no row ${key} in ${rows.map((one) => one.key)}`);
  return found;
}

describe('limits', () => {
  test('a machine shop bores to H7 and turns to h11 of ISO 286', () => {
    // ISO 286-2 tables (read in two published copies): 3 mm H7 0 to +10 µm; 8 mm H7 0 to +15; 18 to 30 mm h11 −130 to 0.
    const rows = inspect(formOf({}), 'machine-shop');
    expect(rowOf(rows, 'bore')).toMatchObject({ low: 3, high: 3.01, basis: 'ISO 286 H7' });
    const wider = inspect(formOf({ bore: { shape: 'round', diameter: 8 } }), 'machine-shop');
    expect(rowOf(wider, 'bore').high).toBeCloseTo(8.015, 9);
    const outside = rowOf(rows, 'outside');
    expect(outside.low).toBeCloseTo(22 - 0.13, 9);
    expect(outside).toMatchObject({ high: 22, basis: 'ISO 286 h11' });
  });

  test('over 50 mm no ISO 286 figure is made up: it is called a judgment', () => {
    const rows = inspect(formOf({ spec: makeSpec({ teeth: 60 }) }), 'machine-shop');
    expect(rowOf(rows, 'outside').basis).toBe('judgment');
  });

  test('ISO 286 is not asked of a printer', () => {
    for (const key of ['filament-0.4', 'resin', 'powder-bed', 'laser-cut'])
      expect(rowOf(inspect(formOf({}), key), 'bore').basis, key).toBe('judgment');
  });

  test('widths and hubs follow ISO 2768-1: fine in a shop, medium elsewhere', () => {
    // ISO 2768-1 table 1, value from memory: over 3 to 6 mm f ±0.05, m ±0.1; over 6 to 30 mm f ±0.1, m ±0.2.
    const form = formOf({ hubs: [{ side: 'top', diameter: 8, length: 4 }] });
    const cut = inspect(form, 'machine-shop');
    expect(rowOf(cut, 'face-width')).toMatchObject({ low: 4.95, high: 5.05 });
    expect(rowOf(cut, 'hub-top')).toMatchObject({ low: 7.9, high: 8.1, basis: 'ISO 2768-f' });
    const printed = inspect(form, 'filament-0.4');
    expect(rowOf(printed, 'face-width')).toMatchObject({ low: 4.9, high: 5.1 });
    expect(rowOf(printed, 'overall-length')).toMatchObject({ value: 9, low: 8.8, high: 9.2 });
  });

  test('ISO 1328-1 is named where it reaches and not below a module of 0.5 or 5 mm of reference diameter', () => {
    const say = (teeth: number, module: number): string =>
      findMakingLimits(processOf('machine-shop'), makeSpec({ teeth, module })).flanks;
    expect(say(20, 0.5)).toContain('grade 9');
    expect(say(20, 0.4)).toContain('does not cover');
    expect(say(9, 0.5)).toContain('does not cover');
    expect(findMakingLimits(processOf('resin'), makeSpec({ teeth: 20 })).flanks).toContain('No grade asked');
  });

  test('every process has limits and settings, and a tooth is never allowed to be thicker', () => {
    for (const { key } of processes) {
      expect(makingLimits.filter((one) => one.process === key).length, key).toBe(1);
      expect(
        makingSettings.some((one) => one.processes.includes(key)),
        key,
      ).toBe(true);
      for (const module of [0.3, 1, 3]) {
        const { thinning } = findMakingLimits(processOf(key), makeSpec({ teeth: 20, module }));
        expect(thinning).toBeGreaterThan(0);
        expect(thinning).toBeLessThanOrEqual(0.15 * module);
        const span = rowOf(inspect(formOf({ spec: makeSpec({ teeth: 40, module }) }), key), 'span');
        expect(span.high).toBe(span.value);
        // What a thinned tooth loses on the span: thinning · cos α (ISO 21771).
        expect(span.value - span.low).toBeCloseTo(thinning * Math.cos(rad(20)), 9);
      }
    }
  });
});

describe('what the caliper will read', () => {
  /** Least and greatest distance of two parallel jaws on a closed outline: its widths over every direction. */
  function jawsOn(teeth: number, tipDiameter: number): readonly [number, number] {
    const { points } = traceOutline(makeSpec({ teeth, tipDiameter }), 1e-5);
    let [least, most] = [Number.POSITIVE_INFINITY, 0];
    for (let k = 0; k < 4000; k++) {
      // A turn of one pitch holds every way that the jaws can lie.
      const angle = (k / 4000) * ((2 * Math.PI) / teeth);
      let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
      for (let i = 0; i < points.length; i += 2) {
        const along = points[i] * Math.cos(angle) + points[i + 1] * Math.sin(angle);
        low = Math.min(low, along);
        high = Math.max(high, along);
      }
      least = Math.min(least, high - low);
      most = Math.max(most, high - low);
    }
    return [least, most];
  }

  test.each([7, 13, 21])(
    '%i teeth: settled and rocked are the least and greatest width of the outline',
    (teeth) => {
      const spec = makeSpec({ teeth });
      const { tip } = findDiameters(spec);
      const [least, most] = jawsOn(teeth, tip);
      const { reads } = rowOf(inspect(formOf({ spec, bore: { shape: 'none' } }), 'resin'), 'outside');
      expect(reads.map(({ jaws }) => jaws)).toEqual(['settled', 'rocked']);
      expect(reads[0].value).toBeCloseTo(least, 4);
      expect(reads[1].value).toBeCloseTo(most, 4);
      // And at the limits of the tips, too.
      const low = rowOf(inspect(formOf({ spec, bore: { shape: 'none' } }), 'resin'), 'outside').low;
      const [leastLow, mostLow] = jawsOn(teeth, low);
      expect(reads[0].low).toBeCloseTo(leastLow, 4);
      expect(reads[1].low).toBeCloseTo(mostLow, 4);
    },
  );

  test('on an even count one reading is the tip diameter itself', () => {
    const { reads, value } = rowOf(inspect(formOf({}), 'resin'), 'outside');
    expect(reads).toMatchObject([{ jaws: 'as it is', value }]);
    expect(value).toBe(22);
  });

  test('span and pins are those of the readings, on the spec and on teeth as thin as allowed', () => {
    // Span over 4 of m 3, z 24, x 0.4: 32.8266 (worked example of a published gear reference).
    const spec = makeSpec({ teeth: 24, module: 3, profileShift: 0.4 });
    const rows = inspect(formOf({ spec }), 'machine-shop', [5.5]);
    expect(rowOf(rows, 'span').value).toBeCloseTo(32.8266, 3);
    const pins = rowOf(rows, 'over-pins');
    expect(pins.what).toContain('5.5 mm');
    const thin = { ...spec, thinning: 0.03 };
    expect(pins.low).toBe(expectReading(thin, { of: 'over-pins', pinMm: 5.5 }));
    expect(pins.reads[0]).toMatchObject({ value: pins.value, low: pins.low, high: pins.high });
  });

  test('a pin that does not rest on the flanks is not asked for; a span that a slant leaves no room for neither', () => {
    const rows = inspect(formOf({ spec: makeSpec({ teeth: 20 }) }), 'resin', [0.5, 9]);
    expect(rowOf(rows, 'over-pins').what).toMatch(/1\.[678] mm/);
    const slanted = inspect(
      formOf({ spec: makeSpec({ teeth: 30, helixAngle: rad(30) }), faceWidth: 3 }),
      'resin',
    );
    expect(slanted.some(({ key }) => key === 'span')).toBe(false);
  });

  test('a ring is measured inside, a rack along its pitches', () => {
    const ring = inspect(
      formOf({ spec: makeSpec({ kind: 'internal', teeth: 40 }), bore: { shape: 'none' }, rimDiameter: 50 }),
      'resin',
    );
    const inside = rowOf(ring, 'outside');
    // Inside a ring the tips stand back at most as far as an outside may be small.
    expect([inside.low, inside.value, inside.high]).toEqual([38 - 0.03, 38, 38.1]);
    expect(rowOf(ring, 'rim').value).toBe(50);
    const rack = inspect(
      formOf({ spec: makeSpec({ kind: 'rack', teeth: 11 }), bore: { shape: 'none' } }),
      'resin',
    );
    expect(rowOf(rack, 'rack-pitch').value).toBeCloseTo(10 * Math.PI, 9);
    expect(rowOf(rack, 'tooth-depth').value).toBeCloseTo(2.25, 9);
  });
});

describe('the sheet', () => {
  const sheet = planMakingSheet({
    title: 'Invented recorder',
    part: 'drive wheel',
    number: 'p1',
    isInvented: true,
    process: processOf('resin'),
    material: materials[0],
    plan: {
      form: formOf({
        hubs: [{ side: 'bottom', diameter: 7, length: 2 }],
        others: [
          {
            spec: makeSpec({ teeth: 31, module: 0.5 }),
            faceWidth: 2,
            chamfer: 0,
            hubs: [],
            offset: 5,
            phase: 0.2,
          },
        ],
      }),
      isTrial: false,
      warnings: ['First of all.'],
      about: { bore: [], helix: [] },
    },
    evidence: {
      id: 'w1',
      kind: 'external',
      damage: [],
      readings: [],
      kit: {},
      machine: {},
      mates: [],
    },
  });

  test('holds a table and checks for every toothing of a compound gear', () => {
    expect(sheet.others.length).toBe(1);
    const value = (key: string): unknown => sheet.others[0].gearData.find((one) => one.key === key)?.value;
    expect([value('teeth'), value('module'), value('offset')]).toEqual([31, 0.5, 5]);
    expect(value('phase')).toBeCloseTo(11.459, 3);
    expect(sheet.others[0].inspections.map(({ key }) => key)).toEqual(
      expect.arrayContaining(['span', 'outside', 'face-width']),
    );
    expect(rowOf(sheet.inspections, 'overall-length').value).toBe(9);
  });

  test('begins its cautions with the plan’s warnings and adds those of the process and the material', () => {
    expect(sheet.cautions[0]).toBe('First of all.');
    expect(sheet.cautions.join(' ')).toContain('uncured resin');
    expect(sheet.cautions).toEqual(expect.arrayContaining([...materials[0].cautions]));
    expect(sheet.settings.map(({ what }) => what)).not.toContain('Beware');
  });

  test('the order says how many, of what, and every size with its limits', () => {
    const order = writeOrder(sheet, 4);
    const value = (what: string): string => order.rows.find((row) => row.what === what)?.value ?? '';
    expect(order.subject).toBe('4 x drive wheel (external gear, 20 teeth, module 1 mm)');
    expect([value('How many'), value('Unit')]).toEqual(['4', 'millimeters throughout']);
    expect(value('Bore')).toBe('3.000 mm (3.000 to 3.050; judgment)');
    expect(order.terms.join(' ')).toMatch(/not scale.*not repair/);
    expect(() => writeOrder(sheet, 0)).toThrow('0 copies');
  });
});

describe('the section', () => {
  test('cuts as much material as the half of the part holds, teeth apart', () => {
    const { cut, length, high, pitch } = findSectionLines(
      formOf({ hubs: [{ side: 'top', diameter: 8, length: 3 }] }),
    );
    const area = cut.reduce((sum, [left, low, right, top]) => sum + (right - left) * (top - low), 0);
    // Body: 5 mm from bore 1.5 to root 8.75; hub: 3 mm from 1.5 to 4.
    expect(area).toBeCloseTo(5 * (8.75 - 1.5) + 3 * (4 - 1.5), 6);
    expect([length, high]).toEqual([8, 11]);
    expect(pitch).toEqual([[0, 5, 10]]);
  });

  test('of a ring lies between root and rim', () => {
    const { cut, high } = findSectionLines(
      formOf({ spec: makeSpec({ kind: 'internal', teeth: 40 }), bore: { shape: 'none' }, rimDiameter: 50 }),
    );
    expect(cut).toEqual([[0, 21.25, 5, 25]]);
    expect(high).toBe(25);
  });
});

test('a paragraph breaks between words, and a word that fits nowhere is cut, never dropped', () => {
  const page = startPage(papers.a4, 'x', (text) => text.length);
  const end = page.paragraph(0, 100, 10, 'one two three abcdefghijklmnop q', { size: 1 });
  const rows = page.finish().marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
  expect(rows).toEqual(['one two', 'three', 'abcdefghij', 'klmnop q']);
  expect(end).toBeCloseTo(100 - 4 * 1.4, 9);
});
