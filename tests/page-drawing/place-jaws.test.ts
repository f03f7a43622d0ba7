import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { measureOverPins } from '../../src/involute/pins.ts';
import { findSpan, listSpanTeeth } from '../../src/involute/span.ts';
import { placeJaws } from '../../src/page/drawing/place-jaws.ts';
import { touchPoint } from '../../src/page/drawing/touch-point.ts';
import { expectReading } from '../../src/readings/expected-reading.ts';
import { drawSpec, makeSpec } from './drawn-gears.ts';

const wheel = { id: 'gear' };

describe('jaws set on a drawn gear', () => {
  test('stand as far apart as the formulas say, for every span that can be measured', () => {
    fc.assert(
      fc.property(fc.integer({ min: 14, max: 90 }), fc.double({ min: 0.3, max: 3, noNaN: true }), (z, m) => {
        const spec = makeSpec(z, m, { profileShift: z < 20 ? 0.3 : 0 });
        const gear = drawSpec(spec);
        for (const k of listSpanTeeth(spec)) {
          const jaws = placeJaws(gear, { of: 'span', teeth: k }, 'external', wheel);
          expect(jaws?.opening ?? 0, `z ${z} m ${m} k ${k}`).toBeCloseTo(findSpan(spec, k), 1.6);
        }
      }),
      { numRuns: 25 },
    );
  });

  test('touch across the tips and in the bottom as a caliper reads, even and odd counts alike', () => {
    for (const z of [10, 11, 24, 25, 60, 61]) {
      const spec = makeSpec(z, 0.8, { profileShift: z < 15 ? 0.4 : 0 });
      const gear = drawSpec(spec);
      for (const of of ['outside', 'root'] as const) {
        const jaws = placeJaws(gear, { of }, 'external', wheel);
        expect(jaws?.opening ?? 0, `${of} of ${z}`).toBeCloseTo(expectReading(spec, { of }) ?? -1, 2);
      }
    }
  });

  test('rest over two pins as the pin formula says, outside and inside', () => {
    for (const kind of ['external', 'internal'] as const) {
      for (const z of [40, 41]) {
        const spec = makeSpec(z, 1, { kind });
        const jaws = placeJaws(drawSpec(spec), { of: 'over-pins', pinMm: 1.75 }, kind, wheel);
        expect(jaws?.opening ?? 0, `${kind} ${z}`).toBeCloseTo(measureOverPins(spec, 1.75) ?? -1, 2);
      }
    }
  });

  test('a pin that drops into the gap is not set', () => {
    const gear = drawSpec(makeSpec(30, 1));
    expect(placeJaws(gear, { of: 'over-pins', pinMm: 0.2 }, 'external', wheel)).toBeUndefined();
    expect(placeJaws(gear, { of: 'over-pins', pinMm: 9 }, 'external', wheel)).toBeUndefined();
  });

  test('the place that is enlarged lies on the outline', () => {
    for (const z of [22, 23]) {
      const gear = drawSpec(makeSpec(z, 1));
      for (const slot of [{ of: 'root' }, { of: 'span', teeth: 3 }]) {
        const jaws = placeJaws(gear, slot, 'external', wheel);
        const [x, y] = jaws ? touchPoint(jaws) : [NaN, NaN];
        let nearest = Infinity;
        for (let k = 0; k < gear.outline.length; k += 2)
          nearest = Math.min(nearest, Math.hypot(gear.outline[k] - x, gear.outline[k + 1] - y));
        expect(nearest, `${slot.of} of ${z}`).toBeLessThan(0.1);
      }
    }
  });

  test('nothing stands where a caliper reads nothing', () => {
    const gear = drawSpec(makeSpec(20, 1));
    for (const of of ['teeth', 'happened', 'center-distance', 'bore', 'hub-diameter'])
      expect(placeJaws(gear, { of }, 'external', wheel), of).toBeUndefined();
  });
});
