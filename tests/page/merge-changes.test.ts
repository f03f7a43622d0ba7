import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mergeChanges } from '../../src/page/keep/merge-changes.ts';

const fields = fc.dictionary(
  fc.constantFrom('a', 'b', 'c', '__proto__', 'constructor'),
  fc.integer({ min: 0, max: 3 }),
);

test('a window alone stores exactly what it has', () => {
  fc.assert(
    fc.property(fields, fields, (before, after) => {
      expect(mergeChanges(before, before, after)).toEqual(after);
    }),
  );
});

test('a window that changes nothing leaves what another stored', () => {
  fc.assert(
    fc.property(fields, fields, (stored, same) => {
      expect(mergeChanges(stored, same, same)).toEqual(stored);
    }),
  );
});

test('what both changed is as the later one has it', () => {
  expect(mergeChanges({ a: 2 }, { a: 1 }, { a: 3 })).toEqual({ a: 3 });
  expect(mergeChanges({ a: 2 }, { a: 1 }, {})).toEqual({});
});
