import { describe, expect, test } from 'vitest';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { findPairClearances } from '../../src/involute/pair-clearances.ts';
import { shortenTips } from '../../src/involute/shorten-tips.ts';
import { findWorkingPair } from '../../src/involute/working-pair.ts';
import { makeSpec, rad } from './make-spec.ts';
import { findPlay, readProfile } from './tooth-profile.ts';

/** Play of two traced outlines at a distance, as arc at the first wheel's working circle. */
function measurePlay(first: GearSpec, second: GearSpec, distance: number): number {
  const pair = findWorkingPair(first, second, distance);
  const internal = second.kind === 'internal';
  // Tooth 0 of the first wheel in the middle of a space of the second; an internal wheel's axis lies behind it.
  const [low, high] = findPlay(readProfile(first, 2e-6), readProfile(second, 2e-6), {
    distance: internal ? -distance : distance,
    turn1: 0,
    turn2: internal ? Math.PI / second.teeth : Math.PI + Math.PI / second.teeth,
  });
  // Both sides alike: the tooth stood in the middle.
  expect(high + low).toBeCloseTo(0, 5);
  return ((high - low) * pair.workingDiameters[0]) / 2;
}

describe('backlash is the play of the outlines when one is turned against the other', () => {
  const pairs: readonly (readonly [string, GearSpec, GearSpec, number])[] = [
    [
      'spur 17/31, thinned',
      makeSpec({ teeth: 17, thinning: 0.04 }),
      makeSpec({ teeth: 31, thinning: 0.05 }),
      0,
    ],
    [
      'spur 12/24, shifted, moved off',
      makeSpec({ teeth: 12, profileShift: 0.5 }),
      makeSpec({ teeth: 24, profileShift: 0.2 }),
      0.08,
    ],
    [
      '14.5° 20/20',
      makeSpec({ teeth: 20, pressureAngle: rad(14.5), addendum: 0.8 }),
      makeSpec({ teeth: 20, pressureAngle: rad(14.5), addendum: 0.8 }),
      0.05,
    ],
    [
      'helical 14/33, transverse section',
      makeSpec({ teeth: 14, helixAngle: rad(25), profileShift: 0.3, thinning: 0.03 }),
      makeSpec({ teeth: 33, helixAngle: rad(-25) }),
      0.03,
    ],
    [
      'internal 18/57',
      makeSpec({ teeth: 18, profileShift: 0.3, thinning: 0.03 }),
      makeSpec({ kind: 'internal', teeth: 57, profileShift: 0.3, addendum: 0.8, thinning: 0.02 }),
      0,
    ],
    [
      'internal 20/60, moved in',
      makeSpec({ teeth: 20 }),
      makeSpec({ kind: 'internal', teeth: 60, profileShift: 0.2, addendum: 0.8 }),
      -0.06,
    ],
  ];
  for (const [name, first, second, off] of pairs) {
    test(name, () => {
      const distance = findWorkingPair(first, second).centerDistance + off;
      const { backlash } = findPairClearances(first, second, distance);
      expect(backlash).toBeGreaterThan(0.02);
      // Chords of 2 nm error, four flanks.
      expect(measurePlay(first, second, distance)).toBeCloseTo(backlash, 4);
    });
  }
});

describe('clearances', () => {
  test('unthinned wheels at the distance found have no backlash, whatever the shifts', () => {
    for (const second of [
      makeSpec({ teeth: 40, profileShift: -0.3 }),
      makeSpec({ kind: 'internal', teeth: 40, profileShift: 0.4 }),
      makeSpec({ kind: 'rack', teeth: 9 }),
    ]) {
      expect(findPairClearances(makeSpec({ teeth: 15, profileShift: 0.25 }), second).backlash).toBeCloseTo(
        0,
        12,
      );
    }
  });

  test('thinning opens backlash by itself, and normal backlash by cos α_n more at the reference distance', () => {
    const first = makeSpec({ teeth: 20, helixAngle: rad(20), thinning: 0.05 });
    const second = makeSpec({ teeth: 30, helixAngle: rad(-20), thinning: 0.03 });
    const { backlash, normalBacklash } = findPairClearances(first, second);
    expect(backlash).toBeCloseTo(0.08 / Math.cos(rad(20)), 12);
    // j_n in the normal section is the normal arc times cos α_n: cos α_t cos β_b = cos α_n cos β.
    expect(normalBacklash).toBeCloseTo(0.08 * Math.cos(rad(20)), 12);
  });

  test('a rack and a wheel of very many teeth leave the same room', () => {
    const pinion = makeSpec({ teeth: 14, profileShift: 0.3, thinning: 0.02 });
    const rack = makeSpec({ kind: 'rack', teeth: 9, thinning: 0.03 });
    const huge = makeSpec({ teeth: 1e6, thinning: 0.03 });
    const withRack = findPairClearances(pinion, rack, 7.4);
    const withWheel = findPairClearances(pinion, huge, 7.4 + 5e5);
    expect(withWheel.backlash).toBeCloseTo(withRack.backlash, 5);
    expect(withWheel.normalBacklash).toBeCloseTo(withRack.normalBacklash, 5);
    expect(withWheel.tip[0]).toBeCloseTo(withRack.tip[0], 5);
    expect(withWheel.tip[1]).toBeCloseTo(withRack.tip[1], 5);
  });

  test('shortened tips give back the clearance of the racks: (h_f − h_a) m at both roots', () => {
    const first = makeSpec({ teeth: 12, module: 3, profileShift: 0.6 });
    const second = makeSpec({ teeth: 24, module: 3, profileShift: 0.36 });
    const [tip1, tip2] = shortenTips(first, second);
    const before = findPairClearances(first, second).tip;
    const after = findPairClearances({ ...first, tipDiameter: tip1 }, { ...second, tipDiameter: tip2 }).tip;
    expect(before[0]).toBeLessThan(0.45);
    expect(after[0]).toBeCloseTo(0.75, 12);
    expect(after[1]).toBeCloseTo(0.75, 12);
    // Handbook, value from memory (shifted spur pair, m 3, 12/24): 44.840 shortened, 45.600 as ISO 21771 has it.
    expect(Math.abs(tip1 - 44.84)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(findDiameters(first).tip - 45.6)).toBeLessThanOrEqual(0.001);
  });
});
