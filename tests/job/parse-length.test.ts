import { describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { parseLength } from '../../src/job/parse-length.ts';

// 1 in = 25.4 mm exactly: ISO 80000-3.
describe('a length as a person types it, in mm', () => {
  test.each([
    ['12.44', [12.44]],
    ['12,44', [12.44]],
    ['12', [12]],
    [',5', [0.5]],
    ['.5', [0.5]],
    ['12.44 12.46 12,43', [12.44, 12.46, 12.43]],
    ['12.44, 12.46, 12.43', [12.44, 12.46, 12.43]],
    ['12,44; 12,46', [12.44, 12.46]],
    [' 12.44\t12.46\n', [12.44, 12.46]],
    ['12.44 mm', [12.44]],
    ['12.44mm 12.46mm', [12.44, 12.46]],
    ['0.49"', [12.446]],
    ['0.49 in', [12.446]],
    ['0.49 0.5 IN', [12.446, 12.7]],
    ['0,49″', [12.446]],
    ['1/4 in', [6.35]],
    ['0.1 in 2.5 mm', [2.54, 2.5]],
    ['1,234', [1.234]],
  ])('%j', (text, lengths) => {
    expect(parseLength(text)).toEqual(lengths);
  });
});

describe('what is no length is a Fail that keeps what was typed', () => {
  test.each([
    ['', 'no number'],
    ['  ', 'no number'],
    ['mm', 'no number before'],
    ['abc', 'not a length'],
    ['-3', 'below zero'],
    ['−3', 'below zero'],
    ['0', 'not between'],
    ['1e308', 'not a length'],
    ['99999', 'not between'],
    ['NaN', 'not a length'],
    ['Infinity', 'not a length'],
    ['1.234,5', 'more than one point'],
    ['12.44,12.46', 'more than one point'],
    ['12.4.4', 'more than one point'],
    ['1/4', 'inches only'],
    ['1/0 in', 'not between'],
    ['12 cm', 'not a length'],
    ['12.44 mm mm', 'no number before'],
    ['9'.repeat(501), 'too long'],
  ])('%j', (text, message) => {
    let fail: unknown;
    try {
      parseLength(text, 'mm');
    } catch (error) {
      fail = error;
    }
    if (!(fail instanceof Fail)) throw new Error(`accepted: ${text}`);
    expect([fail.code, fail.field]).toEqual(['bad-value', 'mm']);
    expect(fail.message).toContain(message);
    expect(fail.details.typed).toBe(text.slice(0, 500));
  });
});
