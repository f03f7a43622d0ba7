import { describe, expect, test } from 'vitest';
import { drawFreehand } from '../../src/page/drawing/freehand.ts';
import { hatchRectangle } from '../../src/page/drawing/hatch.ts';
import { chooseMissing, countMissing } from '../../src/page/drawing/missing-teeth.ts';
import { mostRackTeeth, traceGear, traceRack } from '../../src/page/drawing/trace-path.ts';
import { gapsInCircle } from '../../src/page/drawing/train-circle.ts';
import { drawSpec, makeSpec } from './drawn-gears.ts';

/** x, y pairs of straight-line path data. */
function pointsOf(path: string): [number, number][] {
  return [...path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
}

describe('outlines as paths', () => {
  test('a gone tooth is left out of what is kept, and nothing else', () => {
    const gear = drawSpec(makeSpec(20, 1));
    const { kept, gone } = traceGear(gear, new Set([5]));
    const tipsOf = (path: string): Set<number> =>
      new Set(
        pointsOf(path)
          .filter(([x, y]) => Math.hypot(x, y) > gear.tipDiameterMm / 2 - 0.01)
          .map(([x, y]) => (Math.round((Math.atan2(y, x) * 20) / (2 * Math.PI)) + 20) % 20),
      );
    expect([...tipsOf(gone)]).toEqual([5]);
    expect(tipsOf(kept).size).toBe(19);
    expect(tipsOf(kept).has(5)).toBe(false);
  });

  test('a whole wheel keeps its outline to half a micron', () => {
    const gear = drawSpec(makeSpec(17, 0.5));
    const points = pointsOf(traceGear(gear, new Set()).whole);
    expect(points).toHaveLength(gear.outline.length / 2);
    points.forEach(([x, y], k) => {
      expect(Math.abs(x - gear.outline[2 * k])).toBeLessThanOrEqual(0.0005001);
      expect(Math.abs(y - gear.outline[2 * k + 1])).toBeLessThanOrEqual(0.0005001);
    });
  });

  test('a long bar is drawn as a piece with its own depth and pitch', () => {
    const piece = traceRack(drawSpec(makeSpec(40, 2, { kind: 'rack' })));
    expect(piece.teeth).toBe(mostRackTeeth);
    expect(piece.pitch).toBeCloseTo(2 * Math.PI, 6);
    expect(piece.tip).toBeCloseTo(2, 6);
    expect(piece.root).toBeCloseTo(-2.5, 6);
    expect(piece.back).toBeLessThan(piece.root);
    const xs = pointsOf(piece.path).map(([x]) => x);
    expect(Math.max(...xs)).toBeCloseTo(piece.halfLength, 2);
    expect(Math.min(...xs)).toBeCloseTo(-piece.halfLength, 2);
  });

  test('teeth left of a count say how many are gone; damage without a number is one tooth', () => {
    expect(countMissing({ id: 'a', readings: [{ of: 'teeth', left: 17 }] }, 20)).toBe(3);
    expect(countMissing({ id: 'a', damage: [{ kind: 'teeth-missing' }] }, 20)).toBe(1);
    expect(countMissing({ id: 'a', damage: [{ kind: 'worn' }] }, 20)).toBe(0);
    const gone = chooseMissing({ id: 'a', damage: [{ kind: 'teeth-missing', count: 4 }] }, 20);
    expect(gone.size).toBe(4);
    for (const tooth of [0, 5, 10]) expect(gone.has(tooth)).toBe(false);
  });

  test('hatching lies at 45° inside what is cut', () => {
    const lines = pointsOf(hatchRectangle({ left: 1, right: 5, low: -2, high: 3 }, 0.5));
    expect(lines.length).toBeGreaterThan(10);
    for (let k = 0; k < lines.length; k += 2) {
      const [[x0, y0], [x1, y1]] = [lines[k], lines[k + 1]];
      expect(x1 - x0).toBeCloseTo(y1 - y0, 2);
      for (const [x, y] of [lines[k], lines[k + 1]]) {
        expect(x).toBeGreaterThanOrEqual(0.999);
        expect(x).toBeLessThanOrEqual(5.001);
        expect(y).toBeGreaterThanOrEqual(-2.001);
        expect(y).toBeLessThanOrEqual(3.001);
      }
    }
    expect(hatchRectangle({ left: 1, right: 1, low: 0, high: 2 }, 0.5)).toBe('');
  });

  test('a freehand line starts and ends where it should', () => {
    const path = drawFreehand([1, 2], [7, 10], 0.5);
    expect(path.startsWith('M1 2')).toBe(true);
    expect(path.endsWith('L7 10')).toBe(true);
    expect(drawFreehand([1, 1], [1, 1], 0.5)).toBe('');
  });

  test('a circle on the train line is closed for a sound gear and open where teeth are gone', () => {
    expect(gapsInCircle(14, 0)).toMatch(/Z$/);
    expect(gapsInCircle(14, 3).match(/M/g)).toHaveLength(3);
    expect(gapsInCircle(14, 3)).not.toMatch(/Z/);
  });
});
