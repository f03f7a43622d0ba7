import { describe, expect, test } from 'vitest';
import type { DriveModel, DriveWheel } from '../../src/drive/drive-model.ts';
import type { DriveReport } from '../../src/drive/drive-report.ts';
import { reportDrive } from '../../src/drive/report-drive.ts';
import type { RollingProof } from '../../src/rolling/rolling-proof.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';
import { makeDrive, makePlanetary, makeTrain } from './make-drive.ts';

/** A proof that says what it is told: what is tested here is what the report makes of it. */
function proofOf(verdict: RollingProof['verdict'], backlash = 0.08): RollingProof {
  const at = (centerDistance: number): RollingProof['mean'] => ({
    centerDistance,
    isFree: verdict !== 'jams',
    workingPressureAngle: rad(20.5),
    contactRatio: 1.6,
    backlashLeast: backlash + centerDistance / 1e6,
    backlashGreatest: backlash + 0.01,
    tightestAt: 0,
    transmissionError: 0.002,
    interference: [],
    curve: { driverAngle: new Float64Array(), low: new Float64Array(), high: new Float64Array() },
  });
  return {
    verdict,
    reasons: verdict === 'rough' ? [{ kind: 'backlash', value: 0.005, limit: 0.01, unit: 'mm' }] : [],
    mean: at(20),
    range: [at(19.9), at(20), at(20.1)],
    freeFrom: 20,
    smoothFrom: undefined,
    cycle: { of: 'one-pitch', meetings: 1 },
  };
}

const spur = (
  id: string,
  teeth: number,
  rest: Partial<DriveWheel> = {},
): Partial<DriveWheel> & { id: string } => ({
  id,
  teeth,
  spec: makeSpec({ module: 0.5, teeth }),
  ...rest,
});

function pairAt(mm: number, one = spur('a', 20), other = spur('b', 60), uMm = 0.02): DriveModel {
  return makeDrive([one, other], [{ driver: 'a', driven: 'b', center: { mm, uMm } }]);
}

const noWish = {
  from: undefined,
  to: undefined,
  ratio: undefined,
  travelMmPerTurn: undefined,
  tolerancePercent: undefined,
  direction: undefined,
};

const kindsOf = (report: DriveReport): string[] => report.troubles.map(({ kind }) => kind);

describe('the ratio and its wish', () => {
  test('speeds in turns a minute, positive with the input', () => {
    const report = reportDrive({
      ...makeTrain([
        [20, 50],
        [15, 75],
      ]),
      motor: { shaft: 's0', rpm: 3000, stallTorqueNmm: 4, torqueNmm: 1 },
    });
    expect(report.ratio).toEqual({ num: 25, den: 2, value: 12.5 });
    expect(report).toMatchObject({ from: 's0', to: 's2', direction: 'same', troubles: [] });
    expect(report.shafts.map(({ rpm }) => rpm)).toEqual([3000, -1200, 240]);
    expect(report.shafts.map(({ torqueNmm }) => torqueNmm)).toEqual([4, 10, 50]);
    expect(report.shafts[2].runningTorqueNmm).toBe(12.5);
    expect(report.notes.join()).toContain('without loss');
  });

  test('a slower output than wanted is a positive error, told in seconds, millimeters and cents', () => {
    const wanted = {
      from: undefined,
      to: undefined,
      ratio: 12.4875,
      travelMmPerTurn: undefined,
      tolerancePercent: 0.05,
      direction: 'opposite',
    } as const;
    const report = reportDrive({
      ...makeTrain([
        [20, 50],
        [15, 75],
      ]),
      wanted,
    });
    expect(report.wanted).toMatchObject({
      errorPercent: expect.closeTo(0.1001, 4),
      within: false,
      directionHolds: false,
    });
    const of = (kind: string): number | undefined =>
      report.wanted?.effects.find((one) => one.kind === kind)?.value;
    // 0.1 % of an hour, of a meter, and 1200 log2 1.001 (own arithmetic).
    expect(of('seconds-an-hour')).toBeCloseTo(3.6036, 3);
    expect(of('travel-mm')).toBeCloseTo(-1, 2);
    expect(of('cents')).toBeCloseTo(-1.732, 2);
  });

  // Elements of Metric Gear Technology, table 4-6 (value from memory): 12 teeth of module 3 move a rack 113.097 a turn.
  test('a bar as output has its travel for a turn of the input in place of a ratio', () => {
    const pinion = { id: 'p', teeth: 12, spec: makeSpec({ module: 3, teeth: 12 }) };
    const model = makeDrive(
      [pinion, { id: 'bar', kind: 'rack', shaft: 'slide' }],
      [{ driver: 'p', driven: 'bar' }],
    );
    const wanted = {
      from: 'p',
      to: 'bar',
      ratio: undefined,
      travelMmPerTurn: 120,
      tolerancePercent: 1,
      direction: undefined,
    };
    const report = reportDrive({
      ...model,
      wanted,
      motor: { shaft: 'p', rpm: 2, stallTorqueNmm: undefined, torqueNmm: undefined },
    });
    expect(report).toMatchObject({ ratio: null, to: 'bar', travelMmPerTurn: expect.closeTo(113.097, 3) });
    expect(report.racks[0].mmPerMinute).toBeCloseTo(226.195, 3);
    expect(report.shafts[0].travelMmPerTurn).toBeCloseTo(113.097, 3);
    expect(report.wanted).toMatchObject({
      errorPercent: expect.closeTo((100 * (120 - 113.0973)) / 120, 3),
      within: false,
    });
  });

  test('the carrier is what comes out of a planetary set, where nothing else is asked for', () => {
    const report = reportDrive(makePlanetary(16, 16, 48, { fixed: ['ring'] }));
    expect(report).toMatchObject({
      from: 'sun',
      to: 'arm',
      direction: 'same',
      ratio: { num: 4, den: 1, value: 4 },
    });
  });

  test('a worm: the ratio is exact, which way it turns is not said, and it locks itself', () => {
    const worm = { moduleMm: 0.5, moduleIn: 'axial', referenceDiameterMm: 6 } as const;
    const report = reportDrive(
      makeDrive(
        [
          { id: 'worm', kind: 'worm', teeth: 1, worm },
          { id: 'wheel', kind: 'worm-wheel', teeth: 30 },
        ],
        [{ kind: 'worm', driver: 'worm', driven: 'wheel' }],
      ),
    );
    expect(report).toMatchObject({ ratio: { num: 30, den: 1 }, direction: null, troubles: [] });
    // atan(0.5/6) = 4.76 degrees.
    expect(report.meshes[0].notes.join()).toMatch(/4\.8 degrees: it locks itself/);
    expect(report.shafts[1]).toMatchObject({ isDirectionKnown: false, turns: { num: 1, den: 30 } });
  });

  test('a belt in the way gives a value and no whole numbers', () => {
    const report = reportDrive(
      makeDrive(
        [
          { id: 'a', kind: 'pulley', diameterMm: 8.2 },
          { id: 'b', kind: 'pulley', diameterMm: 41 },
        ],
        [{ kind: 'belt', driver: 'a', driven: 'b', slipPercent: 2 }],
      ),
    );
    expect(report.ratio).toEqual({ num: null, den: null, value: expect.closeTo(5 / 0.98, 12) });
  });
});

describe('what can not be said, and why', () => {
  test('a lost wheel between two that are counted: the ratio stays open, and the count that is wanted is named', () => {
    const train = makeTrain([
      [16, 64],
      [16, 64],
      [20, 60],
    ]);
    const model: DriveModel = {
      ...train,
      wheels: train.wheels.map((wheel) =>
        wheel.id === 'd2' ? { ...wheel, teeth: undefined, isLost: true } : wheel,
      ),
      wanted: {
        from: undefined,
        to: 's3',
        ratio: 48,
        travelMmPerTurn: undefined,
        tolerancePercent: undefined,
        direction: undefined,
      },
    };
    const report = reportDrive(model);
    expect(report.ratio).toBeNull();
    expect(report.troubles).toMatchObject([
      { kind: 'unknown-teeth', about: ['d2'], needed: { wheel: 'd2', teeth: expect.closeTo(20, 9) } },
    ]);
    expect(reportDrive({ ...model, wanted: undefined }).troubles[0].remedy).toContain('It is lost');
  });

  test('an idler nobody counted keeps nothing from being said; the note says so and asks for nothing', () => {
    const report = reportDrive(
      makeDrive(
        [{ id: 'a', teeth: 20 }, { id: 'i' }, { id: 'b', teeth: 50 }],
        [
          { driver: 'a', driven: 'i' },
          { driver: 'i', driven: 'b' },
        ],
      ),
    );
    expect(report).toMatchObject({ ratio: { num: 5, den: 2 }, direction: 'same', troubles: [] });
    expect(report.notes.join()).toContain('"i" is an idler');
  });

  test.each<[string, DriveModel, string[], string]>([
    ['no mesh at all', makeDrive([{ id: 'a', teeth: 20 }], []), ['no-input'], 'no mesh'],
    [
      'a ring of drivers',
      makeDrive(
        [
          { id: 'a', teeth: 20 },
          { id: 'b', teeth: 20 },
        ],
        [
          { driver: 'a', driven: 'b' },
          { driver: 'b', driven: 'a' },
        ],
      ),
      ['no-input', 'no-output'],
      'every shaft is driven',
    ],
    [
      'two ends',
      makeDrive(
        [
          { id: 'a', teeth: 20 },
          { id: 'b', teeth: 20 },
          { id: 'c', teeth: 20 },
        ],
        [
          { driver: 'a', driven: 'b' },
          { driver: 'a', driven: 'c' },
        ],
      ),
      ['no-output'],
      '"b", "c"',
    ],
    [
      'a motor on no shaft',
      {
        ...makeTrain([[20, 40]]),
        motor: { shaft: 'x', rpm: 1, stallTorqueNmm: undefined, torqueNmm: undefined },
      },
      ['no-input'],
      '"x"',
    ],
    [
      'a set that nothing holds',
      makePlanetary(16, 16, 48, { wanted: { ...noWish, to: 'arm' } }),
      ['undetermined'],
      'as it likes',
    ],
    ['a set whose ring and arm both run free', makePlanetary(16, 16, 48, {}), ['no-output'], '"ring", "arm"'],
    [
      'a set held twice',
      makePlanetary(16, 16, 48, {
        fixed: ['ring', 'sun'],
        wanted: {
          from: 'arm',
          to: 'planet',
          ratio: 1,
          travelMmPerTurn: undefined,
          tolerancePercent: undefined,
          direction: undefined,
        },
      }),
      ['contradiction'],
      'planetary',
    ],
  ])('%s', (_, model, kinds, words) => {
    const report = reportDrive(model);
    expect(kindsOf(report)).toEqual(kinds);
    expect(report.troubles[0].message).toContain(words);
    expect(report.ratio).toBeNull();
    for (const { remedy } of report.troubles) expect(remedy).toMatch(/\S.*\.$/);
  });

  test('wheels that no mesh reaches are named, and the rest still has its ratio', () => {
    const train = makeTrain([[20, 40]]);
    const apart = makeDrive([{ id: 'x', teeth: 9 }, { id: 'y' }], []).wheels;
    const report = reportDrive({ ...train, wheels: [...train.wheels, ...apart] });
    expect(report.troubles).toMatchObject([{ kind: 'not-reached', about: ['x', 'y'] }]);
    expect(report.ratio?.value).toBe(2);
  });

  test('a drive that contradicts itself has no speeds', () => {
    const loop = makeDrive(
      ['a', 'b', 'c'].map((id) => ({ id, teeth: 20 })),
      [
        { driver: 'a', driven: 'b' },
        { driver: 'b', driven: 'c' },
        { driver: 'a', driven: 'c' },
      ],
    );
    const report = reportDrive(loop);
    expect(kindsOf(report)).toContain('contradiction');
    expect(report.ratio).toBeNull();
    expect(report.shafts.every(({ turns }) => turns === null)).toBe(true);
  });
});

describe('meshes', () => {
  const roll = (): RollingProof => proofOf('turns');

  test('both toothings and the distance known: rolled, with what the proof found', () => {
    const [mesh] = reportDrive(pairAt(20), roll).meshes;
    expect(mesh).toMatchObject({
      verdict: 'turns',
      centerMm: 20,
      workingPressureAngleDeg: expect.closeTo(20.5, 9),
      contactRatio: 1.6,
      backlashMinMm: expect.closeTo(0.08002, 9),
      transmissionErrorMm: 0.002,
      range: { centerLeastMm: 19.9, centerGreatestMm: 20.1, backlashMinMm: expect.closeTo(0.0800199, 9) },
      freeFromMm: 20,
      smoothFromMm: null,
    });
    const [rough] = reportDrive(pairAt(20), () => proofOf('rough')).meshes;
    expect(rough.notes.join()).toContain('0.005 mm of play');
  });

  test('the piece as it lies is what is rolled, at its distance and uncertainty', () => {
    const seen: unknown[] = [];
    reportDrive(
      pairAt(20.05, spur('a', 20, { tipWearMm: 0.1, missing: [3], runoutMm: 0.02 })),
      (...given) => {
        seen.push(...given);
        return proofOf('turns');
      },
    );
    expect(seen).toMatchObject([
      { spec: { teeth: 20 }, tipWear: 0.1, missing: [3], runout: 0.02 },
      { spec: { teeth: 60 }, missing: [] },
      { mm: 20.05, u: 0.02 },
    ]);
  });

  test.each<[string, DriveModel, MeshExpectation]>([
    [
      'too near: tips in the bottoms',
      pairAt(19.5),
      { verdict: 'jams', words: 'run into the bottoms', isTrouble: true },
    ],
    ['too far: no tooth reaches', pairAt(21.2), { verdict: null, words: "don't reach", isTrouble: true }],
    [
      'near, but the distance may be off enough',
      pairAt(19.5, undefined, undefined, 0.2),
      { verdict: 'turns', words: '', isTrouble: false },
    ],
    [
      'counts and a distance of no module',
      pairAt(0.5, { id: 'a', teeth: 20 }, { id: 'b', teeth: 60 }),
      { verdict: null, words: 'finer than any listed', isTrouble: true },
    ],
    [
      'helices of one hand',
      pairAt(
        20,
        spur('a', 20, { spec: makeSpec({ module: 0.5, teeth: 20, helixAngle: rad(15) }) }),
        spur('b', 60, { spec: makeSpec({ module: 0.5, teeth: 60, helixAngle: rad(15) }) }),
      ),
      { verdict: 'jams', words: 'of one hand', isTrouble: true },
    ],
    [
      'a ring smaller than its wheel',
      pairAt(
        10,
        spur('a', 30),
        spur('b', 30, { kind: 'internal', spec: makeSpec({ kind: 'internal', module: 0.5, teeth: 30 }) }),
      ),
      { verdict: null, words: "can't hold", isTrouble: true },
    ],
    [
      'a bevel wheel',
      pairAt(20, spur('a', 20, { kind: 'bevel', spec: undefined })),
      { verdict: null, words: 'bevel wheel', isTrouble: false },
    ],
    [
      'a toothing nobody knows',
      pairAt(20, { id: 'a', teeth: 20 }),
      { verdict: null, words: "isn't known", isTrouble: false },
    ],
    [
      'another pitch is told, and rolled all the same',
      pairAt(20.3, spur('a', 20, { spec: makeSpec({ module: 25.4 / 48, teeth: 20 }) })),
      { verdict: 'turns', words: '5.512 % closer', isTrouble: false },
    ],
  ])('%s', (_, model, expected) => {
    const report = reportDrive(model, () => proofOf(expected.verdict ?? 'turns'));
    expect(report.meshes[0].verdict).toBe(expected.verdict);
    expect(kindsOf(report).includes('cannot-mesh')).toBe(expected.isTrouble);
    const words = [...report.troubles.map(({ message }) => message), ...report.meshes[0].notes].join('\n');
    expect(words).toContain(expected.words);
  });

  test('a ring and its pinion: too far is where they bind, too near where they part', () => {
    const at = (mm: number): DriveReport =>
      reportDrive(
        pairAt(
          mm,
          spur('a', 20),
          spur('b', 60, { kind: 'internal', spec: makeSpec({ kind: 'internal', module: 0.5, teeth: 60 }) }),
        ),
      );
    expect(at(10).meshes[0].verdict).toBeNull();
    expect(at(10).troubles).toEqual([]);
    expect(at(10.4).meshes[0].verdict).toBe('jams');
    expect(at(8.8).troubles[0].message).toContain("don't reach");
  });

  test('far beyond any mesh there is nothing to roll: a slip of the distance', () => {
    const report = reportDrive(pairAt(2), () => {
      throw new Error('rolled all the same');
    });
    expect(report.meshes[0].verdict).toBe('jams');
    expect(kindsOf(report)).toEqual(['cannot-mesh']);
  });

  test('a cycle of too many meetings is rolled with all teeth alike, and the note says so', () => {
    let seen: unknown;
    const pair = pairAt(149.6, spur('a', 197, { runoutMm: 0.05 }), spur('b', 401));
    const report = reportDrive(pair, (driver) => {
      seen = driver;
      return proofOf('turns');
    });
    expect(seen).not.toHaveProperty('runout');
    expect(report.meshes[0].notes.join()).toContain('the cycle would be too long');
  });

  test('without a distance nothing is rolled, and the note says what is missing', () => {
    const [mesh] = reportDrive(
      makeDrive([spur('a', 20), spur('b', 60)], [{ driver: 'a', driven: 'b' }]),
      roll,
    ).meshes;
    expect(mesh).toMatchObject({ verdict: null, centerMm: null });
    expect(mesh.notes.join()).toContain('distance between the shafts is missing');
  });

  test('distances that can not all be true are a trouble of the drive', () => {
    const model = makeDrive(
      [spur('a', 20), spur('b', 60), spur('c', 20)],
      [
        { driver: 'a', driven: 'b', center: { mm: 20, uMm: 0.02 } },
        { driver: 'b', driven: 'c', center: { mm: 20, uMm: 0.02 } },
        { kind: 'belt', driver: 'a', driven: 'c', center: { mm: 45, uMm: 0.02 } },
      ],
    );
    expect(
      reportDrive(model, roll)
        .troubles.map(({ message }) => message)
        .join(),
    ).toContain('is more than');
  });
});

interface MeshExpectation {
  readonly verdict: 'turns' | 'jams' | null;
  readonly words: string;
  readonly isTrouble: boolean;
}
