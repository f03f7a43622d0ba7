import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seekDistance } from '../../src/rolling/seek-distance.ts';

const never = (): boolean => false;

test('finds where a margin begins to hold, either way, though the sketch is off by a little', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.001, max: 3, noNaN: true }),
      fc.double({ min: -0.02, max: 0.02, noNaN: true }),
      fc.constantFrom(1, -1),
      fc.boolean(),
      (beyond, off, way, drops) => {
        const margin = (at: number): number => {
          const past = way * (at - 10) - beyond;
          return drops && past < 0 ? -5 : past;
        };
        const found = seekDistance(margin, (at) => margin(at + off), 10, way * 0.1, never);
        expect(found).toBeDefined();
        expect(margin(found ?? Number.NaN)).toBeGreaterThanOrEqual(0);
        expect(way * ((found ?? 0) - 10)).toBeLessThan(beyond + 0.0011);
      },
    ),
    { seed: 20261129 },
  );
});

test('what holds at once is found at once, and what never holds is not found', () => {
  expect(
    seekDistance(
      () => 0,
      () => -1,
      10,
      0.1,
      never,
    ),
  ).toBe(10);
  const beyond = (at: number): boolean => at > 12;
  expect(
    seekDistance(
      () => -1,
      () => -1,
      10,
      0.1,
      beyond,
    ),
  ).toBeUndefined();
  // Nor what only the sketch promises.
  expect(
    seekDistance(
      () => -1,
      (at) => at - 11,
      10,
      0.1,
      beyond,
    ),
  ).toBeUndefined();
});
