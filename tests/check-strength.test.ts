import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { materials } from '../gear-library/materials.ts';
import { processes } from '../gear-library/processes.ts';
import { checkStrength, Fail, type Job, parseJob, type StrengthOptions, tellStrength } from '../src/index.ts';

/** An invented recorder: a POM pinion that split on its motor's shaft, and the brass wheel that it drove. */
function makeJob(pinion: object = {}, rest: object = {}): Job {
  return parseJob(
    JSON.stringify({
      format: 'sparetooth-job',
      version: 1,
      invented: true,
      wheels: [
        {
          id: 'p1',
          shaft: 'motor',
          material: 'pom',
          state: 'damaged',
          damage: [{ kind: 'split', gapMm: 0.3, where: 'space' }],
          readings: [{ of: 'shaft', mm: 2 }],
          spec: {
            teeth: 16,
            moduleMm: 0.5,
            faceWidthMm: 4,
            bore: { shape: 'round', diameterMm: 2 },
          },
          ...pinion,
        },
        { id: 'w1', shaft: 'drum', material: 'brass', spec: { teeth: 60, moduleMm: 0.5, faceWidthMm: 3 } },
      ],
      meshes: [{ kind: 'teeth', driver: 'p1', driven: 'w1', centerMm: 19 }],
      motor: { shaft: 'motor', rpm: 3000, stallTorqueNmm: 8 },
      ...rest,
    }),
  ).job;
}

const pom: StrengthOptions = { process: 'machine-shop', material: 'pom', torqueNmm: 2, temperatureC: 30 };

describe('the strength of a wheel in its job', () => {
  test('takes the stall from the motor on its shaft, the mate from its mesh, and says why it split', () => {
    const report = checkStrength(makeJob(), 'p1', pom);
    expect(report.load.stallFrom).toBe('motor');
    // 2 · 8 N mm over 8 mm (own arithmetic).
    expect(report.load.stallN).toBe(2);
    expect(report.load.runningN).toBe(0.5);
    expect(report.mate).toEqual({ id: 'w1', material: 'brass', isMaterialAssumed: false });
    expect(report.form.contactRatio).toBeGreaterThan(1.5);
    expect(report.criteria).toHaveLength(3);
    expect(report.broke[0].cause).toBe('hub-split');
    // 0.3/(π 6.75), the root circle being 8 − 2.5 · 0.5 (own arithmetic).
    expect(report.stretch?.strain).toBeCloseTo(0.01415, 5);
    // Lamé with d 2, D 6.75: W 1.1925, E 2,850 and 1,300, ν 0.35 (own arithmetic).
    expect(report.stretch?.hoop?.freshMpa).toBeCloseTo((0.014147 * 2850 * 1.1925) / 1.5425, 1);
    expect(report.stretch?.hoop?.laterMpa).toBeCloseTo((0.014147 * 1300 * 1.1925) / 1.5425, 1);
    expect(tellStrength(report).join(' ')).toContain('stretched by 1.4 %');
    expect(report.press?.shaftMm).toBe(2);
    expect(report.press?.lastingMm).toBeCloseTo(0.02, 9);
  });

  test('reads the stretch of a whole wheel off shaft and bore, and none off one with play', () => {
    const with2 = (bore: number) =>
      checkStrength(
        makeJob({
          damage: [{ kind: 'crumbling' }],
          readings: [
            { of: 'shaft', mm: 2 },
            { of: 'bore', mm: bore },
          ],
        }),
        'p1',
        pom,
      ).stretch;
    expect(with2(1.9)).toMatchObject({ strain: 0.05, from: 'shaft-and-bore' });
    expect(with2(2.05)).toBeNull();
  });

  test('says where the mate as given can not run with it', () => {
    const apart = makeJob({}, { meshes: [{ kind: 'teeth', driver: 'p1', driven: 'w1', centerMm: 25 }] });
    const report = checkStrength(apart, 'p1', pom);
    expect(report.form.contactRatio).toBeNull();
    expect(tellStrength(report).join(' ')).toContain('does not run with its mate');
    expect(report.criteria.map(({ kind }) => kind)).toEqual(['root-running', 'root-stall']);
  });

  test('is plain data: it survives JSON', () => {
    const report = checkStrength(makeJob(), 'p1', pom);
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  });

  test('never praises a press fit where the old hub split, and refuses one that the process can not hold', () => {
    const thick = makeJob({
      readings: [{ of: 'shaft', mm: 4 }],
      spec: { teeth: 30, moduleMm: 0.5, bore: { shape: 'round', diameterMm: 4 } },
    });
    const cut = tellStrength(checkStrength(thick, 'p1', pom)).join(' ');
    expect(cut).toContain('A press fit is within reach');
    expect(cut).toContain('The old one split that way all the same');
    const printed = tellStrength(checkStrength(thick, 'p1', { process: 'filament-0.4' })).join(' ');
    expect(printed).toContain('No press fit');
    expect(printed).not.toContain('within reach');
  });

  test('judges heat and wall before any margin', () => {
    const hot = checkStrength(makeJob(), 'p1', {
      process: 'filament-0.25',
      material: 'pla',
      temperatureC: 60,
    });
    expect(hot.governs).toBe('heat');
    expect(hot.verdict).toBe('fails');
    const thin = makeJob({
      damage: [],
      readings: [],
      spec: { teeth: 10, moduleMm: 0.5, bore: { shape: 'round', diameterMm: 3 } },
    });
    expect(checkStrength(thin, 'p1', pom).governs).toBe('wall');
  });

  test("takes the old material where the process makes it, else the process's first", () => {
    expect(checkStrength(makeJob(), 'p1', { process: 'machine-shop' }).material.key).toBe('pom');
    expect(checkStrength(makeJob(), 'p1', { process: 'filament-0.4' }).material.key).toBe('pla');
  });

  test('without a torque says what the teeth carry', () => {
    const report = checkStrength(makeJob({ shaft: 'other' }), 'p1', { process: 'machine-shop' });
    expect(report.verdict).toBe('no-load');
    expect(report.criteria).toEqual([]);
    expect(report.carries.runningNmm?.value).toBeGreaterThan(0);
  });

  test('knows an idler, which bends both ways', () => {
    const idler = makeJob(
      {},
      {
        meshes: [
          { kind: 'teeth', driver: 'w1', driven: 'p1', centerMm: 19 },
          { kind: 'teeth', driver: 'p1', driven: 'w1', centerMm: 19 },
        ],
      },
    );
    const one = checkStrength(makeJob(), 'p1', pom).carries.runningN.value;
    expect(checkStrength(idler, 'p1', pom).carries.runningN.value / one).toBeCloseTo(0.7, 6);
  });

  test.each([
    [{ material: 'unobtainium' }, 'material'],
    [{ process: 'casting' }, 'process'],
    [{ torqueNmm: 0 }, 'torqueNmm'],
    [{ torqueNmm: -1 }, 'torqueNmm'],
    [{ stallTorqueNmm: Number.NaN }, 'stallTorqueNmm'],
    [{ temperatureC: 2000 }, 'temperatureC'],
    [{ cycles: 0 }, 'cycles'],
    [{ forceN: 5 }, 'forceN'],
  ])('refuses %j', (options, field) => {
    try {
      checkStrength(makeJob(), 'p1', options);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(Fail);
      expect((error as Fail).field).toBe(field);
      expect((error as Fail).remedy).not.toBe('');
    }
  });

  test('refuses a torque on a rack, and takes a force', () => {
    const rack = makeJob({ kind: 'rack', damage: [], readings: [], spec: { teeth: 20, moduleMm: 0.5 } });
    expect(() => checkStrength(rack, 'p1', { torqueNmm: 2 })).toThrow('pushed by a force');
    const report = checkStrength(rack, 'p1', { forceN: 5, process: 'machine-shop' });
    expect(report.carries.runningNmm).toBeNull();
    expect(report.load.runningN).toBe(5);
  });

  test('every material in every process ends in a verdict and in sentences', () => {
    for (const { key: process } of processes) {
      for (const { key: material } of materials) {
        const report = checkStrength(makeJob(), 'p1', { ...pom, process, material });
        const said = tellStrength(report);
        expect(said.length).toBeGreaterThan(2);
        for (const sentence of said) {
          expect(sentence).toMatch(/^[A-Z].*\.$/);
          expect(sentence).not.toMatch(/NaN|undefined|Infinity/);
        }
      }
    }
  });
});

describe('demo jobs', () => {
  test.each(readdirSync('demo-data').filter((name) => name.endsWith('.json')))(
    '%s: each wheel that is known has its strength told',
    (name) => {
      const { job } = parseJob(readFileSync(`demo-data/${name}`));
      for (const wheel of job.wheels ?? []) {
        try {
          const report = checkStrength(job, wheel.id, { process: 'resin' });
          expect(tellStrength(report)[0]).not.toBe('');
        } catch (error) {
          expect(error).toBeInstanceOf(Fail);
          expect((error as Fail).code).toMatch(/not-identified|bad-value|bad-geometry/);
        }
      }
    },
  );
});
