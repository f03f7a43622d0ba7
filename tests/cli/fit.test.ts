import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { runInProcess } from './run-in-process.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'fit-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const job = JSON.stringify({
  format: 'sparetooth-job',
  version: 1,
  invented: true,
  wheels: [
    {
      id: 'p1',
      readings: [{ of: 'shaft', mm: 3 }],
      spec: { teeth: 20, moduleMm: 1, faceWidthMm: 6, bore: { shape: 'round', diameterMm: 3.1 } },
      made: {
        process: 'filament-0.4',
        readings: [
          { of: 'outside', mm: 22.2 },
          { of: 'span', teeth: 3, mm: 7.85 },
          { of: 'bore', goesMm: 2.9, stopsMm: 3 },
        ],
      },
    },
  ],
});

describe('check', () => {
  test('says no of a part that is tight, in words and as one document', async () => {
    const told = await runInProcess(['check', '-', '--wheel', 'p1'], job);
    expect([told.code, told.err]).toEqual([1, '']);
    expect(told.out).toMatch(/^p1: It is tight/);
    expect(told.out).toContain('Not rolled against its mate: the job names no wheel');
    for (const line of told.out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    const document = await runInProcess(['check', '-', '--wheel', 'p1', '--json'], job);
    const report = JSON.parse(document.out);
    expect(document.code).toBe(1);
    expect(report).toMatchObject({ wheel: 'p1', verdict: 'tight', proof: null });
    expect(report.next.compensation.teethPerSideMm).toBeGreaterThan(0.03);
  });

  test('says what is wrong with a reading, and of a wheel without a part', async () => {
    const bad = await runInProcess(['check', '-', '--wheel', 'p1', '--json'], job.replace('22.2', '"22.2"'));
    expect(bad.code).toBe(2);
    expect(JSON.parse(bad.out).error.field).toBe('wheels[0].made.readings[0].mm');
    const none = await runInProcess(['check', '-', '--wheel', 'p1'], job.replace('"made"', '"mode"'));
    expect(none.code).toBe(1);
    expect(none.err).toContain('no part was made');
  });
});

describe('coupon, calibrate, make', () => {
  test('a coupon is written with its file, filled in, worked out, and taken back in a part', async () => {
    const laid = await runInProcess(['coupon', '--process', 'filament-0.4', '--out', folder, '--json']);
    expect(laid.code).toBe(0);
    expect(JSON.parse(laid.out).files.length).toBeGreaterThanOrEqual(3);
    const again = await runInProcess(['coupon', '--process', 'filament-0.4', '--out', folder]);
    expect(again.code).toBe(2);
    expect(again.err).toContain('--force');

    // Filled in by a person whose machine lays 0.1 mm a side more, and whose holes lose 0.15 a side.
    const blank = JSON.parse(readFileSync(join(folder, 'coupon-readings.json'), 'utf8'));
    blank.ofMine = 'kept';
    for (const { readings } of blank.coupons) {
      for (const reading of readings) {
        if (reading.of === 'outside') reading.mm = reading.nominalMm + 0.2;
        if (reading.of === 'bore') {
          reading.goesMm = reading.nominalMm - 0.35;
          reading.stopsMm = reading.nominalMm - 0.25;
        }
      }
    }
    const path = join(folder, 'mine.json');
    writeFileSync(path, JSON.stringify(blank));
    const told = await runInProcess(['calibrate', path]);
    expect(told.code).toBe(0);
    expect(told.out).toContain('from 3 coupons');
    for (const line of told.out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    const found = await runInProcess(['calibrate', path, '--out', folder, '--json']);
    const report = JSON.parse(found.out);
    expect(report.from).toBe('coupons');
    expect(report.compensation.outsidePerSideMm).toBeGreaterThan(0.08);
    expect(report.compensation.outsidePerSideMm).toBeLessThan(0.105);
    expect(report.compensation.holesPerSideMm).toBeGreaterThan(0.105);
    const kept = JSON.parse(readFileSync(join(folder, 'compensation.json'), 'utf8'));
    expect(kept.ofMine).toBe('kept');
    expect(kept.compensation).toEqual(report.compensation);

    const out = join(folder, 'part');
    const made = await runInProcess(
      [
        'make',
        '-',
        '--wheel',
        'p1',
        '--out',
        out,
        '--as',
        'stl',
        '--compensation',
        join(folder, 'compensation.json'),
        '--json',
      ],
      job,
    );
    expect(made.code).toBe(0);
    const part = JSON.parse(made.out);
    expect(part.warnings.join(' ')).toContain('measured on 3 coupons');
    expect(part.warnings.join(' ')).not.toContain('No allowance');
    const holes = part.changes.find((one: { of: string }) => one.of === 'holes');
    expect(holes.onDiameterMm).toBeCloseTo(2 * report.compensation.holesPerSideMm, 6);
    expect(part.compensation).toEqual(report.compensation);
    expect(part.uncertainty).toEqual(report.uncertainty);
    // The spec stays what is meant; the file is smaller than that.
    expect(part.spec.thinningMm).toBe(0);
    const view = new DataView(readFileSync(join(out, 'p1.stl')).buffer);
    let greatest = 0;
    const count = view.getUint32(80, true);
    for (let k = 0; k < count; k++)
      for (let corner = 0; corner < 3; corner++) {
        const at = 84 + 50 * k + 12 + 12 * corner;
        greatest = Math.max(greatest, Math.hypot(view.getFloat32(at, true), view.getFloat32(at + 4, true)));
      }
    const { outsidePerSideMm, scalePercent } = report.compensation;
    expect(2 * greatest).toBeCloseTo((22 - 2 * outsidePerSideMm) / (1 + scalePercent / 100), 3);
  });

  test('usual figures are told as typical, not as measured', async () => {
    const out = join(folder, 'usual');
    const made = await runInProcess(
      ['make', '-', '--wheel', 'p1', '--out', out, '--compensation', 'usual', '--process', 'resin'],
      job,
    );
    expect(made.code).toBe(0);
    expect(made.out).toContain('A typical allowance for a resin printer');
  });

  test('what can not be used is refused with its field, and nothing is written', async () => {
    const out = join(folder, 'none');
    const words = (path: string): string[] => [
      'make',
      '-',
      '--wheel',
      'p1',
      '--out',
      out,
      '--json',
      '--compensation',
      path,
    ];
    const write = (name: string, value: unknown): string => {
      const path = join(folder, name);
      writeFileSync(path, JSON.stringify(value));
      return path;
    };
    const file = { format: 'sparetooth-compensation', version: 1 };
    const eaten = await runInProcess(
      words(write('a.json', { ...file, compensation: { teethPerSideMm: 0.9 } })),
      job,
    );
    expect(eaten.code).toBe(2);
    expect(JSON.parse(eaten.out).error).toMatchObject({
      code: 'bad-geometry',
      field: 'compensation.teethPerSideMm',
    });
    const codeOf = async (value: unknown): Promise<string> =>
      JSON.parse((await runInProcess(words(write('b.json', value)), job)).out).error.code;
    expect(await codeOf({ format: 'sparetooth-job', version: 1 })).toBe('not-a-compensation');
    expect(await codeOf({ ...file, version: 7 })).toBe('wrong-version');
    expect(await codeOf({ ...file, compensation: { holesPerSideMm: 99 } })).toBe('bad-value');
    expect(
      await codeOf({ ...file, coupons: [{ readings: [{ of: 'bore', nominalMm: 2.5, mm: 2.4 }] }] }),
    ).toBe('bad-value');
    expect(await codeOf({ ...file, process: 'knitting' })).toBe('bad-usage');
    expect(await codeOf({ ...file, process: 'machine-shop' })).toBe('bad-usage');
    expect(existsSync(out)).toBe(false);
    const shop = await runInProcess(['coupon', '--process', 'machine-shop', '--out', out]);
    expect(shop.code).toBe(2);
    const other = await runInProcess(
      [...words(write('c.json', { ...file, process: 'resin' })), '--process', 'powder-bed'],
      job,
    );
    expect(JSON.parse(other.out).error.field).toBe('compensation');
  });
});
