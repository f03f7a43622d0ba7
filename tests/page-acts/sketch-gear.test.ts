import { describe, expect, test } from 'vitest';
import { measureOverPins } from '../../src/involute/pins.ts';
import { findSpan, findSpanTeeth } from '../../src/involute/span.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { findSpanFaces, turnForSpan } from '../../src/page/acts/sketch/find-span-faces.ts';
import { findPinRadius } from '../../src/page/acts/sketch/rest-pin.ts';
import { makeSketchGear } from '../../src/page/acts/sketch/sketch-gear.ts';
import type { SketchSubject } from '../../src/page/acts/sketch-subject.ts';
import { makeSpec } from '../involute/make-spec.ts';

const plain = { isSplit: false, isHelical: false } as const;

describe('a sketch drawn from a traced outline', () => {
  test.each([
    [10, 0.5, 0.48],
    [13, 0.5, 0],
    [24, 1, 0],
    [40, 0.4, 0],
    [97, 0.8, -0.1],
  ])('puts the jaws over the span of the gear of %i teeth', (teeth, module, profileShift) => {
    const spec = makeSpec({ teeth, module, profileShift });
    const k = findSpanTeeth(spec) ?? 0;
    expect(k).toBeGreaterThan(0);
    const gear = makeSketchGear({
      kind: 'external',
      teeth,
      outline: traceOutline(spec, 0.0005).points,
      ...plain,
    });
    const { left, right } = findSpanFaces(gear, { x: 0, y: 0, scale: 1, turn: turnForSpan(gear, k) }, k);
    expect(Math.abs(right - left - findSpan(spec, k))).toBeLessThan(0.002);
  });

  test.each([
    ['external', 18],
    ['external', 40],
    ['internal', 40],
  ] as const)('rests the pins of an %s gear of %i teeth where pins rest', (kind, teeth) => {
    const spec = makeSpec({ kind, teeth });
    const pin = 1.68;
    const gear = makeSketchGear({ kind, teeth, outline: traceOutline(spec, 0.0005).points, ...plain });
    const at = findPinRadius(gear, pin / 2);
    const over = kind === 'internal' ? 2 * at - pin : 2 * at + pin;
    expect(Math.abs(over - (measureOverPins(spec, pin) ?? 0))).toBeLessThan(0.005);
  });
});

describe('a sketch without an outline', () => {
  test.each([5, 8, 13, 40, 200])(
    'is a closed gear of %i teeth that never crosses itself round its axis',
    (teeth) => {
      for (const kind of ['external', 'internal'] as const) {
        const gear = makeSketchGear({ kind, teeth, ...plain });
        expect(gear.points).toHaveLength(teeth * gear.perTooth);
        expect(gear.tip > gear.root).toBe(kind === 'external');
        let around = 0;
        gear.points.forEach(([x, y], i) => {
          const [nx, ny] = gear.points[(i + 1) % gear.points.length];
          const step = Math.atan2(x * ny - y * nx, x * nx + y * ny);
          around += step;
        });
        expect(around).toBeCloseTo(2 * Math.PI, 6);
      }
    },
  );

  test('is as wide as the gear at hand', () => {
    const subject: SketchSubject = { kind: 'external', teeth: 20, tipDiameterMm: 11, ...plain };
    expect(2 * makeSketchGear(subject).tip).toBeCloseTo(11, 6);
  });

  test('stands in for an outline that isn’t of its count', () => {
    const { points } = traceOutline(makeSpec({ teeth: 12 }), 0.01);
    const gear = makeSketchGear({ kind: 'external', teeth: 17, outline: points.subarray(0, 100), ...plain });
    expect(gear.points).toHaveLength(17 * gear.perTooth);
  });
});
