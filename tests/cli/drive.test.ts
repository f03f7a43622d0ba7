import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { columns } from '../../src/cli/wrap-text.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { fullJob } from '../job/full-job.ts';
import { mutateJob } from '../job/mutate-job.ts';
import { runInProcess } from './run-in-process.ts';

const job = (rest: object): string => JSON.stringify({ format: 'sparetooth-job', version: 1, ...rest });
const wheel = (id: string, teeth: number, rest: object = {}): object => ({ id, spec: { teeth }, ...rest });
const spur = (id: string, teeth: number, rest: object = {}): object => ({
  id,
  spec: { teeth, moduleMm: 0.5 },
  ...rest,
});

async function drive(text: string): Promise<{ code: number; report: Report }> {
  const { code, out } = await runInProcess(['drive', '-', '--json'], text);
  return { code, report: JSON.parse(out) };
}

interface Report {
  readonly ratio: { readonly num: number; readonly den: number; readonly value: number } | null;
  readonly shafts: readonly { readonly id: string; readonly rpm: number | null }[];
  readonly meshes: readonly Record<string, unknown>[];
  readonly troubles: readonly { readonly kind: string; readonly message: string; readonly remedy: string }[];
  readonly [key: string]: unknown;
}

const recorder = {
  wheels: [
    wheel('p1', 20, { shaft: 'motor' }),
    wheel('w1', 50, { shaft: 'middle', part: 'two' }),
    wheel('p2', 15, { part: 'two' }),
    wheel('w2', 75, { shaft: 'roller' }),
  ],
  meshes: [
    { driver: 'p1', driven: 'w1' },
    { kind: 'teeth', driver: 'p2', driven: 'w2' },
  ],
  motor: { shaft: 'motor', rpm: 3000, stallTorqueNmm: 4 },
  wanted: { from: 'motor', to: 'roller', ratio: 12.5, tolerancePercent: 0.5, direction: 'same' },
};

describe('drive --json', () => {
  test('has ratio, direction, shafts, wanted and meshes; a part shares its shaft', async () => {
    const { code, report } = await drive(job(recorder));
    expect(code).toBe(0);
    expect(report).toMatchObject({
      ratio: { num: 25, den: 2, value: 12.5 },
      direction: 'same',
      wanted: { errorPercent: 0, within: true, directionHolds: true, effects: [] },
      troubles: [],
    });
    expect(report.shafts.map(({ id, rpm }) => [id, rpm])).toEqual([
      ['motor', 3000],
      ['middle', -1200],
      ['roller', 240],
    ]);
    for (const mesh of report.meshes) {
      expect(Object.keys(mesh)).toEqual(
        expect.arrayContaining([
          'driver',
          'driven',
          'centerMm',
          'workingPressureAngleDeg',
          'contactRatio',
          'verdict',
          'backlashMinMm',
          'backlashMaxMm',
          'transmissionErrorMm',
          'notes',
        ]),
      );
    }
  });

  test.each([
    ['outside what was wanted', { ...recorder, wanted: { ...recorder.wanted, ratio: 12 } }, 1],
    ['the wrong way round', { ...recorder, wanted: { ...recorder.wanted, direction: 'opposite' } }, 1],
    ['nothing wished for', { ...recorder, wanted: undefined, motor: undefined }, 0],
    ['a wheel that no mesh reaches', { ...recorder, wheels: [...recorder.wheels, wheel('x', 30)] }, 0],
    [
      'a loop that contradicts itself',
      { ...recorder, meshes: [...recorder.meshes, { driver: 'p1', driven: 'w2' }] },
      1,
    ],
    ['no wheels', {}, 1],
    ['wheels without a mesh', { wheels: recorder.wheels }, 1],
    [
      'a wheel that nobody counted',
      { wheels: [spur('a', 20), { id: 'b' }], meshes: [{ driver: 'a', driven: 'b' }] },
      1,
    ],
    [
      'too near to mesh',
      {
        wheels: [spur('a', 20), spur('b', 60)],
        meshes: [{ driver: 'a', driven: 'b', centerMm: 12, uMm: 0.05 }],
      },
      1,
    ],
    ['a mesh that names no wheel', { ...recorder, meshes: [...recorder.meshes, { kind: 'teeth' }] }, 0],
  ])('exit code of %s', async (_, fields, code) => {
    const ran = await drive(job(fields));
    expect(ran.code, JSON.stringify(ran.report.troubles)).toBe(code);
    for (const { message, remedy } of ran.report.troubles)
      expect(message + remedy).not.toMatch(/undefined|NaN/);
  });

  test.each([
    ['no distance at all', 0, 'centerMm'],
    ['a negative distance', -14, 'centerMm'],
    ['a distance in words', 'about 14', 'centerMm'],
  ])('%s is bad input that names its field', async (_, centerMm, field) => {
    const text = job({
      wheels: [wheel('a', 20), wheel('b', 40)],
      meshes: [{ driver: 'a', driven: 'b', centerMm }],
    });
    const { code, out } = await runInProcess(['drive', '-', '--json'], text);
    expect(code).toBe(2);
    expect(JSON.parse(out).error).toMatchObject({ field: `meshes[0].${field}` });
    expect(JSON.parse(out).error.remedy).toMatch(/\S/);
  });

  test('shafts may be named by a wheel on them, and a distance may stand among the readings', async () => {
    const { report } = await drive(
      job({
        wheels: [
          spur('a', 20, { shaft: 's' }),
          spur('b', 60, {
            readings: [{ of: 'center-distance', mate: 'a', overPostsMm: 22, postsMm: [2, 2], uMm: 0.05 }],
          }),
        ],
        meshes: [{ driver: 'a', driven: 'b' }],
        wanted: { from: 'a', to: 'b', ratio: 3 },
      }),
    );
    expect(report).toMatchObject({ from: 's', ratio: { num: 3, den: 1 } });
    expect(report.meshes[0]).toMatchObject({ centerMm: 20, centerUMm: expect.closeTo(0.05, 9) });
  });

  test('a thousand shafts are answered, and fast', async () => {
    const count = 1000;
    const wheels = Array.from({ length: count - 1 }, (_, k) => [
      spur(`d${k}`, 20, { shaft: `s${k}` }),
      spur(`w${k}`, 21, { shaft: `s${k + 1}` }),
    ]).flat();
    const meshes = Array.from({ length: count - 1 }, (_, k) => ({ driver: `d${k}`, driven: `w${k}` }));
    const started = performance.now();
    const { code, report } = await drive(job({ wheels, meshes }));
    expect(code).toBe(0);
    expect(report.shafts).toHaveLength(count);
    expect(report.ratio?.value).toBeCloseTo(1.05 ** 999, -12);
    expect(performance.now() - started).toBeLessThan(20_000);
  });
});

describe('the report for people', () => {
  const demos = ['paper-recorder', 'slide-changer', 'chart-recorder', 'coin-counter'];
  test.each(demos)(
    'of %s is plain text of 80 columns, without signs that nobody reads aloud',
    async (name) => {
      const { out } = await runInProcess(['drive', '-'], readFileSync(`demo-data/${name}.json`));
      for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(columns);
      expect(out).not.toMatch(/NaN|undefined|\[object|null|Infinity/);
      expect(out.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u2500-\u259f]/u);
    },
  );

  test('says what is wrong before all else, and what to do', async () => {
    // There, but never counted: only what is lost is worked out from its neighbors.
    const text = readFileSync('demo-data/paper-recorder.json', 'utf8').replace('"lost"', '"damaged"');
    const { code, out } = await runInProcess(['drive', '-'], text);
    expect(code).toBe(1);
    const lines = out.split('\n');
    expect(lines[1]).toContain('Nobody has counted "lost-pinion"');
    expect(out).toContain('it would have 20 teeth');
  });

  test('what is lost is worked out from its neighbors, and the drive goes on from there', async () => {
    const { code, out } = await runInProcess(['drive', '-'], readFileSync('demo-data/paper-recorder.json'));
    expect(code).toBe(0);
    expect(out).toContain('"lost-pinion" is taken as identified: module 0.5, 20 teeth');
    expect(out).toContain('That is exactly what was wanted.');
  });

  test('with the lost pinion counted the paper runs as it should, to the last digit', async () => {
    const text = readFileSync('demo-data/paper-recorder.json', 'utf8');
    const found = text.replace(
      '"state": "lost",',
      '"state": "lost", "spec": { "teeth": 20, "moduleMm": 0.5 },',
    );
    const { out } = await runInProcess(['drive', '-'], found);
    expect(out).toContain('48 turns of motor for one of roller, the other way round.');
    expect(out).toContain('That is exactly what was wanted.');
    const wrong = await runInProcess(['drive', '-'], found.replace('"teeth": 20', '"teeth": 21'));
    expect(wrong.code).toBe(1);
    expect(wrong.out).toContain('fast, where 0.1 % is allowed');
  });

  test('a belt, a worm and a bar: how far a turn of the motor moves the carriage', async () => {
    const { code, report } = await drive(readFileSync('demo-data/slide-changer.json', 'utf8'));
    expect(code).toBe(0);
    // 6/24 · 0.98 · 1/40 · 14 π 0.8 (own arithmetic).
    expect(report.travelMmPerTurn).toBeCloseTo((((6 / 24) * 0.98) / 40) * 14 * Math.PI * 0.8, 4);
  });
});

const seed = 79;
const spoilt = 120;
test(`${spoilt} spoilt drives (seed ${seed}): an answer or a Fail, and never a figure that is none`, async () => {
  const random = startRandom(seed);
  const bases = [
    fullJob,
    ...['paper-recorder', 'slide-changer'].map((name) =>
      JSON.parse(readFileSync(`demo-data/${name}.json`, 'utf8')),
    ),
  ];
  let answered = 0;
  for (let k = 0; k < spoilt; k++) {
    const mutation = mutateJob(bases[k % bases.length], random);
    const ran = await runInProcess(['drive', '-', '--json'], mutation.bytes);
    const document = JSON.parse(ran.out);
    if (mutation.mustFail) expect(ran.code).toBe(2);
    if ('error' in document) expect(document.error.remedy).not.toBe('');
    else {
      answered++;
      expect(ran.out).not.toMatch(/NaN|Infinity/);
      expect((await runInProcess(['drive', '-'], mutation.bytes)).out).not.toMatch(/NaN|Infinity|undefined/);
    }
  }
  expect(answered).toBeGreaterThan(15);
});
