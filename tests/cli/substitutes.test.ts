import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { parseJob, type SubstitutesReport } from '../../src/index.ts';
import { runInProcess } from './run-in-process.ts';

const folder = mkdtempSync(join(tmpdir(), 'parts-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** An invented pair: a pinion that is broken, module 0.5, 24 teeth, and its mate at the distance that fits them. */
function makeJob(given: { center?: number; wheel?: object; wanted?: object } = {}): string {
  return JSON.stringify({
    format: 'sparetooth-job',
    version: 1,
    invented: true,
    wheels: [
      {
        id: 'p1',
        state: 'damaged',
        shaft: 'motor',
        spec: { teeth: 24, moduleMm: 0.5, faceWidthMm: 4 },
        readings: [{ of: 'shaft', mm: 2 }],
        ...given.wheel,
      },
      { id: 'w1', state: 'sound', shaft: 'drum', spec: { teeth: 60, moduleMm: 0.5 } },
    ],
    meshes: [{ kind: 'teeth', driver: 'p1', driven: 'w1', centerMm: given.center ?? 21.05, uMm: 0.02 }],
    ...(given.wanted ? { wanted: given.wanted } : {}),
  });
}

function writeParts(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

describe('substitutes', () => {
  test('finds the wheel in the drawer before it sends anybody shopping, and names the trap', async () => {
    const parts = writeParts(
      'drawer.csv',
      'teeth,pitch,bore,width,where kept\n24,48 DP,2,4,tin 3\n24,0.5,2,4,tin 1\nx,0.5,2,4,tin 9\n',
    );
    const { code, out, err } = await runInProcess(['substitutes', '-', '--parts', parts], makeJob());
    expect(code).toBe(0);
    expect(out.indexOf('tin 1')).toBeGreaterThan(0);
    expect(out.indexOf('tin 1')).toBeLessThan(out.indexOf('search for'));
    expect(out).toContain('Traps');
    expect(out.slice(out.indexOf('Traps'))).toContain('48 DP');
    expect(out.split('\n').every((line) => line.length <= 80)).toBe(true);
    expect(err).toContain('line 4');
    expect(err).toContain('x,0.5,2,4,tin 9');
  });

  test('each row carries what accepting it puts into the job, and the job stays a job', async () => {
    const { code, out } = await runInProcess(['substitutes', '-', '--json'], makeJob());
    expect(code).toBe(0);
    const report = JSON.parse(out) as SubstitutesReport;
    const job = JSON.parse(makeJob());
    expect(report.wheels[0].rows.length).toBeGreaterThan(3);
    for (const row of [...report.wheels[0].rows, ...report.wheels[0].traps, ...(report.trains?.rows ?? [])]) {
      const wheels = job.wheels.map((wheel: { id: string }) => {
        const change = row.accept.find(({ wheelId }) => wheelId === wheel.id);
        return change ? { ...wheel, spec: change.spec } : wheel;
      });
      expect(row.accept.length).toBeGreaterThan(0);
      expect(parseJob(JSON.stringify({ ...job, wheels })).notices).toEqual([]);
    }
    const [first] = report.wheels[0].rows;
    expect(first.verdict).toBe('turns');
    expect(first.meshes[0].mateId).toBe('w1');
    expect(first.search).toMatch(/^spur gear, module 0\.5, 24 teeth, bore 2 mm/);
    expect(first.checks.map(({ of }) => of)).toEqual(['outside', 'span']);
  });

  test('trains that keep the wanted ratio come with their proof of being the best', async () => {
    const wanted = { from: 'motor', to: 'drum', ratio: 2.5, tolerancePercent: 0.5 };
    const { out } = await runInProcess(['substitutes', '-', '--json'], makeJob({ wanted }));
    const { trains } = JSON.parse(out) as SubstitutesReport;
    expect(trains?.proven).toBe(true);
    expect(trains?.wantedRatio).toBe(2.5);
    const [best] = trains?.rows ?? [];
    expect(best.errorPercent).toBe(0);
    expect(best.fits).toBe(true);
    expect(best.ratio).toEqual({ num: 5, den: 2 });
  });

  test('only the wheels that are named may change', async () => {
    const { out } = await runInProcess(['substitutes', '-', '--json', '--change', 'p1'], makeJob());
    const { trains } = JSON.parse(out) as SubstitutesReport;
    for (const { accept } of trains?.rows ?? []) expect(accept.map(({ wheelId }) => wheelId)).toEqual(['p1']);
    const wrong = await runInProcess(['substitutes', '-', '--change', 'p1,nobody'], makeJob());
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain('nobody');
  });

  test('the answer is no where nothing goes in: 15 mm are less than the mate of 60 teeth needs', async () => {
    const { code, out } = await runInProcess(['substitutes', '-', '--change', 'p1'], makeJob({ center: 15 }));
    expect(code).toBe(1);
    expect(out).toContain('Nothing was found that goes in as it should');
  });

  test('a wheel of which nothing is known is told what to measure; a job without wheels what to add', async () => {
    const unknown = await runInProcess(
      ['substitutes', '-'],
      makeJob({ wheel: { spec: {}, readings: [], shaft: 'x' }, center: 30 }),
    );
    expect(unknown.code).toBe(1);
    expect(unknown.out).toContain('not known yet');
    const empty = await runInProcess(['substitutes', '-'], '{"format":"sparetooth-job","version":1}');
    expect(empty.code).toBe(1);
    expect(empty.out).toContain('no wheels yet');
  });

  test('a mate that was only counted is worked out from its wheel and their distance, shift and all', async () => {
    const job = JSON.parse(makeJob({ center: 21.3 }));
    job.wheels[1] = { id: 'w1', shaft: 'drum', readings: [{ of: 'teeth', count: 60 }] };
    const { out } = await runInProcess(['substitutes', '-', '--json'], JSON.stringify(job));
    const { wheels, trains } = JSON.parse(out) as SubstitutesReport;
    // 0.3 mm over the nominal 21 are 0.6 modules of shift, less the play: the mean over how much play there may be.
    expect(trains?.rows[0].meshes[0].driven.profileShift).toBeGreaterThan(0.3);
    expect(trains?.rows[0].meshes[0].driven.profileShift).toBeLessThan(0.65);
    expect(trains?.rows[0].newParts).toBe(1);
    expect(wheels[0].rows[0].verdict).toBe('turns');
  });

  test.each(['rack', 'internal', 'worm', 'pulley', 'bevel', 'ratchet', 'other'])(
    'a broken %s is answered in words',
    async (kind) => {
      const job = makeJob({ wheel: { kind } });
      const { code, out } = await runInProcess(['substitutes', '-'], job);
      expect([0, 1]).toContain(code);
      expect(out.length).toBeGreaterThan(20);
    },
  );

  test.each([
    ['no such wheel', ['--wheel', 'zzz'], 'zzz'],
    ['no such parts file', ['--parts', '/nowhere/parts.csv'], 'is not there'],
  ])('%s is bad input', async (_, words, said) => {
    const { code, err, out } = await runInProcess(['substitutes', '-', ...words], makeJob());
    expect(code).toBe(2);
    expect(err).toContain(said);
    expect(out).toBe('');
  });

  test('a parts file without headings is bad input, and garbage as one never crashes', async () => {
    const bare = writeParts('bare.csv', '24,0.5\n');
    const refused = await runInProcess(['substitutes', '-', '--parts', bare], makeJob());
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('teeth,module');
    const garbage = writeParts(
      'garbage.csv',
      `teeth,module\n${'"'.repeat(501)}\n\u0000\u0001;;;\n-1,-1\n24,1e308\n`,
    );
    const { code, err } = await runInProcess(['substitutes', '-', '--parts', garbage], makeJob());
    expect(code).toBe(0);
    expect(err).toContain('rows left out');
  });

  test('the demo recorder with a split wheel and a lost pinion: both are found, and its ratio of 48 is kept exactly', async () => {
    const job = readFileSync('demo-data/paper-recorder.json', 'utf8');
    const { code, out } = await runInProcess(
      ['substitutes', '-', '--json', '--parts', 'demo-data/drawer-of-spares.csv'],
      job,
    );
    expect(code).toBe(0);
    const report = JSON.parse(out) as SubstitutesReport & { parts: { badRows: unknown[] } };
    expect(report.parts.badRows).toHaveLength(5);
    expect(report.wheels.map(({ need }) => need?.spec.teeth)).toEqual([64, 20]);
    expect(report.trains?.rows[0].errorPercent).toBe(0);
    expect(report.trains?.rows[0].newParts).toBe(2);
  });
});
