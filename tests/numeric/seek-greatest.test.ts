import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seekGreatest } from '../../src/numeric/seek-greatest.ts';

test('finds the top of a smooth hump and of a kink to a four-hundredth of the bounds', () => {
  fc.assert(
    fc.property(fc.double({ min: -1, max: 2, noNaN: true }), fc.boolean(), (top, isKink) => {
      const found = seekGreatest((x) => (isKink ? -Math.abs(x - top) : -((x - top) ** 2)), -1, 2);
      expect(Math.abs(found.at - top)).toBeLessThanOrEqual(3 / 400);
    }),
    { seed: 20261128 },
  );
});

test('the value is the greatest one seen, at where it was seen', () => {
  const seen: number[] = [];
  const { at, value } = seekGreatest(
    (x) => {
      const y = Math.sin(5 * x);
      seen.push(y);
      return y;
    },
    0,
    4,
  );
  expect(value).toBe(Math.max(...seen));
  expect(Math.sin(5 * at)).toBe(value);
});
