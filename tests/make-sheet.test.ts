import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Job, make, makeSheet, parseJob, planSheet } from '../src/index.ts';

const bore = { shape: 'round', diameterMm: 2 };

/** An invented compound gear, and one wheel of an unlike material. */
const job: Job = parseJob(
  JSON.stringify({
    format: 'sparetooth-job',
    version: 1,
    invented: true,
    title: 'Invented drive',
    wheels: [
      { id: 'big', part: 'cluster', spec: { teeth: 30, moduleMm: 0.5, faceWidthMm: 3, offsetMm: 0, bore } },
      { id: 'small', part: 'cluster', spec: { teeth: 12, moduleMm: 0.5, faceWidthMm: 5, offsetMm: 3, bore } },
      {
        id: 'lone',
        name: 'idler',
        material: 'brass',
        spec: { teeth: 21, moduleMm: 0.8, faceWidthMm: 3, bore },
      },
    ],
  }),
).job;

describe('a making sheet', () => {
  test('of a compound gear is that of the whole piece, under its name', async () => {
    const { sheet, file } = await makeSheet(job, { wheelId: 'big' });
    expect(file.name).toBe('cluster-sheet.pdf');
    expect(sheet.title).toMatchObject({ part: 'cluster', number: 'cluster', isInvented: true });
    expect(sheet.others.map(({ gearData }) => gearData.find(({ key }) => key === 'teeth')?.value)).toEqual([
      12,
    ]);
    expect(sheet.inspections.find(({ key }) => key === 'overall-length')?.value).toBe(8);
    const alone = planSheet(job, { wheelId: 'big', isAlone: true });
    expect(alone.sheet.others).toEqual([]);
  });

  test('names the old material where the process makes gears of it, else one that it does', () => {
    const named = (process: string, material?: string): string =>
      planSheet(job, { wheelId: 'lone', process, material }).sheet.title.material.key;
    expect(named('machine-shop')).toBe('brass');
    expect(named('resin')).toBe('resin');
    expect(named('machine-shop', 'Acetal')).toBe('pom');
  });

  test('orders three of a printed part, one of another, or as many as are asked for', () => {
    const copies = (process: string, count?: number): string =>
      planSheet(job, { wheelId: 'lone', process, copies: count }).order.rows[0].value;
    expect([copies('filament-0.4'), copies('machine-shop'), copies('resin', 7)]).toEqual(['3', '1', '7']);
  });

  test('refuses what there can not be, by the field that says it', async () => {
    for (const [more, field] of [
      [{ material: 'cheese' }, 'material'],
      [{ copies: 0 }, 'copies'],
      [{ copies: 1.5 }, 'copies'],
    ] as const) {
      expect(() => planSheet(job, { wheelId: 'lone', ...more })).toThrow(
        expect.objectContaining({ code: 'bad-value', field }),
      );
    }
    await expect(makeSheet(job, { wheelId: 'lone', paper: 'a5' as 'a4' })).rejects.toMatchObject({
      code: 'bad-value',
      field: 'paper',
    });
    await expect(makeSheet(job, { wheelId: 'none' })).rejects.toMatchObject({ code: 'no-such-wheel' });
  });

  test.each(['coin-counter.json', 'film-splicer.json'])(
    '%s: has the numbers of the part that is made',
    (name) => {
      if (!readdirSync('demo-data').includes(name)) throw new Error(`no ${name}`);
      const demo = parseJob(readFileSync(`demo-data/${name}`)).job;
      const wheelId = demo.wheels?.[0].id ?? '';
      const { spec, warnings, isTrial } = make(demo, { wheelId, formats: [] });
      const { sheet } = planSheet(demo, { wheelId });
      const value = (key: string): unknown => sheet.gearData.find((one) => one.key === key)?.value;
      expect([value('teeth'), value('module'), value('profileShift')]).toEqual([
        spec.teeth,
        spec.moduleMm,
        spec.profileShift,
      ]);
      expect(sheet.title.state).toBe(isTrial ? 'trial part' : 'part');
      expect(sheet.cautions).toEqual(expect.arrayContaining([...warnings]));
    },
  );
});
