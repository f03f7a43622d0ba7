import fc from 'fast-check';
import { expect, test } from 'vitest';
import { columns, wrapText } from '../../src/cli/wrap-text.ts';

test('no word is lost, and only a word that is longer by itself passes the last column', () => {
  fc.assert(
    fc.property(fc.array(fc.stringMatching(/^[a-z]{1,100}$/), { maxLength: 40 }), (words) => {
      const lines = wrapText(words.join(' '), '  - ');
      const texts = lines.map((line) => line.slice(4));
      expect(texts.join(' ')).toBe(words.join(' '));
      for (const text of texts) expect(text.length + 4 <= columns || !text.includes(' ')).toBe(true);
    }),
    { seed: 12, numRuns: 300 },
  );
});

test('what a terminal would obey is left out: a name in a job colors nothing and clears no screen', () => {
  expect(wrapText('a\u001b[31mred\u0007 gear\u009b2J')).toEqual(['a [31mred gear 2J']);
});
