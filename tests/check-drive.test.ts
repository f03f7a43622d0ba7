import { describe, expect, test } from 'vitest';
import { checkDrive, type DriveReport, type Job } from '../src/index.ts';

type Fields = NonNullable<NonNullable<Job['wheels']>[number]['spec']>;
type MeshReport = DriveReport['meshes'][number];

function pair(one: Fields, other: Fields, centerMm: number, uMm = 0.0001, kind?: 'internal' | 'rack'): Job {
  return {
    format: 'sparetooth-job',
    version: 1,
    wheels: [
      { id: 'a', spec: one },
      { id: 'b', spec: other, ...(kind ? { kind } : {}) },
    ],
    meshes: [{ driver: 'a', driven: 'b', centerMm, uMm }],
  };
}

function meshOf(job: Job): MeshReport {
  return checkDrive(job).meshes[0];
}

describe('meshes are rolled at the distance of the job', () => {
  // Elements of Metric Gear Technology, table 4-4: 12 and 24 teeth of module 3, x 0.6 and 0.36: a 56.4999, 26.0886°.
  test('a handbook pair has its working angle and no play at its own distance', () => {
    const mesh = meshOf(
      pair(
        { teeth: 12, moduleMm: 3, profileShift: 0.6, tipDiameterMm: 44.84 },
        { teeth: 24, moduleMm: 3, profileShift: 0.36, tipDiameterMm: 79.44 },
        56.4999,
      ),
    );
    expect(mesh.workingPressureAngleDeg).toBeCloseTo(26.0886, 3);
    expect(mesh.backlashMinMm).toBeCloseTo(0, 2);
  });

  // Backlash is circumferential at the working circle; own arithmetic, as in involute/pair-clearances: 0.0736.
  test('20 and 40 teeth of module 1, 0.1 mm over their distance, have 0.0736 mm of play', () => {
    const mesh = meshOf(pair({ teeth: 20, moduleMm: 1 }, { teeth: 40, moduleMm: 1 }, 30.1));
    expect(mesh).toMatchObject({ verdict: 'turns', centerMm: 30.1 });
    expect(mesh.backlashMinMm).toBeCloseTo(0.0736, 3);
    expect(Math.abs((mesh.backlashMaxMm ?? 0) - 0.0736)).toBeLessThan(0.001);
    expect(mesh.transmissionErrorMm).toBeLessThan(0.002);
  });

  // The product's own two cases: near pitches that run, and far ones that bind.
  test('0.4 against 64 DP turns; 0.5 against 48 DP jams, and is told from where it is free', () => {
    const near = meshOf(
      pair(
        { teeth: 14, moduleMm: 0.4, thinningMm: 0.03 },
        { teeth: 30, moduleMm: 25.4 / 64, thinningMm: 0.03 },
        8.8,
      ),
    );
    expect(near.verdict).toBe('turns');
    expect(near.transmissionErrorMm).toBeCloseTo(0.008, 2);
    expect(near.notes.join()).toContain('closer');
    const report = checkDrive(pair({ teeth: 20, moduleMm: 0.5 }, { teeth: 30, moduleMm: 25.4 / 48 }, 12.9));
    expect(report.meshes[0].verdict).toBe('jams');
    expect(report.meshes[0].freeFromMm).toBeGreaterThan(12.9);
  });

  test('rings and bars are rolled from either side', () => {
    const ring = pair(
      { teeth: 20, moduleMm: 0.5, thinningMm: 0.04 },
      { teeth: 60, moduleMm: 0.5 },
      10,
      0.01,
      'internal',
    );
    const bar = pair({ teeth: 20, moduleMm: 0.5, thinningMm: 0.04 }, { moduleMm: 0.5 }, 5.02, 0.01, 'rack');
    for (const job of [ring, bar]) {
      const there = meshOf(job);
      const back = meshOf({
        ...job,
        meshes: [{ driver: 'b', driven: 'a', centerMm: there.centerMm ?? 0, uMm: 0.01 }],
      });
      expect([there.verdict, back.verdict]).toEqual(['turns', 'turns']);
    }
  });

  test('a pinion that lost teeth is rolled as it lies; where none holds, no figure is made up', () => {
    const job = pair({ teeth: 12, moduleMm: 0.5 }, { teeth: 24, moduleMm: 0.5, thinningMm: 0.05 }, 9.05);
    const [a, b] = job.wheels ?? [];
    const mesh = meshOf({ ...job, wheels: [{ ...a, missing: [0, 1, 2] }, b] });
    expect(mesh.verdict).not.toBe('turns');
    expect(JSON.stringify(mesh)).not.toContain('Infinity');
    expect(mesh).toMatchObject({ backlashMaxMm: null, transmissionErrorMm: null });
    expect(mesh.notes.join()).toContain('no tooth drives the driven wheel');
  });

  test('a spec that no wheel can have is told of its mesh, and the rest is answered', () => {
    const job = pair({ teeth: 20, moduleMm: 0.5, dedendum: 4 }, { teeth: 40, moduleMm: 0.5 }, 15);
    const report = checkDrive(job);
    expect(report.ratio?.value).toBe(2);
    expect(report.meshes[0].verdict).toBeNull();
    expect(report.troubles).toMatchObject([{ kind: 'cannot-mesh', about: ['a', 'b'] }]);
  });
});

describe('what a wheel is', () => {
  const readings = [
    { of: 'teeth', count: 60 },
    { of: 'outside', mm: 31 },
    { of: 'span', teeth: 7, mm: 9.98 },
    { of: 'span', teeth: 8, mm: 11.45 },
  ] as const;

  test('comes from its readings where it was not said, and the mesh tells so', () => {
    const job = pair({ teeth: 20, moduleMm: 0.5 }, {}, 20.05, 0.03);
    const [a] = job.wheels ?? [];
    const report = checkDrive({ ...job, wheels: [a, { id: 'b', readings: [...readings] }] });
    expect(report.wheels[1]).toMatchObject({ id: 'b', teeth: 60, knownFrom: 'identified' });
    expect(report.meshes[0].verdict).toBe('turns');
    expect(report.meshes[0].notes.join()).toContain('"b" is taken as identified: module 0.5, 60 teeth');
  });

  test('from counts alone a pair has its ratio, and is not rolled', () => {
    const job = pair({ teeth: 20, moduleMm: 0.5 }, {}, 20.05);
    const report = checkDrive({
      ...job,
      meshes: [{ kind: 'teeth', driver: 'a', driven: 'b' }],
      wheels: [
        { id: 'a', readings: [{ of: 'teeth', count: 20 }] },
        { id: 'b', readings: [{ of: 'teeth', count: 60 }] },
      ],
    });
    expect(report.ratio).toEqual({ num: 3, den: 1, value: 3 });
    expect(report.meshes[0]).toMatchObject({ verdict: null });
    expect(report.meshes[0].notes.join()).toContain('`identify` says what to measure next');
  });

  test('from a count alone it is what its mate and the distance make of it, and is rolled as that', () => {
    const job = pair({ teeth: 20, moduleMm: 0.5 }, {}, 20.05);
    const [a] = job.wheels ?? [];
    const report = checkDrive({ ...job, wheels: [a, { id: 'b', readings: [{ of: 'teeth', count: 60 }] }] });
    expect(report.ratio).toEqual({ num: 3, den: 1, value: 3 });
    expect(report.meshes[0].verdict).toBe('turns');
    expect(report.meshes[0].notes.join()).toContain('"b" is taken as identified: module 0.5, 60 teeth');
  });
});
