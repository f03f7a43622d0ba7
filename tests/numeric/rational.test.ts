import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  add,
  divide,
  isSame,
  makeRational,
  multiply,
  rationalOf,
  toNumber,
} from '../../src/numeric/rational.ts';

const fraction = fc
  .tuple(fc.bigInt({ min: -(10n ** 30n), max: 10n ** 30n }), fc.bigInt({ min: 1n, max: 10n ** 30n }))
  .map(([num, den]) => makeRational(num, den));

test('a decimal is taken as it is written', () => {
  expect(rationalOf(12.4)).toEqual({ num: 62n, den: 5n });
  expect(rationalOf(1e-7)).toEqual({ num: 1n, den: 10_000_000n });
  expect(rationalOf(1e21)).toEqual({ num: 10n ** 21n, den: 1n });
  expect(rationalOf(-0.5)).toEqual({ num: -1n, den: 2n });
  expect(() => rationalOf(Number.NaN)).toThrow();
});

test('fractions keep the laws of a field, in lowest terms', () => {
  fc.assert(
    fc.property(fraction, fraction, fraction, (a, b, c) => {
      expect(isSame(multiply(add(a, b), c), add(multiply(a, c), multiply(b, c)))).toBe(true);
      if (b.num !== 0n) expect(isSame(multiply(divide(a, b), b), a)).toBe(true);
      for (const { num, den } of [add(a, b), multiply(a, b)])
        expect(makeRational(num, den)).toEqual({ num, den });
    }),
    { seed: 3, numRuns: 300 },
  );
});

test('any double comes back, however small or large', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      const back = toNumber(rationalOf(value));
      // The last bit may be cut, not rounded.
      expect(Math.abs(back - value)).toBeLessThanOrEqual(Math.abs(value) * 2 ** -52 + 5e-324);
    }),
    { seed: 4, numRuns: 500 },
  );
});

test('beyond the doubles a fraction is infinite or 0', () => {
  expect(toNumber(makeRational(10n ** 400n, 1n))).toBe(Number.POSITIVE_INFINITY);
  expect(toNumber(makeRational(-1n, 10n ** 400n))).toBe(-0);
});
