import { describe, expect, test } from 'vitest';
import { pairLimits } from '../../gear-library/rework-limits.ts';
import { stockRanges } from '../../gear-library/stock-ranges.ts';
import { findContactRatio } from '../../src/involute/contact-ratio.ts';
import { findPairClearances } from '../../src/involute/pair-clearances.ts';
import { findWorkingPair } from '../../src/involute/working-pair.ts';
import { listPairChoices } from '../../src/stock/list-pair-choices.ts';
import { listRangeParts } from '../../src/stock/list-range-parts.ts';
import type { PairQuestion, WheelPool } from '../../src/stock/list-wheel-groups.ts';
import { findShiftRange } from '../../src/stock/shift-range.ts';
import { specOfPart } from '../../src/stock/spec-of-part.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';

const pool: WheelPool = {
  parts: stockRanges
    .filter(({ key }) => key === 'acetal-0.5' || key === 'acetal-0.4' || key === 'hobby-0.5')
    .flatMap(listRangeParts)
    .map((part) => ({ part, size: part.sizes[0], spec: specOfPart(part) })),
  made: { teeth: [10, 80], modules: [0.5, 0.6], pressureAngles: [rad(20)], leastModule: 0.45 },
};

function ask(a: number, change: readonly [boolean, boolean], u = 0.02): PairQuestion {
  return {
    centerDistance: a,
    uncertainty: u,
    driver: { wheelId: 'p', present: makeSpec({ teeth: 16, module: 0.5 }), mayChange: change[0] },
    driven: { wheelId: 'w', present: undefined, mayChange: change[1] },
  };
}

describe('pairs that meet a distance', () => {
  // Held against the exact formulas of involute/, which handbook tables check (tests/handbook).
  test.each([19.04, 19.5, 20.3, 14])(
    'at %s mm every one has backlash, contact and clearance within the limits',
    (a) => {
      const choices = listPairChoices(ask(a, [true, true]), pool);
      expect(choices.length).toBeGreaterThan(20);
      for (const { driver, driven, backlash } of choices) {
        const room = findPairClearances(driver.spec, driven.spec, a);
        const m = driver.spec.module;
        expect(room.backlash).toBeCloseTo(backlash, 6);
        expect(room.backlash).toBeGreaterThanOrEqual(pairLimits.backlash.least * m - 1e-6);
        expect(Math.min(...room.tip)).toBeGreaterThanOrEqual(pairLimits.tipClearance.least * m - 2e-3);
        const path = findContactRatio(driver.spec, driven.spec, { centerDistance: a });
        expect(path.betweenTips).toBeGreaterThanOrEqual(pairLimits.contactRatio.least - 1e-6);
        for (const wheel of [driver, driven]) {
          if (wheel.from !== 'made') continue;
          const range = findShiftRange(wheel.spec);
          expect(wheel.spec.profileShift).toBeGreaterThanOrEqual((range?.least ?? 9) - 1e-3);
          expect(wheel.spec.profileShift).toBeLessThanOrEqual((range?.greatest ?? -9) + 1e-3);
        }
      }
    },
  );

  test('none is missed: a plain search over all counts of parts finds no pair that is not listed or beaten', () => {
    const a = 19.04;
    const choices = listPairChoices(ask(a, [true, true]), { ...pool, made: undefined });
    const listed = new Set(choices.map(({ driver, driven }) => `${driver.spec.teeth} ${driven.spec.teeth}`));
    let met = 0;
    for (const one of pool.parts) {
      for (const other of pool.parts) {
        if (one.spec.module !== other.spec.module) continue;
        // Further apart or together than this no working angle exists, or teeth do not meet.
        const nominal = (one.spec.module * (one.spec.teeth + other.spec.teeth)) / 2;
        if (Math.abs(nominal / a - 1) > 0.15) continue;
        const m = one.spec.module;
        const working = (nominal * Math.cos(rad(20))) / a;
        if (!(working < 1)) continue;
        const room = findPairClearances(one.spec, other.spec, a);
        const path = findContactRatio(one.spec, other.spec, { centerDistance: a });
        const isFine =
          room.backlash >= pairLimits.backlash.least * m &&
          room.backlash <= pairLimits.backlash.greatest * m &&
          Math.min(...room.tip) >= pairLimits.tipClearance.least * m &&
          path.betweenTips >= pairLimits.contactRatio.least;
        if (!isFine) continue;
        met++;
        expect(
          listed.has(`${one.spec.teeth} ${other.spec.teeth}`),
          `${one.spec.teeth}/${other.spec.teeth}`,
        ).toBe(true);
      }
    }
    expect(met).toBeGreaterThan(10);
  });

  test('a wheel that may not change stays, and the other is listed against it alone', () => {
    const choices = listPairChoices(ask(19.04, [false, true]), pool);
    expect(choices.length).toBeGreaterThan(2);
    for (const { driver, driven, newParts } of choices) {
      expect(driver.from).toBe('present');
      expect(driver.spec.teeth).toBe(16);
      expect(driven.from).not.toBe('present');
      expect(newParts).toBe(1);
    }
    // The lost wheel had 60 teeth: 0.5 · (16 + 60)/2 = 19 mm.
    expect(choices.map(({ driven }) => driven.spec.teeth)).toContain(60);
  });

  test('made wheels leave the aimed backlash at the near end of the distance', () => {
    const u = 0.05;
    const choices = listPairChoices(ask(19.3, [false, true], u), { ...pool, parts: [] });
    expect(choices.length).toBeGreaterThan(0);
    for (const { driver, driven } of choices) {
      const near = findPairClearances(driver.spec, driven.spec, 19.3 - 2 * u).backlash;
      expect(near).toBeGreaterThan(pairLimits.backlash.aimed * 0.5 - 0.004);
      expect(near).toBeLessThan(pairLimits.backlash.aimed * 0.5 + 0.004);
    }
  });

  test('an internal wheel that stays gets pinions whose backlash is right by the handbook formula', () => {
    const ring = makeSpec({ kind: 'internal', teeth: 60, module: 0.5 });
    const question: PairQuestion = {
      centerDistance: 10.05,
      uncertainty: 0.02,
      driver: { wheelId: 'p', present: undefined, mayChange: true },
      driven: { wheelId: 'ring', present: ring, mayChange: false },
    };
    const choices = listPairChoices(question, pool);
    expect(choices.map(({ driver }) => driver.spec.teeth)).toContain(20);
    for (const { driver, backlash } of choices) {
      expect(findPairClearances(driver.spec, ring, 10.05).backlash).toBeCloseTo(backlash, 6);
    }
  });

  test('a distance that no wheels of the pool meet gives an empty list', () => {
    expect(listPairChoices(ask(0.5, [true, true]), pool)).toEqual([]);
    expect(listPairChoices(ask(4000, [true, true]), pool)).toEqual([]);
  });
});

describe('shifts that can be made', () => {
  test('12 teeth of 20 degrees: from the practical limit of undercut to a tip land of 0.2 modules', () => {
    const range = findShiftRange(makeSpec({ teeth: 12 }));
    // Theory 0.298 (ISO 21771, as in tests/handbook); practice (14 − z)/17 = 0.118: value from memory.
    expect(range?.least).toBeCloseTo(0.298 - 3 / 17, 3);
    expect(range?.greatest).toBeGreaterThan(0.4);
    expect(range?.greatest).toBeLessThan(0.7);
  });

  test('unshifted wheels of 17 teeth and more can be made, and of 14 in practice', () => {
    expect(findShiftRange(makeSpec({ teeth: 14 }))?.least).toBeCloseTo(0, 1);
    expect(findShiftRange(makeSpec({ teeth: 60 }))?.least).toBe(-0.6);
  });

  test('the working pair of two made wheels is the distance, less the backlash', () => {
    const [choice] = listPairChoices(ask(19.3, [true, true], 0.0001), { ...pool, parts: [] });
    const { centerDistance } = findWorkingPair(choice.driver.spec, choice.driven.spec);
    expect(centerDistance).toBeLessThan(19.3);
    expect(centerDistance).toBeGreaterThan(19.3 - 0.2);
  });
});
