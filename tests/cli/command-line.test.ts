import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { version } from '../../package.json';
import { inventedJob, jobWithReadings } from './invented-job.ts';
import { runInProcess } from './run-in-process.ts';

const text = JSON.stringify(inventedJob);
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'sparetooth-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

describe('identify', () => {
  test('says what a well measured pinion is, how sure, and what the readings were expected to be', async () => {
    const { code, out, err } = await runInProcess(['identify', '-', '--wheel', 'p1'], text);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('p1, motor pinion');
    expect(out).toContain('etric size 0.5 (module), 24 teeth');
    expect(out).toMatch(/\d+ in \d+/);
    expect(out).toContain('across 4 teeth (span)');
    expect(out).not.toContain('w1\n');
  });

  test('prints one JSON document with --json, and nothing else', async () => {
    const { code, out, err } = await runInProcess(['identify', '-', '--json'], text);
    expect([code, err]).toEqual([0, '']);
    const report = JSON.parse(out);
    expect(report.wheels.map(({ id }: { id: string }) => id)).toEqual(['p1', 'w1']);
    const [wheel] = report.wheels;
    expect(wheel.pitch[0]).toMatchObject({ system: 'module', size: 0.5 });
    expect(wheel.candidates[0].spec).toMatchObject({ teeth: 24, moduleMm: 0.5 });
    expect(Object.keys(wheel)).toEqual(
      expect.arrayContaining([
        'id',
        'pitch',
        'candidates',
        'restProbability',
        'verdict',
        'sameTeeth',
        'suspect',
        'next',
      ]),
    );
  });

  test('asks for the tooth count where it has nothing to go on', async () => {
    const { code, out } = await runInProcess(['identify', '-'], jobWithReadings([{ of: 'outside', mm: 13 }]));
    expect(code).toBe(0);
    expect(out).toContain("Can't tell yet");
    expect(out).toContain('The tooth count');
  });

  test('answers no, exit code 1, where no gear gives the readings', async () => {
    const readings = [
      { of: 'teeth', count: 24 },
      { of: 'outside', mm: 13 },
      { of: 'span', teeth: 3, mm: 9.1 },
      { of: 'span', teeth: 4, mm: 9.3 },
      { of: 'root', mm: 12.9 },
    ];
    const { code, out } = await runInProcess(['identify', '-'], jobWithReadings(readings));
    expect(code).toBe(1);
    expect(out).toContain('No gear I know gives these readings');
  });

  test('answers no, exit code 1, where the job has no wheels', async () => {
    const { code, out } = await runInProcess(['identify', '-'], '{"format":"sparetooth-job","version":1}');
    expect(code).toBe(1);
    expect(out).toContain('no wheels yet');
  });

  test('tells of unknown fields on standard error, not among the answer', async () => {
    const job = JSON.stringify({ ...inventedJob, 'x-mine': 1 });
    const { code, out, err } = await runInProcess(['identify', '-', '--json'], job);
    expect(code).toBe(0);
    expect(err).toBe('Note: x-mine: not known here: kept, but not used\n');
    JSON.parse(out);
  });
});

describe('make', () => {
  test('writes every format of a part, byte for byte the same on a second run', async () => {
    const run = async (name: string): Promise<string[]> => {
      const out = join(folder, name);
      const ran = await runInProcess(['make', '-', '--wheel', 'p1', '--out', out, '--json'], text);
      expect([ran.code, ran.err]).toEqual([0, '']);
      const { files } = JSON.parse(ran.out);
      return files.map(({ path }: { path: string }) => path);
    };
    const first = await run('first');
    const second = await run('second');
    expect(first.map((path) => path.split('.').at(-1))).toEqual(expect.arrayContaining(['stl', '3mf']));
    expect(readdirSync(join(folder, 'first')).length).toBe(first.length);
    first.forEach((path, k) => {
      expect(readFileSync(path).equals(readFileSync(second[k]))).toBe(true);
    });
  });

  test('writes only the formats asked for, and says what was written and what to mind', async () => {
    const out = join(folder, 'stl-only');
    const ran = await runInProcess(['make', '-', '--wheel', 'p1', '--out', out, '--as', 'STL'], text);
    expect(ran.code).toBe(0);
    expect(readdirSync(out).every((name) => name.endsWith('.stl'))).toBe(true);
    expect(ran.out).toContain(join(out, readdirSync(out)[0]));
    expect(ran.out).toContain('.stl: For any slicer');
    expect(ran.out).not.toContain('.3mf');
    expect(ran.out).toContain('Before you make it');
    expect(ran.out).toContain('No allowance for your printer');
  });

  test('writes the flat files and the sheet, on the paper that is asked for', async () => {
    const out = join(folder, 'flat');
    const words = ['make', '-', '--wheel', 'p1', '--out', out, '--as', 'dxf,svg,pdf', '--json'];
    const ran = await runInProcess([...words, '--paper', 'letter'], text);
    expect([ran.code, ran.err]).toEqual([0, '']);
    const endings = readdirSync(out).map((name) => name.split('.').at(-1));
    expect(new Set(endings)).toEqual(new Set(['dxf', 'svg', 'pdf']));
    const { files, spec, sheet, order } = JSON.parse(ran.out);
    expect(files.at(-1)).toMatchObject({ mediaType: 'application/pdf' });
    expect(readFileSync(files.at(-1).path).subarray(0, 5).toString('latin1')).toBe('%PDF-');
    expect(sheet.gearData.find((row: { key: string }) => row.key === 'teeth').value).toBe(spec.teeth);
    expect(order.rows[0]).toEqual({ what: 'How many', value: '3' });
    const a5 = await runInProcess([...words, '--force', '--paper', 'a5'], text);
    expect(a5.code).toBe(2);
    expect(a5.out).toContain('a4, letter');
  });

  test('an unknown format is refused with those that there are, and nothing is written', async () => {
    const out = join(folder, 'unknown');
    const ran = await runInProcess(['make', '-', '--wheel', 'p1', '--out', out, '--as', 'stl,doc'], text);
    expect(ran.code).toBe(2);
    expect(ran.err).toContain('stl, 3mf, step, dxf, svg, pdf');
    expect(existsSync(out)).toBe(false);
  });

  test('replaces nothing without --force, and everything with it', async () => {
    const out = join(folder, 'twice');
    const words = ['make', '-', '--wheel', 'p1', '--out', out, '--as', 'stl'];
    expect((await runInProcess(words, text)).code).toBe(0);
    const [name] = readdirSync(out);
    writeFileSync(join(out, name), 'mine');
    const refused = await runInProcess(words, text);
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('--force');
    expect(readFileSync(join(out, name), 'utf8')).toBe('mine');
    expect((await runInProcess([...words, '--force'], text)).code).toBe(0);
    expect(readFileSync(join(out, name)).length).toBeGreaterThan(1000);
    expect(readdirSync(out)).toEqual([name]);
  });

  test('answers no, exit code 1, where nothing is known of the wheel', async () => {
    const out = join(folder, 'nothing');
    const ran = await runInProcess(['make', '-', '--wheel', 'p1', '--out', out], jobWithReadings([]));
    expect(ran.code).toBe(1);
    expect(() => readdirSync(out)).toThrow();
  });
});

describe('bad input is exit code 2, with what was wrong and what to do, and nothing written', () => {
  test.each([
    ['no command', [], 'no command was given'],
    ['an unknown command', ['weigh'], 'weigh'],
    ['an unknown option', ['identify', '-', '--fast'], '--fast'],
    ['no job', ['identify'], 'JOB'],
    ['two jobs', ['identify', 'a', 'b'], 'arguments'],
    ['an option without its value', ['identify', '-', '--wheel'], '--wheel'],
    ['make without a folder', ['make', '-', '--wheel', 'p1'], '--out'],
    ['make without a wheel', ['make', '-', '--out', 'x'], '--wheel'],
    ['an unknown wheel', ['identify', '-', '--wheel', 'p9'], 'p9'],
    ['a file that is not there', ['identify', 'no-such-job.json'], 'is not there'],
    ['a folder', ['identify', 'src'], 'is a folder'],
    ['an unknown format', ['make', '-', '--wheel', 'p1', '--out', 'out/never', '--as', 'gcode'], 'gcode'],
    ['an unknown process', ['make', '-', '--wheel', 'p1', '--out', 'out/never', '--process', 'clay'], 'clay'],
    ['a file as folder', ['make', '-', '--wheel', 'p1', '--out', 'package.json'], 'is not a folder'],
  ])('%s', async (_, words, message) => {
    const ran = await runInProcess(words, text);
    expect([ran.code, ran.out]).toEqual([2, '']);
    expect(ran.err).toContain(message);
    expect(ran.err.trim().split('\n').length).toBeGreaterThan(1);
    const asJson = await runInProcess([...words, '--json'], text);
    expect(asJson.code).toBe(2);
    const { error } = JSON.parse(asJson.out);
    expect(error.message).not.toBe('');
    expect(error.remedy).not.toBe('');
    expect(() => readdirSync('out/never')).toThrow();
  });

  test('a wrong value names its field and its line', async () => {
    const job =
      '{"format":"sparetooth-job","version":1,\n"wheels":[{"id":"a",\n"readings":[{"of":"outside","mm":"12,44"}]}]}';
    const ran = await runInProcess(['identify', '-'], job);
    expect(ran.code).toBe(2);
    expect(ran.err).toContain('wheels[0].readings[0].mm:');
    expect(ran.err).toContain('(line 3)');
    expect(ran.err.replace(/\s+/g, ' ')).toContain('Write 12.44, without quotation marks.');
  });

  test('a file of 50 MB is refused by its size', async () => {
    const path = join(folder, 'large.json');
    writeFileSync(path, new Uint8Array(50_000_000));
    const ran = await runInProcess(['identify', path]);
    expect(ran.code).toBe(2);
    expect(ran.err).toContain('50 MB');
  });

  test('a stream without end is refused as soon as it is more than a job', async () => {
    let given = 0;
    const { runCommandLine } = await import('../../src/cli/run-command-line.ts');
    const code = await runCommandLine(['identify', '-'], {
      standardInput: (async function* () {
        for (;;) {
          given += 100_000;
          yield new Uint8Array(100_000).fill(0x20);
        }
      })(),
      print: () => {},
      printError: () => {},
    });
    expect(code).toBe(2);
    expect(given).toBeLessThan(6_000_000);
  });
});

describe('help and version', () => {
  test('--version is the version of the package', async () => {
    expect(await runInProcess(['--version'])).toEqual({ code: 0, out: `${version}\n`, err: '' });
  });

  test.each([
    [['--help'], ['identify', 'make', 'Exit code']],
    [
      ['identify', '--help'],
      ['--wheel', '--json', 'standard input'],
    ],
    [
      ['make', '--help'],
      ['--out', '--as', '--process', '--force', 'stl,3mf', 'pdf', 'filament-0.4'],
    ],
    [['help', 'make'], ['--out']],
  ])('%j', async (words, parts) => {
    const { code, out, err } = await runInProcess(words);
    expect([code, err]).toEqual([0, '']);
    for (const part of parts) expect(out).toContain(part);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });
});
