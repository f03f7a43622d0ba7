import { describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { parseCounts } from '../../src/trains/parse-counts.ts';
import { parseRatio } from '../../src/trains/parse-ratio.ts';

function failOf(work: () => unknown): Fail {
  try {
    work();
  } catch (error) {
    if (error instanceof Fail) return error;
    throw error;
  }
  throw new Error('nothing failed');
}

describe('a ratio is read exactly', () => {
  test.each([
    ['12.5', 25n, 2n],
    ['12,5', 25n, 2n],
    ['12/7', 12n, 7n],
    ['1:6.931', 1000n, 6931n],
    ['1 / 6,931', 1000n, 6931n],
    ['24:24', 1n, 1n],
    ['.5', 1n, 2n],
    ['7.', 7n, 1n],
    ['1e-3', 1n, 1000n],
    ['3.141592653589793238462643383279', 3141592653589793238462643383279n, 10n ** 30n],
  ])('%s', (text, num, den) => {
    expect(parseRatio(text)).toEqual({ num, den });
  });

  test.each([
    '0',
    '0/5',
    '5/0',
    '-3',
    '1:-2',
    '',
    ' ',
    'abc',
    '1/2/3',
    '1,234.5',
    '1.2.3',
    '12 5',
    'NaN',
    '1e9',
    'Infinity',
    '1'.repeat(70),
    '1/1e9',
  ])('not %j: what was typed is kept, and a remedy given', (text) => {
    const fail = failOf(() => parseRatio(text, 'ratio'));
    expect([fail.code, fail.field]).toEqual(['bad-value', 'ratio']);
    expect(fail.remedy).toContain('12.5');
    expect(fail.details.typed).toBe(text.slice(0, 64));
  });
});

describe('tooth counts are a range, a list, or both', () => {
  test.each([
    ['12-15', [12, 13, 14, 15]],
    ['20,24,30', [20, 24, 30]],
    ['30 20, 24-26; 20', [20, 24, 25, 26, 30]],
    ['12 - 14', [12, 13, 14]],
    ['12–14', [12, 13, 14]],
    ['1', [1]],
  ])('%s', (text, counts) => {
    expect(parseCounts(text)).toEqual(counts);
  });

  test.each([
    '',
    '120-12',
    '0-10',
    '12-3000',
    'abc',
    '12-',
    '-12',
    '12-20-30',
    '12.5',
    '1e3',
    '12 '.repeat(2000),
  ])('not %j', (text) => {
    const fail = failOf(() => parseCounts(text, 'teeth'));
    expect([fail.code, fail.field]).toEqual(['bad-value', 'teeth']);
    expect(fail.remedy).toContain('12-120');
  });
});
