import { describe, expect, test } from 'vitest';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { findInternalInterference } from '../../src/involute/internal-interference.ts';
import { findWorkingPair } from '../../src/involute/working-pair.ts';
import { makeSpec } from './make-spec.ts';
import { findLeastGap, keepNear, readProfile } from './tooth-profile.ts';

/** Each flank is set back by half of this, so that outlines without interference stand clear by it. */
const thinning = 0.004;
const chordError = 5e-5;

/** The least gap while a pair rolls through half a pitch (the other half is its mirror image), mm. */
function rollThrough(pinion: GearSpec, wheel: GearSpec, steps = 12): number {
  const { one, two, distance } = place(pinion, wheel);
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= steps; k++) {
    const turn = (Math.PI * k) / steps;
    least = Math.min(
      least,
      findLeastGap(one, two, {
        distance: -distance,
        turn1: turn / pinion.teeth,
        turn2: (Math.PI + turn) / wheel.teeth,
      }),
    );
  }
  return least;
}

/** The least gap while the pinion is pushed in radially from the middle, from four positions within half a pitch. */
function pushIn(pinion: GearSpec, wheel: GearSpec): number {
  const { one, two, distance } = place(pinion, wheel);
  const free = (findDiameters(wheel).tip - findDiameters(pinion).tip) / 2;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= 3; k++) {
    const turn = (Math.PI * k) / 3;
    for (let step = 0; step <= 12; step++) {
      least = Math.min(
        least,
        findLeastGap(one, two, {
          distance: -(distance + ((free - distance) * step) / 12),
          turn1: turn / pinion.teeth,
          turn2: (Math.PI + turn) / wheel.teeth,
        }),
      );
    }
  }
  return least;
}

function place(pinion: GearSpec, wheel: GearSpec) {
  const distance = findWorkingPair(pinion, wheel).centerDistance;
  const first = readProfile({ ...pinion, thinning }, chordError);
  const second = readProfile({ ...wheel, thinning }, chordError);
  return {
    one: keepNear(first, second, -distance, 0),
    two: keepNear(second, first, distance, Math.PI / wheel.teeth),
    distance,
  };
}

// Deep roots with sharp corners, so that only what the limits speak of can touch.
const deep = { dedendum: 1.6, rootRadius: 0 };

describe('trochoid interference: tips meet where they leave mesh', () => {
  for (const [difference, isFree] of [
    [6, false],
    [7, false],
    [9, true],
    [11, true],
  ] as const) {
    test(`full depth, ${60 - difference}/60: outlines ${isFree ? 'pass' : 'overlap'} as the limit says`, () => {
      const pinion = makeSpec({ teeth: 60 - difference, ...deep });
      const wheel = makeSpec({ kind: 'internal', teeth: 60, ...deep });
      const { trochoid, involute } = findInternalInterference(pinion, wheel);
      expect(involute.isFree).toBe(true);
      expect(trochoid.isFree).toBe(isFree);
      const gap = rollThrough(pinion, wheel);
      if (isFree) expect(gap).toBeGreaterThan(0);
      else expect(gap).toBeLessThan(-0.02);
    });
  }

  test('the addendum at which 54/60 just passes is the same on the outlines and by the limit, within 0.01 m', () => {
    const pairAt = (addendum: number) =>
      [
        makeSpec({ teeth: 54, ...deep, addendum }),
        makeSpec({ kind: 'internal', teeth: 60, ...deep, addendum }),
      ] as const;
    const bisect = (passes: (addendum: number) => boolean): number => {
      let low = 0.6;
      let high = 0.9;
      for (let round = 0; round < 6; round++) {
        const middle = (low + high) / 2;
        if (passes(middle)) low = middle;
        else high = middle;
      }
      return low;
    };
    const byLimit = bisect((h) => findInternalInterference(...pairAt(h)).trochoid.isFree);
    const byOutlines = bisect((h) => rollThrough(...pairAt(h), 24) > 0);
    expect(byLimit).toBeGreaterThan(0.7);
    expect(byLimit).toBeLessThan(0.8);
    expect(Math.abs(byOutlines - byLimit)).toBeLessThan(0.01);
  });
});

describe('involute interference: the wheel’s tip reaches past the base tangent point of the pinion', () => {
  // A pinion on the very limit of undercut has its involute down to the base circle: z sin² α/2 = 1.7547.
  for (const [addendum, isFree] of [
    [1.2, true],
    [1.3, true],
    [1.5, false],
    [1.6, false],
  ] as const) {
    test(`30/60, wheel’s addendum ${addendum}: ${isFree ? 'passes' : 'overlaps'}`, () => {
      const pinion = makeSpec({ teeth: 30, dedendum: 1.7546, rootRadius: 0 });
      const wheel = makeSpec({ kind: 'internal', teeth: 60, ...deep, addendum });
      const limits = findInternalInterference(pinion, wheel);
      expect(limits.trochoid.isFree).toBe(true);
      expect(limits.involute.isFree).toBe(isFree);
      const gap = rollThrough(pinion, wheel, 24);
      if (isFree) expect(gap).toBeGreaterThan(0);
      else expect(gap).toBeLessThan(-0.003);
    });
  }
});

describe('trimming: the pinion can’t be pushed in radially, a shaper feeding in trims the tips', () => {
  for (const [cutter, teeth, isFree] of [
    [30, 46, false],
    [30, 47, false],
    [30, 48, true],
    [40, 56, false],
    [40, 58, true],
  ] as const) {
    test(`${cutter}/${teeth}: ${isFree ? 'goes in' : 'catches'}`, () => {
      const pinion = makeSpec({ teeth: cutter, ...deep, addendum: 1.25 });
      const wheel = makeSpec({ kind: 'internal', teeth, ...deep });
      const limits = findInternalInterference(pinion, wheel);
      expect([limits.trochoid.isFree, limits.involute.isFree]).toEqual([true, true]);
      expect(limits.trimming.isFree).toBe(isFree);
      const gap = pushIn(pinion, wheel);
      if (isFree) expect(gap).toBeGreaterThan(0);
      else expect(gap).toBeLessThan(-0.002);
    });
  }
});

describe('margins', () => {
  test('a pinion of few teeth in a large wheel is free of all three, by more the larger the wheel', () => {
    const pinion = makeSpec({ teeth: 20, profileShift: 0.3, addendum: 0.8 });
    let before = 0;
    for (const teeth of [60, 90, 140]) {
      const { involute, trochoid, trimming } = findInternalInterference(
        pinion,
        makeSpec({ kind: 'internal', teeth, profileShift: 0.3, addendum: 0.8 }),
      );
      expect([involute.isFree, trochoid.isFree, trimming.isFree]).toEqual([true, true, true]);
      expect(involute.margin).toBeGreaterThan(before);
      before = involute.margin;
    }
  });

  test('tips that do not reach each other can’t meet', () => {
    const pinion = makeSpec({ teeth: 20, addendum: 0.4 });
    const wheel = makeSpec({ kind: 'internal', teeth: 60, addendum: 0.4 });
    const { centerDistance } = findWorkingPair(pinion, wheel);
    expect(findInternalInterference(pinion, wheel, centerDistance - 1).trochoid.margin).toBe(
      Number.POSITIVE_INFINITY,
    );
  });
});
