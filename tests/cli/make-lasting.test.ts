import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { makeLastingJob } from '../making/lasting-job.ts';
import { runInProcess } from './run-in-process.ts';

const folder = mkdtempSync(join(tmpdir(), 'lasting-'));
afterAll(() => rmSync(folder, { recursive: true }));

const job = JSON.stringify(makeLastingJob());
const tooFine = JSON.stringify(
  makeLastingJob({ spec: { teeth: 24, moduleMm: 0.4, faceWidthMm: 4 } }, {}, { meshes: [] }),
);

describe('make, designed to last', () => {
  test('with a process and a material: shows each change with its reason, and the proof', async () => {
    const out = join(folder, 'abs');
    const words = [
      'make',
      '-',
      '--wheel',
      'p1',
      '--out',
      out,
      '--as',
      'stl',
      '--process',
      'filament-0.4',
      '--material',
      'abs',
    ];
    const { code, out: said } = await runInProcess(words, job);
    expect(code).toBe(0);
    expect(readdirSync(out)).toEqual(['p1.stl']);
    expect(said).toContain('Changed, so that it lasts');
    expect(said.replace(/\s+/g, ' ')).toContain('Rolled against "w1": it turns');
    for (const line of said.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  test('without either: the part is the old wheel, as ever', async () => {
    const out = join(folder, 'copy');
    const { code, out: said } = await runInProcess(
      ['make', '-', '--wheel', 'p1', '--out', out, '--as', 'stl', '--json'],
      job,
    );
    expect(code).toBe(0);
    expect(JSON.parse(said).design).toBeUndefined();
    expect(JSON.parse(said).spec.thinningMm).toBe(0);
  });

  test('with --off: that change is left, and a key that is none is refused', async () => {
    const words = (off: string, to: string) => [
      'make',
      '-',
      '--wheel',
      'p1',
      '--out',
      join(folder, to),
      '--as',
      'stl',
      '--off',
      off,
      '--json',
    ];
    const { out: said } = await runInProcess(words('backlash,warmth', 'off'), job);
    expect(JSON.parse(said).spec.thinningMm).toBe(0);
    const { code, out: error } = await runInProcess(words('everything', 'never'), job);
    expect(code).toBe(2);
    expect(JSON.parse(error).error).toMatchObject({ code: 'bad-value', field: 'off' });
    expect(existsSync(join(folder, 'never'))).toBe(false);
  });

  test('for a maker: one folder with file, message and list, replaced only by force', async () => {
    const out = join(folder, 'resin');
    const words = ['make', '-', '--wheel', 'p1', '--out', out, '--for', 'my-resin'];
    const { code, out: said } = await runInProcess(words, job);
    expect(code).toBe(0);
    expect(readdirSync(out).sort()).toEqual(['message.txt', 'p1-sheet.pdf', 'p1.stl', 'shopping-list.txt']);
    const message = readFileSync(join(out, 'message.txt'), 'utf8');
    expect(said).toContain(message.split('\n')[0]);
    expect((await runInProcess(words, job)).code).toBe(2);
    expect((await runInProcess([...words, '--force'], job)).code).toBe(0);
  });

  test('for a machine shop the making sheet goes with it, of the same part, and the message names it', async () => {
    const out = join(folder, 'shop');
    const words = ['make', '-', '--wheel', 'p1', '--out', out, '--for', 'machine-shop', '--json'];
    const { code, out: said } = await runInProcess(words, job);
    expect(code).toBe(0);
    expect(readdirSync(out).sort()).toEqual([
      'message.txt',
      'p1-sheet.pdf',
      'p1.dxf',
      'p1.step',
      'shopping-list.txt',
    ]);
    const { design, sheet, order, handOver } = JSON.parse(said);
    expect(design.process.key).toBe('machine-shop');
    expect(JSON.stringify(sheet)).toContain(design.material.name);
    expect(handOver.message.join()).toContain('p1-sheet.pdf');
    expect(JSON.stringify(order)).toContain(String(handOver.count));
  });

  test('teeth too fine for the process: the answer is no, with a way out, and nothing is written', async () => {
    const out = join(folder, 'fine');
    const { code, err } = await runInProcess(
      ['make', '-', '--wheel', 'p1', '--out', out, '--process', 'filament-0.4'],
      tooFine,
    );
    expect(code).toBe(1);
    expect(err).toContain('resin');
    expect(existsSync(out)).toBe(false);
    const forced = [
      'make',
      '-',
      '--wheel',
      'p1',
      '--out',
      out,
      '--process',
      'filament-0.4',
      '--off',
      'fineness',
    ];
    expect((await runInProcess(forced, tooFine)).code).toBe(0);
  });
});

describe('record', () => {
  test('prints one page that holds the date to look again, within 80 columns', async () => {
    const words = [
      'record',
      '-',
      '--wheel',
      'p1',
      '--process',
      'filament-0.4',
      '--material',
      'pla',
      '--date',
      '2026-11-25',
    ];
    const { code, out: said } = await runInProcess(words, job);
    expect(code).toBe(0);
    expect(said).toContain('2027-02-25');
    expect(said).toContain('stopgap');
    expect(said.split('\n').length).toBeLessThan(66);
    for (const line of said.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    const { out: json } = await runInProcess([...words, '--json'], job);
    expect(JSON.parse(json).lookAgain.on).toBe('2027-02-25');
  });
});
