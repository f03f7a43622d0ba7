import { describe, expect, test } from 'vitest';
import { toModule } from '../../gear-library/pitch-series.ts';
import { stockRanges } from '../../gear-library/stock-ranges.ts';
import { guessSize } from '../../src/stock/guess-size.ts';
import { listRangeParts } from '../../src/stock/list-range-parts.ts';
import { findShiftFromOutside } from '../../src/stock/shift-from-outside.ts';
import { specOfPart } from '../../src/stock/spec-of-part.ts';
import { findRow, indexParts } from '../../src/stock/stock-index.ts';

describe('stock ranges', () => {
  test.each(stockRanges.map((range) => [range.key, range] as const))(
    '%s: counts ascend, every part has teeth, bore and a wall',
    (_, range) => {
      expect([...range.teeth].sort((a, b) => a - b)).toEqual([...range.teeth]);
      const parts = listRangeParts(range);
      expect(new Set(parts.map(({ id }) => id)).size).toBe(parts.length);
      for (const count of range.teeth)
        expect(
          parts.some(({ teeth }) => teeth === count),
          String(count),
        ).toBe(true);
      for (const { teeth, sizes, bore, profileShift } of parts) {
        const root = sizes[0].module * (teeth - 2.5 + 2 * profileShift);
        expect(bore?.diameter).toBeLessThan(root - 0.5);
      }
    },
  );

  test('a metric 48 pitch is module 0.6: 25.4/42.333', () => {
    expect(toModule('diametral-pitch', 127 / 3)).toBeCloseTo(0.6, 12);
  });
});

describe('a size guessed from the outside', () => {
  test.each([
    [24, 13, 0.5],
    [60, 31, 0.5],
    [60, (62 / 48) * 25.4, 25.4 / 48],
    [40, 42, 1],
    [100, 102 * 0.4, 0.4],
  ])('%s teeth, %s mm: module %s leads', (teeth, outside, module) => {
    expect(guessSize(teeth, outside).sizes[0].module).toBeCloseTo(module, 9);
  });

  test('keeps the size in sight for pinions that are shifted by up to 0.5', () => {
    for (let teeth = 8; teeth <= 14; teeth++) {
      for (const shift of [0, 0.25, 0.5]) {
        const { sizes } = guessSize(teeth, 0.5 * (teeth + 2 + 2 * shift));
        expect(
          sizes.map(({ module }) => module),
          `${teeth} ${shift}`,
        ).toContain(0.5);
      }
    }
  });

  test('names no size where none is near', () => {
    expect(guessSize(200, 202 * 0.519).sizes[0]).toMatchObject({ system: 'free' });
  });
});

describe('the shift that an outside speaks for', () => {
  test('is 0 for a plain wheel read a little small, and undefined where the three do not go together', () => {
    expect(findShiftFromOutside(24, 0.5, 12.95)).toBe(0);
    expect(findShiftFromOutside(10, 0.5, 6.48)).toBe(0.48);
    expect(findShiftFromOutside(32, 0.5, 13)).toBeUndefined();
  });
});

test('the index finds every part by its base pitch', () => {
  const parts = stockRanges.flatMap(listRangeParts);
  const index = indexParts(parts);
  expect(index.length).toBe(parts.length);
  for (const part of parts) {
    const { module, pressureAngle } = specOfPart(part);
    const pitch = Math.PI * module * Math.cos(pressureAngle);
    let row = findRow(index, pitch);
    while (index.part[row] !== parts.indexOf(part) && index.basePitch[row] === pitch) row++;
    expect(index.parts[index.part[row]]).toBe(part);
  }
});
