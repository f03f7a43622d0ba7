import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { findChordalThickness } from '../../src/involute/chordal-thickness.ts';
import { findContactRatio } from '../../src/involute/contact-ratio.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { findPairClearances } from '../../src/involute/pair-clearances.ts';
import { measureOverPins } from '../../src/involute/pins.ts';
import { findSpan } from '../../src/involute/span.ts';
import {
  findTipLand,
  referenceToothThickness,
  toothThicknessAt,
} from '../../src/involute/tooth-thickness.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { findWorkingPair } from '../../src/involute/working-pair.ts';
import { signedArea } from '../../src/plane/polygon.ts';
import { makeSpec, rad } from './make-spec.ts';
import { findLeastGap, readProfile } from './tooth-profile.ts';

const runs = { seed: 20261125, numRuns: 60 } as const;

/** Wheels of module 1 that can exist: shifts by tooth count, tips low enough not to be pointed. */
const external = fc
  .record({
    teeth: fc.integer({ min: 14, max: 90 }),
    pressureAngle: fc.double({ min: rad(14.5), max: rad(25), noNaN: true }),
    helixAngle: fc.oneof(fc.constant(0), fc.double({ min: rad(-30), max: rad(30), noNaN: true })),
    profileShift: fc.double({ min: 0, max: 0.4, noNaN: true }),
    thinning: fc.double({ min: 0, max: 0.06, noNaN: true }),
  })
  .map((drawn) => makeSpec({ ...drawn, addendum: 0.85 }));

const internal = fc
  .record({
    teeth: fc.integer({ min: 50, max: 110 }),
    pressureAngle: fc.double({ min: rad(17), max: rad(25), noNaN: true }),
    helixAngle: fc.oneof(fc.constant(0), fc.double({ min: rad(-30), max: rad(30), noNaN: true })),
    profileShift: fc.double({ min: 0, max: 0.4, noNaN: true }),
    thinning: fc.double({ min: 0, max: 0.06, noNaN: true }),
  })
  .map((drawn) => makeSpec({ ...drawn, kind: 'internal', addendum: 0.85 }));

function scaled(spec: GearSpec, factor: number): GearSpec {
  return {
    ...spec,
    module: spec.module * factor,
    thinning: spec.thinning * factor,
    tipDiameter: spec.tipDiameter === null ? null : spec.tipDiameter * factor,
  };
}

/** A mate for an external wheel, of the same pitch: opposite hand outside it, the same hand around it. */
const mateOf = (spec: GearSpec, teeth: number, kind: 'external' | 'internal'): GearSpec => ({
  ...spec,
  kind,
  teeth,
  profileShift: 0.2,
  helixAngle: kind === 'internal' ? spec.helixAngle : -spec.helixAngle,
});

describe('a toothing k times as large', () => {
  const scale = fc.constantFrom(0.2, 0.5, 3, 25.4);
  test('measures k times as much everywhere', () => {
    fc.assert(
      fc.property(fc.oneof(external, internal), scale, (spec, k) => {
        const large = scaled(spec, k);
        const lengths = (s: GearSpec, by: number): number[] => {
          const d = findDiameters(s);
          return [
            d.reference,
            d.base,
            d.tip,
            d.root,
            d.transverseModule,
            referenceToothThickness(s),
            findTipLand(s),
            findSpan(s, 3),
            measureOverPins(s, 1.7 * by) ?? 0,
            findChordalThickness(s).thickness,
          ];
        };
        const before = lengths(spec, 1);
        lengths(large, k).forEach((length, i) => {
          expect(length / k).toBeCloseTo(before[i], 9);
        });
      }),
      runs,
    );
  });

  test('has the same outline, k times as large, at k times the chord error', () => {
    fc.assert(
      fc.property(fc.oneof(external, internal), scale, (spec, k) => {
        const small = traceOutline(spec, 0.001).points;
        const large = traceOutline(scaled(spec, k), 0.001 * k).points;
        // A rounding at the edge of a step may add a point: then areas are compared.
        if (large.length === small.length) {
          for (let i = 0; i < 400; i++) expect(large[i] / k).toBeCloseTo(small[i], 9);
        }
        expect(signedArea(large) / (k * k * signedArea(small))).toBeCloseTo(1, 4);
      }),
      { ...runs, numRuns: 30 },
    );
  });

  test('meshes at k times the distance with k times the play, and the same contact ratio', () => {
    fc.assert(
      fc.property(
        external,
        fc.constantFrom<'external' | 'internal'>('external', 'internal'),
        scale,
        (spec, kind, k) => {
          const mate = mateOf(spec, spec.teeth + 30, kind);
          const small = findWorkingPair(spec, mate).centerDistance;
          const pair = [scaled(spec, k), scaled(mate, k)] as const;
          expect(findWorkingPair(...pair).centerDistance / k).toBeCloseTo(small, 9);
          expect(findPairClearances(...pair).backlash / k).toBeCloseTo(
            findPairClearances(spec, mate).backlash,
            9,
          );
          expect(findContactRatio(...pair).transverse).toBeCloseTo(
            findContactRatio(spec, mate).transverse,
            7,
          );
        },
      ),
      runs,
    );
  });
});

describe('mirrored', () => {
  test('a tooth is its own mirror image, exactly', () => {
    fc.assert(
      fc.property(fc.oneof(external, internal), (spec) => {
        const { points, perTooth } = traceOutline(spec, 0.002);
        for (let k = 1; k < perTooth; k++) {
          expect(points[2 * (perTooth - k)]).toBe(points[2 * k]);
          expect(points[2 * (perTooth - k) + 1]).toBe(-points[2 * k + 1] + 0);
        }
      }),
      { ...runs, numRuns: 30 },
    );
  });

  test('the other hand has the same section and the same measures', () => {
    fc.assert(
      fc.property(fc.oneof(external, internal), (spec) => {
        const other = { ...spec, helixAngle: -spec.helixAngle };
        expect(findDiameters(other)).toEqual({
          ...findDiameters(spec),
          baseHelixAngle: -findDiameters(spec).baseHelixAngle,
        });
        expect(findSpan(other, 4)).toBe(findSpan(spec, 4));
        expect(measureOverPins(other, 1.7)).toBe(measureOverPins(spec, 1.7));
        expect(traceOutline(other, 0.002).points).toEqual(traceOutline(spec, 0.002).points);
      }),
      { ...runs, numRuns: 20 },
    );
  });

  test('swapped, an external pair is the same pair', () => {
    fc.assert(
      fc.property(external, fc.integer({ min: 14, max: 120 }), (spec, teeth) => {
        const mate = mateOf(spec, teeth, 'external');
        const one = findWorkingPair(spec, mate);
        const two = findWorkingPair(mate, spec);
        expect(two.centerDistance).toBeCloseTo(one.centerDistance, 10);
        expect(two.workingDiameters[0]).toBeCloseTo(one.workingDiameters[1], 10);
        expect(findPairClearances(mate, spec).backlash).toBeCloseTo(
          findPairClearances(spec, mate).backlash,
          10,
        );
        expect(findContactRatio(mate, spec).transverse).toBeCloseTo(
          findContactRatio(spec, mate).transverse,
          9,
        );
      }),
      runs,
    );
  });
});

describe('helices that do not go together are refused', () => {
  test('one hand outside each other, opposite hands inside, unequal ones anywhere', () => {
    const right = makeSpec({ teeth: 20, helixAngle: rad(15) });
    const pairs: [GearSpec, boolean][] = [
      [makeSpec({ teeth: 40, helixAngle: rad(-15) }), true],
      [makeSpec({ teeth: 40, helixAngle: rad(15) }), false],
      [makeSpec({ teeth: 40, helixAngle: rad(-20) }), false],
      [makeSpec({ kind: 'internal', teeth: 60, helixAngle: rad(15) }), true],
      [makeSpec({ kind: 'internal', teeth: 60, helixAngle: rad(-15) }), false],
      [makeSpec({ kind: 'rack', teeth: 9, helixAngle: rad(-15) }), true],
      [makeSpec({ kind: 'rack', teeth: 9 }), false],
    ];
    for (const [mate, runsTogether] of pairs) {
      if (runsTogether) expect(() => findWorkingPair(right, mate)).not.toThrow();
      else expect(() => findWorkingPair(right, mate)).toThrow(Fail);
    }
    expect(() => findWorkingPair(right, makeSpec({ teeth: 40, module: 1.02, helixAngle: rad(-15) }))).toThrow(
      /base pitch/,
    );
  });
});

describe('labels may differ where teeth do not', () => {
  test('m 5.00, α 26.784° and m 4.98, α 26.325° mesh with a third wheel at the same distance', () => {
    // The same base pitch and base thickness under two labels, the shift worked out from the thickness.
    const first = makeSpec({ teeth: 20, module: 5, pressureAngle: rad(26.784), profileShift: 0.0325 });
    const angle = Math.acos((5 * Math.cos(rad(26.784))) / 4.98);
    const inv = (a: number): number => Math.tan(a) - a;
    const base = Math.PI / 2 + 2 * 0.0325 * Math.tan(rad(26.784)) + 20 * inv(rad(26.784));
    const profileShift = (base - Math.PI / 2 - 20 * inv(angle)) / (2 * Math.tan(angle));
    const relabelled = makeSpec({ teeth: 20, module: 4.98, pressureAngle: angle, profileShift });
    const mates = [
      makeSpec({ teeth: 33, module: 5, pressureAngle: rad(26.784), profileShift: 0.1 }),
      makeSpec({ kind: 'internal', teeth: 61, module: 5, pressureAngle: rad(26.784), profileShift: 0.1 }),
      makeSpec({ kind: 'rack', teeth: 9, module: 5, pressureAngle: rad(26.784) }),
    ];
    for (const mate of mates) {
      expect(findWorkingPair(relabelled, mate).centerDistance).toBeCloseTo(
        findWorkingPair(first, mate).centerDistance,
        9,
      );
    }
    // Value from memory: 4.98 goes with 26.325°. The shift that goes with it depends on the count, so it is not asked.
    expect(Math.abs((angle * 180) / Math.PI - 26.325)).toBeLessThan(0.002);
  });
});

describe('an internal wheel is the complement of the external one', () => {
  test('tooth and space fill the pitch at every diameter', () => {
    fc.assert(
      fc.property(internal, (spec) => {
        const { reference, base, tip } = findDiameters(spec);
        // What is taken off the wheel's tooth, the tooth that fills its space is thicker by.
        const filler: GearSpec = { ...spec, kind: 'external', thinning: -spec.thinning };
        for (const diameter of [Math.max(base, tip), reference, reference + 0.8]) {
          const both = toothThicknessAt(spec, diameter) + toothThicknessAt(filler, diameter);
          expect(both).toBeCloseTo((Math.PI * diameter) / spec.teeth, 10);
        }
      }),
      runs,
    );
  });

  test('the external tooth of the same count and shift fits into its space with no room at the flanks', () => {
    for (const profileShift of [-0.1, 0, 0.3]) {
      const wheel = makeSpec({
        kind: 'internal',
        teeth: 44,
        profileShift,
        addendum: 0.5,
        rootRadius: 0,
        dedendum: 1.2,
      });
      const filler = makeSpec({ teeth: 44, profileShift, addendum: 1.1, dedendum: 0.8, rootRadius: 0 });
      const hole = readProfile(wheel, 2e-6);
      const plug = readProfile(filler, 2e-6);
      const at = { distance: 0, turn1: 0, turn2: Math.PI / 44 };
      // Chord errors apart, the gap is 0; turned by 0.1 mrad to either side, the flanks overlap by that arc.
      expect(Math.abs(findLeastGap(plug, hole, at))).toBeLessThan(2e-5);
      for (const turn of [-1e-4, 1e-4]) {
        const gap = findLeastGap(plug, hole, { ...at, turn1: turn });
        expect(gap).toBeLessThan(-0.9e-4 * 20);
        expect(gap).toBeGreaterThan(-1.2e-4 * 23);
      }
      // Thinned, it has exactly the room of the thinning.
      const thin = readProfile({ ...filler, thinning: 0.01 }, 2e-6);
      expect(findLeastGap(thin, hole, at)).toBeGreaterThan(0.0045);
    }
  });
});
