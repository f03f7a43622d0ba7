import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { formatPath } from '../../src/job/format-path.ts';
import { scanJson } from '../../src/job/scan-json.ts';

const seed = 11;

function isScanned(text: string): boolean {
  try {
    scanJson(text);
    return true;
  } catch (error) {
    if (error instanceof Fail) return false;
    throw error;
  }
}

function isParsed(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

test('every JSON text is accepted', () => {
  fc.assert(
    fc.property(fc.json({ maxDepth: 6 }), fc.constantFrom(0, 1, '\t'), (text, indent) => {
      // Written again: fc.json may give -0 or a field twice, which the scanner rightly refuses.
      expect(isScanned(JSON.stringify(JSON.parse(text), null, indent))).toBe(true);
    }),
    { seed, numRuns: 500 },
  );
});

test('what JSON.parse refuses is refused, whatever one character does to a text', () => {
  const characters = fc.constantFrom(...'{}[]",:0123456789.eE+-truefalsn\\/ \n\t\'#\u00a0');
  let refused = 0;
  fc.assert(
    fc.property(fc.json({ maxDepth: 4 }), fc.nat(), characters, fc.boolean(), (text, where, put, instead) => {
      const at = where % text.length;
      const spoilt = text.slice(0, at) + put + text.slice(at + (instead ? 1 : 0));
      if (isParsed(spoilt)) return;
      refused++;
      expect(isScanned(spoilt)).toBe(false);
    }),
    { seed, numRuns: 3000 },
  );
  expect(refused).toBeGreaterThan(500);
});

test('what is refused beyond that is a field that stands twice, a number beyond all, or too deep a nesting', () => {
  for (const text of ['{"a":1,"a":1}', '[1e400]', `${'['.repeat(60)}${']'.repeat(60)}`]) {
    expect(isParsed(text)).toBe(true);
    expect(isScanned(text)).toBe(false);
  }
});

test('every value is visited with its path and where it starts', () => {
  const seen: [string, number][] = [];
  scanJson('{"a": [1, {"b c": "x"}]}', (path, offset) => seen.push([formatPath(path), offset]));
  expect(seen).toEqual([
    ['', 0],
    ['a', 6],
    ['a[0]', 7],
    ['a[1]', 10],
    ['a[1]["b c"]', 18],
  ]);
});
