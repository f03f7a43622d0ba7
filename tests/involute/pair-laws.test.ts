import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { findContactRatio } from '../../src/involute/contact-ratio.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { findPairClearances } from '../../src/involute/pair-clearances.ts';
import { shortenTips } from '../../src/involute/shorten-tips.ts';
import { findWorkingPair } from '../../src/involute/working-pair.ts';
import { makeSpec, rad } from './make-spec.ts';
import { findPlay, readProfile } from './tooth-profile.ts';

const settings = { seed: 20261125, numRuns: 200 };

/** Two external wheels of one rack, spur or helical, with shifts that small machines have. */
const externalPair = fc
  .record({
    z1: fc.integer({ min: 8, max: 60 }),
    z2: fc.integer({ min: 8, max: 120 }),
    x1: fc.double({ min: 0, max: 0.5, noNaN: true }),
    x2: fc.double({ min: -0.3, max: 0.5, noNaN: true }),
    module: fc.double({ min: 0.2, max: 3, noNaN: true }),
    pressureAngle: fc.constantFrom(rad(14.5), rad(20), rad(25)),
    helixAngle: fc.constantFrom(0, rad(15), rad(-28)),
  })
  .map(({ z1, z2, x1, x2, module, pressureAngle, helixAngle }) => {
    const rack = { module, pressureAngle };
    return [
      makeSpec({ ...rack, teeth: z1, profileShift: x1, helixAngle }),
      makeSpec({ ...rack, teeth: z2, profileShift: x2, helixAngle: -helixAngle }),
    ] as const;
  });

const internalPair = fc
  .record({
    z1: fc.integer({ min: 12, max: 40 }),
    more: fc.integer({ min: 12, max: 60 }),
    x1: fc.double({ min: 0, max: 0.4, noNaN: true }),
    dx: fc.double({ min: 0, max: 0.3, noNaN: true }),
    helixAngle: fc.constantFrom(0, rad(20)),
  })
  .map(
    ({ z1, more, x1, dx, helixAngle }) =>
      [
        makeSpec({ teeth: z1, profileShift: x1, helixAngle }),
        makeSpec({ kind: 'internal', teeth: z1 + more, profileShift: x1 + dx, helixAngle, addendum: 0.8 }),
      ] as const,
  );

describe('laws of a pair', () => {
  test('of two external wheels it makes no difference which is called first', () => {
    fc.assert(
      fc.property(externalPair, ([one, two]) => {
        const there = findWorkingPair(one, two);
        const back = findWorkingPair(two, one);
        expect(back.centerDistance).toBeCloseTo(there.centerDistance, 10);
        expect(back.workingDiameters[0]).toBeCloseTo(there.workingDiameters[1], 10);
        const wider = there.centerDistance + 0.05 * one.module;
        expect(findPairClearances(two, one, wider).backlash).toBeCloseTo(
          findPairClearances(one, two, wider).backlash,
          10,
        );
        expect(findContactRatio(two, one).transverse).toBeCloseTo(findContactRatio(one, two).transverse, 10);
      }),
      settings,
    );
  });

  test('the working circles roll: their radii are as the teeth and meet at the pitch point', () => {
    fc.assert(
      fc.property(fc.oneof(externalPair, internalPair), ([one, two]) => {
        const { centerDistance, workingDiameters, workingPressureAngle } = findWorkingPair(one, two);
        const [w1, w2] = workingDiameters;
        expect(w2 / w1).toBeCloseTo(two.teeth / one.teeth, 10);
        expect((two.kind === 'internal' ? w2 - w1 : w2 + w1) / 2).toBeCloseTo(centerDistance, 9);
        expect(w1 * Math.cos(workingPressureAngle)).toBeCloseTo(findDiameters(one).base, 9);
      }),
      settings,
    );
  });

  test('at its own distance an unthinned pair has no backlash, and every thinning is felt whole', () => {
    fc.assert(
      fc.property(fc.oneof(externalPair, internalPair), ([one, two]) => {
        const thinned = [
          { ...one, thinning: 0.03 * one.module },
          { ...two, thinning: 0.02 * two.module },
        ] as const;
        expect(findPairClearances(one, two).backlash).toBeCloseTo(0, 9);
        // An arc at the reference circle grows with the radius to the working circle.
        const { workingDiameters } = findWorkingPair(one, two);
        const growth = workingDiameters[0] / findDiameters(one).reference / Math.cos(one.helixAngle);
        expect(findPairClearances(...thinned).backlash).toBeCloseTo(0.05 * one.module * growth, 9);
      }),
      settings,
    );
  });

  test('moved apart a pair gains backlash, near 2 tan α_wt for each mm, and loses contact', () => {
    let whole = 0;
    fc.assert(
      fc.property(externalPair, ([one, two]) => {
        const { centerDistance, workingPressureAngle } = findWorkingPair(one, two);
        const step = 1e-5 * one.module;
        const gained = findPairClearances(one, two, centerDistance + step).backlash;
        expect(gained / step).toBeCloseTo(2 * Math.tan(workingPressureAngle), 3);
        const near = findContactRatio(one, two);
        const far = findContactRatio(one, two, { centerDistance: centerDistance + 0.1 * one.module });
        expect(near.transverse).toBeLessThanOrEqual(near.betweenTips);
        // Where undercut has shortened the path, moving apart may win back some involute instead.
        if (near.transverse < near.betweenTips) return;
        whole++;
        expect(far.transverse).toBeLessThan(near.transverse);
      }),
      settings,
    );
    expect(whole).toBeGreaterThan(60);
  });

  test('tips shortened the JIS way keep the clearance of the rack at both ends', () => {
    fc.assert(
      fc.property(externalPair, ([one, two]) => {
        const [tip1, tip2] = shortenTips(one, two);
        const { tip } = findPairClearances({ ...one, tipDiameter: tip1 }, { ...two, tipDiameter: tip2 });
        expect(tip[0]).toBeCloseTo((one.dedendum - one.addendum) * one.module, 9);
        expect(tip[1]).toBeCloseTo((one.dedendum - one.addendum) * one.module, 9);
      }),
      settings,
    );
  });

  test('pairs that can not run together are refused with a way out', () => {
    const raise = (run: () => unknown): Fail => {
      try {
        run();
      } catch (error) {
        if (error instanceof Fail) return error;
      }
      throw new Error('not refused');
    };
    const wheel = makeSpec({ teeth: 20 });
    expect(raise(() => findWorkingPair(wheel, makeSpec({ teeth: 20, module: 1.05 }))).field).toBe('module');
    expect(raise(() => findWorkingPair(wheel, makeSpec({ teeth: 20, helixAngle: 0.2 }))).field).toBe(
      'helixAngle',
    );
    expect(raise(() => findWorkingPair(wheel, makeSpec({ kind: 'internal', teeth: 20 }))).field).toBe(
      'teeth',
    );
    expect(raise(() => findWorkingPair(wheel, wheel, 12)).field).toBe('centerDistance');
    const low = makeSpec({ teeth: 8, profileShift: -0.4 });
    expect(raise(() => findWorkingPair(low, low)).remedy).not.toBe('');
  });
});

describe('labels do not count, teeth do', () => {
  // 22° at the module that gives the base pitch of 20°: another name for the same helicoids.
  const renamed = makeSpec({
    teeth: 20,
    module: Math.cos(rad(20)) / Math.cos(rad(22)),
    pressureAngle: rad(22),
    profileShift: -0.1,
  });
  const mate = makeSpec({ teeth: 31, profileShift: 0.3, thinning: 0.04 });

  test('the distance without backlash is right for both names of a wheel', () => {
    // The same base thickness at 20°: s_b = d_b (π/2 + 2 x tan α)/z + d_b inv α.
    const inv = (angle: number): number => Math.tan(angle) - angle;
    const half = (Math.PI / 2 - 0.2 * Math.tan(rad(22))) / 20 + inv(rad(22)) - inv(rad(20));
    const shift = (half * 20 - Math.PI / 2) / 2 / Math.tan(rad(20));
    const plain = makeSpec({ teeth: 20, profileShift: shift });
    expect(findDiameters(plain).base).toBeCloseTo(findDiameters(renamed).base, 12);
    expect(findWorkingPair(renamed, mate).centerDistance).toBeCloseTo(
      findWorkingPair(plain, mate).centerDistance,
      12,
    );
  });

  test('and the outlines, turned against each other there, have the play that is said', () => {
    const distance = findWorkingPair(renamed, mate).centerDistance + 0.04;
    const [low, high] = findPlay(readProfile(renamed, 2e-6), readProfile(mate, 2e-6), {
      distance,
      turn1: 0,
      turn2: Math.PI + Math.PI / mate.teeth,
    });
    const radius = findWorkingPair(renamed, mate, distance).workingDiameters[0] / 2;
    const said = findPairClearances(renamed, mate, distance).backlash;
    expect(said).toBeGreaterThan(0.06);
    expect((high - low) * radius).toBeCloseTo(said, 4);
  });
});
