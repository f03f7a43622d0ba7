import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findContactRatio } from '../../src/involute/contact-ratio.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { findPairClearances } from '../../src/involute/pair-clearances.ts';
import { findWorkingPair } from '../../src/involute/working-pair.ts';
import { type RollingOptions, rollPair } from '../../src/rolling/roll-pair.ts';
import type { RolledWheel } from '../../src/rolling/rolled-wheel.ts';
import type { RolledAt } from '../../src/rolling/rolling-proof.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';

const settings = { seed: 20261127, numRuns: 25 };
const quick: RollingOptions = { seeksDistance: false };
/** mm at module 1; outlines are drawn to 0.1 µm, four of them meet */
const drawn = 0.0005;

function rollAtMean(one: RolledWheel, two: RolledWheel, mm: number): RolledAt {
  return rollPair(one, two, { mm, u: 0 }, quick).mean;
}

/** Two wheels of one rack, their tips short enough to stay clear of the fillets. */
const likePair = fc
  .record({
    z1: fc.integer({ min: 17, max: 40 }),
    z2: fc.integer({ min: 18, max: 60 }),
    x1: fc.double({ min: 0, max: 0.4, noNaN: true }),
    x2: fc.double({ min: -0.1, max: 0.4, noNaN: true }),
    thinning: fc.double({ min: 0.02, max: 0.1, noNaN: true }),
    pressureAngle: fc.constantFrom(rad(20), rad(25)),
  })
  .map(({ z1, z2, x1, x2, thinning, pressureAngle }) => {
    const rack = { pressureAngle, thinning, rootRadius: 0.2, addendum: 0.9 };
    return [
      makeSpec({ ...rack, teeth: z1, profileShift: x1 }),
      makeSpec({ ...rack, teeth: z2, profileShift: x2 }),
    ] as const;
  });

describe('wheels of one base pitch', () => {
  test('keep their ratio, and have the backlash and contact ratio of the formulas', () => {
    fc.assert(
      fc.property(likePair, fc.double({ min: 0, max: 0.1, noNaN: true }), ([one, two], off) => {
        const mm = findWorkingPair(one, two).centerDistance + off;
        const rolled = rollAtMean({ spec: one }, { spec: two }, mm);
        const { backlash } = findPairClearances(one, two, mm);
        expect(rolled.transmissionError).toBeLessThan(2 * drawn);
        expect(Math.abs(rolled.backlashLeast - backlash)).toBeLessThan(2 * drawn);
        expect(Math.abs(rolled.backlashGreatest - backlash)).toBeLessThan(2 * drawn);
        expect(rolled.contactRatio).toBeCloseTo(
          findContactRatio(one, two, { centerDistance: mm }).transverse,
          4,
        );
        expect(rolled.workingPressureAngle).toBeCloseTo(
          findWorkingPair(one, two, mm).workingPressureAngle,
          9,
        );
      }),
      settings,
    );
  });

  test('have the same backlash, as arc, whichever drives, and the same contact ratio', () => {
    fc.assert(
      fc.property(likePair, ([one, two]) => {
        const mm = findWorkingPair(one, two).centerDistance + 0.03;
        const there = rollAtMean({ spec: one }, { spec: two }, mm);
        const back = rollAtMean({ spec: two }, { spec: one }, mm);
        expect(Math.abs(there.backlashLeast - back.backlashLeast)).toBeLessThan(2 * drawn);
        expect(there.contactRatio).toBeCloseTo(back.contactRatio, 4);
        // As angle, it is larger at the smaller wheel.
        const width = ({ curve }: RolledAt): number => curve.high[0] - curve.low[0];
        expect(width(back) / width(there)).toBeCloseTo(two.teeth / one.teeth, 1);
      }),
      { ...settings, numRuns: 10 },
    );
  });
});

describe('wheels of any pitches', () => {
  const anyPair = fc
    .record({
      m2: fc.constantFrom(0.96, 0.99, 1, 1.02, 1.058),
      z1: fc.integer({ min: 10, max: 30 }),
      z2: fc.integer({ min: 10, max: 40 }),
    })
    .map(
      ({ m2, z1, z2 }) =>
        [
          makeSpec({ teeth: z1, thinning: 0.06, rootRadius: 0.25 }),
          makeSpec({ teeth: z2, module: m2, thinning: 0.06, rootRadius: 0.25 }),
          (z1 + m2 * z2) / 2 + 0.1,
        ] as const,
    );

  test('have more backlash the further they stand apart', () => {
    fc.assert(
      fc.property(anyPair, ([one, two, mm]) => {
        let before = Number.NEGATIVE_INFINITY;
        for (const off of [0, 0.05, 0.1, 0.2, 0.3]) {
          const { backlashLeast } = rollAtMean({ spec: one }, { spec: two }, mm + off);
          expect(backlashLeast).toBeGreaterThan(before);
          before = backlashLeast;
        }
      }),
      settings,
    );
  });

  test('are as free a pitch further on: the curve ends as it begins, and is its own mirror image', () => {
    fc.assert(
      fc.property(anyPair, ([one, two, mm]) => {
        const { low, high } = rollAtMean({ spec: one }, { spec: two }, mm).curve;
        const last = low.length - 1;
        expect(low[last]).toBeCloseTo(low[0], 9);
        for (let k = 0; k <= last; k++) expect(high[k]).toBeCloseTo(-low[last - k], 9);
      }),
      settings,
    );
  });
});

describe('internal pairs and racks', () => {
  const pinion = makeSpec({ teeth: 20, thinning: 0.05 });
  const ring = makeSpec({ kind: 'internal', teeth: 61, thinning: 0.04, addendum: 0.8 });
  const rack = makeSpec({ kind: 'rack', teeth: 12, thinning: 0.04 });
  const pairs: readonly (readonly [string, GearSpec, GearSpec, number])[] = [
    ['pinion in ring', pinion, ring, 20.45],
    ['pinion on rack', pinion, rack, 10.05],
    ['shifted pinion on rack', { ...pinion, profileShift: 0.4 }, rack, 10.45],
    [
      'shifted pinion in shifted ring',
      { ...pinion, profileShift: 0.3 },
      { ...ring, profileShift: 0.35 },
      20.5,
    ],
  ];

  test.each(pairs)(
    '%s: backlash, contact ratio and angle of the formulas, whichever drives',
    (_, one, two, mm) => {
      const { backlash } = findPairClearances(one, two, mm);
      const { transverse } = findContactRatio(one, two, { centerDistance: mm });
      const { workingPressureAngle } = findWorkingPair(one, two, mm);
      for (const rolled of [
        rollAtMean({ spec: one }, { spec: two }, mm),
        rollAtMean({ spec: two }, { spec: one }, mm),
      ]) {
        expect(rolled.transmissionError).toBeLessThan(2 * drawn);
        expect(Math.abs(rolled.backlashLeast - backlash)).toBeLessThan(2 * drawn);
        expect(rolled.contactRatio).toBeCloseTo(transverse, 4);
        expect(rolled.workingPressureAngle).toBeCloseTo(workingPressureAngle, 9);
      }
    },
  );

  test('a ring that drives is the mirror image of one that is driven, in another pitch too', () => {
    const odd = { ...pinion, module: 1.02 };
    const there = rollPair({ spec: odd }, { spec: ring }, { mm: 20.2, u: 0 }).mean;
    const back = rollPair({ spec: ring }, { spec: odd }, { mm: 20.2, u: 0 }).mean;
    // Arcs at their working circles are the same but for the slope of the bounds, the 2 % that the pitches differ by.
    expect(Math.abs(there.backlashLeast / back.backlashLeast - 1)).toBeLessThan(0.03);
    expect(Math.abs(there.backlashGreatest / back.backlashGreatest - 1)).toBeLessThan(0.03);
    expect(there.transmissionError).toBeGreaterThan(0.005);
    expect(Math.abs(there.transmissionError - back.transmissionError)).toBeLessThan(
      0.1 * there.transmissionError,
    );
  });

  test('an internal pair is freed by moving nearer, and says from where', () => {
    const tight = { ...pinion, thinning: 0 };
    const proof = rollPair({ spec: tight }, { spec: { ...ring, thinning: 0 } }, { mm: 20.55, u: 0 });
    expect(proof.verdict).toBe('jams');
    // Without thinning it is free from the reference distance on: (61 − 20)/2.
    expect(proof.freeFrom).toBeCloseTo(20.5, 2);
  });
});

describe('worn, broken and eccentric wheels', () => {
  const pinion = makeSpec({ module: 0.5, teeth: 14, thinning: 0.03, profileShift: 0.3 });
  const wheel = makeSpec({ module: 0.5, teeth: 30, thinning: 0.03 });
  const mm = 11.15;
  const plain = rollAtMean({ spec: pinion }, { spec: wheel }, mm);

  test('worn tips shorten the contact as trimmed tips do', () => {
    const worn = rollAtMean({ spec: pinion, tipWear: 0.1 }, { spec: wheel }, mm);
    const trimmed = rollAtMean({ spec: { ...pinion, tipDiameter: 8.3 - 0.2 } }, { spec: wheel }, mm);
    expect(worn.contactRatio).toBeLessThan(plain.contactRatio - 0.05);
    expect(worn).toEqual(trimmed);
  });

  test('one missing tooth is felt as a fall, two neighbors leave the wheel loose for longer', () => {
    const one = rollPair({ spec: pinion, missing: [3] }, { spec: wheel }, { mm, u: 0 }, quick);
    const two = rollPair({ spec: pinion, missing: [3, 4] }, { spec: wheel }, { mm, u: 0 }, quick);
    expect(one.cycle).toEqual({ of: 'all-meetings', meetings: 210 });
    expect(one.verdict).toBe('rough');
    expect(one.mean.backlashLeast).toBeCloseTo(plain.backlashLeast, 4);
    expect(one.mean.backlashGreatest).toBeGreaterThan(plain.backlashGreatest + 0.01);
    expect(two.mean.backlashGreatest).toBeGreaterThan(one.mean.backlashGreatest + 0.1);
    expect(one.mean.contactRatio).toBeCloseTo((plain.contactRatio * 13) / 14, 9);
  });

  test('runout goes through the transmission error once a turn', () => {
    const runout = 0.04;
    const { mean } = rollPair({ spec: pinion, runout }, { spec: wheel }, { mm, u: 0 }, quick);
    // Once a turn, nearly a sine: the middle moves across the line of action by the runout, e = r sin, over cos α.
    const { workingPressureAngle } = findWorkingPair(pinion, wheel, mm);
    expect(mean.transmissionError).toBeGreaterThan(runout);
    expect(mean.transmissionError).toBeCloseTo(runout / Math.cos(workingPressureAngle), 2);
    const { low } = mean.curve;
    const perTurn = (14 * (low.length - 1)) / 210;
    for (let k = 0; k + perTurn < low.length; k += 7) expect(low[k + perTurn]).toBeCloseTo(low[k], 6);
    // Half a turn on it is not the same.
    expect(Math.abs(low[perTurn / 2] - low[0])).toBeGreaterThan(0.001);
  });

  test('no runout and no missing teeth, said out loud, change nothing', () => {
    expect(rollAtMean({ spec: pinion, runout: 0, missing: [], tipWear: 0 }, { spec: wheel }, mm)).toEqual(
      plain,
    );
  });
});
