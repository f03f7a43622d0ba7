import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DriveModel } from '../../src/drive/drive-model.ts';
import { rackNode, shaftNode } from '../../src/drive/list-relations.ts';
import { type Speed, solveSpeeds } from '../../src/drive/solve-speeds.ts';
import { toNumber } from '../../src/numeric/rational.ts';
import { makeDrive, makePlanetary, makeTrain } from './make-drive.ts';

function speedOf(model: DriveModel, from: string, to: string): Speed | undefined {
  return solveSpeeds(model, from).speeds.get(shaftNode(to));
}

function turnsOf(model: DriveModel, from: string, to: string): number {
  const speed = speedOf(model, from, to);
  return speed ? toNumber(speed.turns) : Number.NaN;
}

describe('handbook trains', () => {
  // Reverted compound train 16/96, 28/84: 18. SJTU machine design slides, reverted compound train, example 2.
  test('16/96 and 28/84 make 18, and the output turns with the input', () => {
    const model = makeTrain([
      [16, 96],
      [28, 84],
    ]);
    expect(speedOf(model, 's0', 's2')?.turns).toEqual({ num: 1n, den: 18n });
  });

  // Shigley's Mechanical Engineering Design, example 13-4: 96/16 · 80/16 = 30 exactly (value from memory).
  test('96/16 and 80/16 make 30', () => {
    const model = makeTrain([
      [16, 96],
      [16, 80],
    ]);
    expect(speedOf(model, 's0', 's2')?.turns).toEqual({ num: 1n, den: 30n });
  });

  // B. Gosper's trains for a long-lived clock, math-fun list: the product of the stages, to 12 decimals.
  test.each([
    [
      'earth',
      365.256355463807,
      12,
      [
        [293, 12],
        [152, 107],
        [358, 295],
        [269, 31],
      ],
    ],
    [
      'mercury',
      87.9692571945795,
      13,
      [
        [293, 12],
        [152, 107],
        [358, 295],
        [101, 67],
        [61, 44],
      ],
    ],
    [
      'jupiter',
      4332.8201300432,
      10,
      [
        [293, 12],
        [152, 107],
        [358, 295],
        [101, 67],
        [263, 47],
        [322, 103],
        [281, 107],
        [272, 183],
      ],
    ],
  ] as const)('the clock train of %s', (_, product, digits, stages) => {
    const model = makeTrain(stages.map(([a, b]) => [b, a]));
    const turns = turnsOf(model, 's0', `s${stages.length}`);
    expect(Math.abs(1 / turns)).toBeCloseTo(product, digits - 2);
  });
});

describe('planetary sets (Willis)', () => {
  // Elements of Metric Gear Technology, fig. 13-4 and its three ratios (values from memory, teeth read): 16, 16, 48.
  test('16/16/48: ring held, the arm makes a quarter turn', () => {
    const model = makePlanetary(16, 16, 48, { fixed: ['ring'] });
    expect(speedOf(model, 'sun', 'arm')?.turns).toEqual({ num: 1n, den: 4n });
  });
  test('16/16/48: sun held, the ring driving, the arm makes three quarters', () => {
    const model = makePlanetary(16, 16, 48, { fixed: ['sun'] });
    expect(speedOf(model, 'ring', 'arm')?.turns).toEqual({ num: 3n, den: 4n });
  });
  test('16/16/48: arm held, the ring goes back by a third', () => {
    const model = makePlanetary(16, 16, 48, { fixed: ['arm'] });
    expect(speedOf(model, 'sun', 'ring')?.turns).toEqual({ num: -1n, den: 3n });
  });

  // A solved question, qna.carrieradda.com/4710: sun 20, planet 40, ring 100 held, sun 60 rpm: arm 10 rpm.
  test('20/40/100: sun at 60 rpm, arm at 10', () => {
    const model = makePlanetary(20, 40, 100, { fixed: ['ring'] });
    expect(60 * turnsOf(model, 'sun', 'arm')).toBe(10);
  });

  // Shigley's Mechanical Engineering Design, example 13-6 (value from memory): 20, 30, 80, sun −100 rpm.
  test('20/30/80: sun at −100 rpm, arm at −20, planet at 33.3', () => {
    const model = makePlanetary(20, 30, 80, { fixed: ['ring'] });
    expect(-100 * turnsOf(model, 'sun', 'arm')).toBe(-20);
    expect(-100 * turnsOf(model, 'sun', 'planet')).toBeCloseTo(33.3, 1);
  });

  test("a planet's count changes nothing and needn't be known", () => {
    const model = makePlanetary(16, undefined, 48, { fixed: ['ring'] });
    expect(speedOf(model, 'sun', 'arm')?.turns).toEqual({ num: 1n, den: 4n });
    expect(speedOf(model, 'sun', 'planet')).toBeUndefined();
  });

  test('with nothing held, the arm may turn as it likes; held twice, it contradicts itself', () => {
    expect(speedOf(makePlanetary(16, 16, 48, {}), 'sun', 'arm')).toBeUndefined();
    const twice = solveSpeeds(makePlanetary(16, 16, 48, { fixed: ['ring', 'arm'] }), 'sun');
    expect(twice.contradictions.map(({ kind }) => kind)).toEqual(['carried']);
    expect(twice.contradictions[0].wheels).toEqual(expect.arrayContaining(['sun', 'planet', 'ring']));
  });

  test('three planets listed apart agree with one', () => {
    const one = makePlanetary(16, 16, 48, { fixed: ['ring'] });
    const ids = ['planet', 'planet-2', 'planet-3'];
    const three = makeDrive(
      [...one.wheels.filter(({ id }) => id !== 'planet'), ...ids.map((id) => ({ id, teeth: 16 }))],
      ids.flatMap((id) => [
        { driver: 'sun', driven: id, carrier: 'arm' },
        { driver: id, driven: 'ring', carrier: 'arm' },
      ]),
      { fixed: ['ring'] },
    );
    const solved = solveSpeeds(three, 'sun');
    expect(solved.contradictions).toEqual([]);
    expect(solved.speeds.get(shaftNode('arm'))?.turns).toEqual({ num: 1n, den: 4n });
  });

  test('a set behind a worm has its size, though nobody knows its sense', () => {
    const set = makePlanetary(16, 16, 48, { fixed: ['ring'] });
    const model = makeDrive(
      [
        ...set.wheels,
        { id: 'worm', kind: 'worm', teeth: 1, shaft: 'motor' },
        { id: 'worm-wheel', kind: 'worm-wheel', teeth: 30, shaft: 'sun' },
      ],
      [{ kind: 'worm', driver: 'worm', driven: 'worm-wheel' }, ...set.meshes],
      { fixed: ['ring'] },
    );
    const speed = speedOf(model, 'motor', 'arm');
    expect(speed && Math.abs(toNumber(speed.turns))).toBeCloseTo(1 / 120, 15);
    expect(speed).toMatchObject({ isExact: true, isDirectionKnown: false });
  });

  test('where a worm and its own shaft meet again in a carrier, sizes hang on the unknown hand, so none is given', () => {
    const set = makePlanetary(16, 16, 48, {});
    const model = makeDrive(
      [
        ...set.wheels,
        { id: 'worm', kind: 'worm', teeth: 1, shaft: 'sun' },
        { id: 'worm-wheel', kind: 'worm-wheel', teeth: 30, shaft: 'ring' },
      ],
      [{ kind: 'worm', driver: 'worm', driven: 'worm-wheel' }, ...set.meshes],
    );
    const solved = solveSpeeds(model, 'sun');
    expect(solved.speeds.get(shaftNode('arm'))).toBeUndefined();
    expect(solved.ambiguous).toEqual([1, 2]);
  });
});

describe('belts, worms, bars', () => {
  test('a belt turns with its driver, crossed against it; slip makes the driven side slower', () => {
    const pulleys = [
      { id: 'a', kind: 'pulley', diameterMm: 12.4 },
      { id: 'b', kind: 'pulley', diameterMm: 31 },
    ] as const;
    const belt = { kind: 'belt', driver: 'a', driven: 'b' } as const;
    expect(turnsOf(makeDrive(pulleys, [belt]), 'a', 'b')).toBeCloseTo(0.4, 15);
    expect(turnsOf(makeDrive(pulleys, [{ ...belt, isCrossed: true }]), 'a', 'b')).toBeCloseTo(-0.4, 15);
    expect(turnsOf(makeDrive(pulleys, [{ ...belt, slipPercent: 2 }]), 'a', 'b')).toBeCloseTo(0.392, 15);
    expect(speedOf(makeDrive(pulleys, [belt]), 'a', 'b')).toMatchObject({ isExact: false });
  });

  test("a toothed belt's ratio is exact", () => {
    const model = makeDrive(
      [
        { id: 'a', kind: 'pulley', teeth: 16, pitchMm: 2 },
        { id: 'b', kind: 'pulley', teeth: 60, pitchMm: 2 },
      ],
      [{ kind: 'belt', driver: 'a', driven: 'b' }],
    );
    expect(speedOf(model, 'a', 'b')).toMatchObject({ turns: { num: 4n, den: 15n }, isExact: true });
  });

  test('a worm of two starts on 40 teeth is 20 to 1, either way round, which no count tells', () => {
    const model = makeDrive(
      [
        { id: 'worm', kind: 'worm', teeth: 2 },
        { id: 'wheel', kind: 'worm-wheel', teeth: 40 },
      ],
      [{ kind: 'worm', driver: 'worm', driven: 'wheel' }],
    );
    expect(Math.abs(turnsOf(model, 'worm', 'wheel'))).toBe(0.05);
    expect(speedOf(model, 'worm', 'wheel')).toMatchObject({ isExact: true, isDirectionKnown: false });
  });

  test('a bar has as many teeth pass as its pinion has', () => {
    const model = makeDrive(
      [
        { id: 'pinion', teeth: 12 },
        { id: 'bar', kind: 'rack' },
        { id: 'far', teeth: 24 },
      ],
      [
        { driver: 'pinion', driven: 'bar' },
        { driver: 'bar', driven: 'far' },
      ],
    );
    const { speeds } = solveSpeeds(model, 'pinion');
    expect(speeds.get(rackNode('bar'))?.turns).toEqual({ num: 12n, den: 1n });
    expect(speeds.get(shaftNode('far'))?.turns).toEqual({ num: 1n, den: 2n });
  });
});

describe('what contradicts itself is named', () => {
  test('a loop of three external wheels turns against itself', () => {
    const model = makeDrive(
      ['a', 'b', 'c'].map((id) => ({ id, teeth: 20 })),
      [
        { driver: 'a', driven: 'b' },
        { driver: 'b', driven: 'c' },
        { driver: 'c', driven: 'a' },
      ],
    );
    const { contradictions } = solveSpeeds(model, 'a');
    expect(contradictions).toHaveLength(1);
    expect(contradictions[0]).toMatchObject({ kind: 'loop', quotient: -1 });
    expect([...contradictions[0].wheels].sort()).toEqual(['a', 'b', 'c']);
  });

  test('two ways round with one count wrong; with the count right they agree', () => {
    const loop = (last: number): DriveModel =>
      makeDrive(
        [
          { id: 'a1', teeth: 20, shaft: 'a' },
          { id: 'b1', teeth: 60, shaft: 'b' },
          { id: 'a2', teeth: 16, shaft: 'a' },
          { id: 'b2', teeth: last, shaft: 'b' },
          { id: 'tail', teeth: 30 },
        ],
        [
          { driver: 'a1', driven: 'b1' },
          { driver: 'a2', driven: 'b2' },
          { driver: 'b1', driven: 'tail' },
        ],
      );
    expect(solveSpeeds(loop(48), 'a').contradictions).toEqual([]);
    const [wrong] = solveSpeeds(loop(47), 'a').contradictions;
    expect([...wrong.wheels].sort()).toEqual(['a1', 'a2', 'b1', 'b2']);
    expect(wrong.quotient).toBeCloseTo(48 / 47, 12);
  });

  test('a belt that closes a loop may slip a little, not a lot', () => {
    const loop = (diameterMm: number): DriveModel =>
      makeDrive(
        [
          { id: 'a1', teeth: 20, shaft: 'a' },
          { id: 'r', kind: 'internal', teeth: 60, shaft: 'b' },
          { id: 'pa', kind: 'pulley', diameterMm: 10, shaft: 'a' },
          { id: 'pb', kind: 'pulley', diameterMm, shaft: 'b' },
        ],
        [
          { kind: 'belt', driver: 'pa', driven: 'pb' },
          { driver: 'a1', driven: 'r' },
        ],
      );
    expect(solveSpeeds(loop(30), 'a').slips).toEqual([]);
    expect(solveSpeeds(loop(30.3), 'a').slips[0]).toMatchObject({ mesh: 0, percent: expect.closeTo(1, 1) });
    expect(solveSpeeds(loop(40), 'a').contradictions[0]).toMatchObject({ kind: 'loop' });
  });

  test('wheels of one shaft that mesh, a held input, a part on two shafts', () => {
    const locked = makeDrive(
      [
        { id: 'a', teeth: 20, shaft: 's' },
        { id: 'b', teeth: 30, shaft: 's' },
      ],
      [{ driver: 'a', driven: 'b' }],
    );
    expect(solveSpeeds(locked, 's').contradictions).toEqual([{ kind: 'locked', wheels: ['a', 'b'] }]);
    const held = solveSpeeds({ ...makeTrain([[20, 30]]), fixed: ['s1'] }, 's0');
    expect(held.contradictions[0]).toMatchObject({ kind: 'held', wheels: ['d0', 'w0'] });
    const piece = makeDrive(
      [
        { id: 'a', teeth: 20, shaft: 's', part: 'p' },
        { id: 'b', teeth: 30, shaft: 't', part: 'p' },
      ],
      [],
    );
    expect(turnsOf(piece, 's', 't')).toBe(1);
  });

  test('two rings, or a ring and a bar, can not mesh', () => {
    const model = makeDrive(
      [
        { id: 'a', kind: 'internal', teeth: 60 },
        { id: 'b', kind: 'internal', teeth: 40 },
      ],
      [{ driver: 'a', driven: 'b' }],
    );
    expect(solveSpeeds(model, 'a').impossible).toMatchObject([{ mesh: 0 }]);
  });
});

describe('laws', () => {
  const count = fc.integer({ min: 6, max: 200 });
  const stages = fc.array(fc.tuple(count, count), { minLength: 1, maxLength: 12 });

  test('driven from its other end, a train has the inverse ratio', () => {
    fc.assert(
      fc.property(stages, (pairs) => {
        const model = makeTrain(pairs);
        const end = `s${pairs.length}`;
        const there = speedOf(model, 's0', end)?.turns;
        const back = speedOf(model, end, 's0')?.turns;
        if (!there || !back) throw new Error('no speed');
        const size = (value: bigint): bigint => (value < 0n ? -value : value);
        expect([size(back.num), size(back.den)]).toEqual([size(there.den), size(there.num)]);
        expect(back.num < 0n).toBe(there.num < 0n);
      }),
      { seed: 11, numRuns: 100 },
    );
  });

  test("an idler's count changes no ratio, known or not; it turns the output round", () => {
    fc.assert(
      fc.property(count, count, fc.option(count, { nil: undefined }), (first, last, idler) => {
        const model = makeDrive(
          [
            { id: 'a', teeth: first },
            { id: 'i', teeth: idler },
            { id: 'b', teeth: last },
          ],
          [
            { driver: 'a', driven: 'i' },
            { driver: 'i', driven: 'b' },
          ],
        );
        expect(turnsOf(model, 'a', 'b')).toBe(first / last);
      }),
      { seed: 12, numRuns: 100 },
    );
  });

  test('the order in which meshes are written changes no speed', () => {
    fc.assert(
      fc.property(stages, fc.integer({ min: 0, max: 1000 }), (pairs, turn) => {
        const model = makeTrain(pairs);
        const shift = turn % pairs.length;
        const meshes = [...model.meshes.slice(shift), ...model.meshes.slice(0, shift)].reverse();
        const end = `s${pairs.length}`;
        expect(speedOf({ ...model, meshes }, 's0', end)).toEqual(speedOf(model, 's0', end));
      }),
      { seed: 13, numRuns: 50 },
    );
  });

  test('in a planetary set the three speeds keep Willis, whichever is held', () => {
    fc.assert(
      fc.property(count, count, fc.constantFrom('sun', 'ring', 'arm'), (sun, planet, held) => {
        const ring = sun + 2 * planet;
        const input = held === 'sun' ? 'arm' : 'sun';
        const { speeds } = solveSpeeds(makePlanetary(sun, planet, ring, { fixed: [held] }), input);
        const of = (shaft: string): number =>
          toNumber(speeds.get(shaftNode(shaft))?.turns ?? { num: 0n, den: 1n });
        expect(sun * (of('sun') - of('arm')) + ring * (of('ring') - of('arm'))).toBeCloseTo(0, 9);
        expect(of(held)).toBe(0);
      }),
      { seed: 14, numRuns: 100 },
    );
  });
});

describe('size', () => {
  test('a thousand shafts in a row, with the exact ratio of all their counts', () => {
    const pairs = Array.from({ length: 999 }, (_, k): [number, number] => [12 + (k % 7), 60 + (k % 13)]);
    const turns = speedOf(makeTrain(pairs), 's0', 's999')?.turns;
    const product = pairs.reduce(
      (value, [driver, driven]) => [value[0] * BigInt(driver), value[1] * BigInt(driven)],
      [1n, 1n],
    );
    expect(turns && turns.num * product[1]).toBe(-(turns?.den ?? 0n) * product[0]);
  });

  test('a hundred planetary sets in a row, each 4 to 1', () => {
    const sets = Array.from({ length: 100 }, (_, k) => k);
    const model = makeDrive(
      sets.flatMap((k) => [
        { id: `sun${k}`, teeth: 16, shaft: `a${k}` },
        { id: `planet${k}`, teeth: 16 },
        { id: `ring${k}`, teeth: 48, kind: 'internal', shaft: 'frame' } as const,
      ]),
      sets.flatMap((k) => [
        { driver: `sun${k}`, driven: `planet${k}`, carrier: `a${k + 1}` },
        { driver: `planet${k}`, driven: `ring${k}`, carrier: `a${k + 1}` },
      ]),
      { fixed: ['frame'] },
    );
    expect(speedOf(model, 'a0', 'a100')?.turns).toEqual({ num: 1n, den: 4n ** 100n });
  });
});
