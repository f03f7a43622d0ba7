import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { formatCompensation, parseCompensation } from '../../src/job/compensation-file.ts';

const file = {
  mine: { first: [1, 2] },
  format: 'sparetooth-compensation',
  version: 1,
  machine: 'invented printer',
  material: 'pla',
  process: 'filament-0.4',
  kit: { uMm: 0.01, ofMine: true },
  coupons: [
    { dried: true, readings: [{ of: 'bore', nominalMm: 3, goesMm: 2.7, stopsMm: 2.8, note: 'x' }] },
    {
      readings: [
        { of: 'gap', pinMm: 2, mm: [10.95, 10.97] },
        { of: 'outside', nominalMm: 10 },
      ],
    },
  ],
  compensation: { outsidePerSideMm: 0.06, teethPerSideMm: -0.01, later: 1 },
};
const failOf = (text: string): Fail => {
  try {
    parseCompensation(text);
  } catch (error) {
    if (error instanceof Fail) return error;
    throw error;
  }
  throw new Error('was read');
};

describe('a compensation file', () => {
  test('comes back as it was, unknown fields and their order included', () => {
    const text = formatCompensation(parseCompensation(JSON.stringify(file)));
    expect(JSON.parse(text)).toEqual(file);
    expect(Object.keys(JSON.parse(text))).toEqual(Object.keys(file));
    expect(formatCompensation(parseCompensation(new TextEncoder().encode(`\ufeff${text}`)))).toBe(text);
  });

  test.each([
    ['{', 'not-json', 'line 1, column 2'],
    ['[]', 'not-a-compensation', 'format'],
    ['null', 'not-a-compensation', 'format'],
    [JSON.stringify({ ...file, version: 2 }), 'wrong-version', 'version'],
    [JSON.stringify({ ...file, version: undefined }), 'wrong-version', 'version'],
    [
      JSON.stringify({ ...file, compensation: { holesPerSideMm: '0.1' } }),
      'bad-value',
      'compensation.holesPerSideMm',
    ],
    [
      JSON.stringify({ ...file, coupons: [{ readings: [{ of: 'bore', mm: -1 }] }] }),
      'bad-value',
      'coupons[0].readings[0].mm',
    ],
  ])('case %# is refused with its code and field', (text, code, field) => {
    expect(failOf(text)).toMatchObject({ code, field });
  });

  test('of any shape is read or refused with a Fail', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.constantFrom(...Object.keys(file)), fc.jsonValue()), (odd) => {
        try {
          parseCompensation(
            JSON.stringify({ ...file, ...odd, format: 'sparetooth-compensation', version: 1 }),
          );
        } catch (error) {
          expect(error).toBeInstanceOf(Fail);
        }
      }),
      { numRuns: 200, seed: 2 },
    );
  });
});
