import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stockRanges } from '../../gear-library/stock-ranges.ts';
import { formatParts } from '../../src/job/format-parts.ts';
import { type PartsFile, parseParts } from '../../src/job/parse-parts.ts';
import { listRangeParts } from '../../src/stock/list-range-parts.ts';

/** Everything that was read of a row, in the shortest words. */
function brief(file: PartsFile): string[] {
  return file.parts.map(
    ({ teeth, sizes, bore, faceWidth }) =>
      `${teeth} m${Number(sizes[0].module.toFixed(4))} bore ${bore?.diameter ?? '?'} width ${faceWidth ?? '?'}`,
  );
}

describe('a parts file', () => {
  test.each([
    ['commas', 'teeth,module,bore,width\n24,0.5,2,4\n'],
    ['semicolons and decimal commas', 'teeth;module;bore;width\n24;0,5;2,0;4,0\n'],
    ['tabs', 'teeth\tmodule\tbore\twidth\n24\t0.5\t2\t4\n'],
    ['bars', 'teeth|module|bore|width\n24|0.5|2|4\n'],
    ['another order, and symbols', 'b,z,d_a,bore,m\n4,24,13,2,0.5\n'],
    ['long headings with units', 'Bore (mm),Number of teeth,Face width / mm,Metric module\n2,24,4,0.5\n'],
    ['units in cells', 'teeth,module,bore,width\n24 teeth,m0.5,2 mm,4mm\n'],
    ['a column in inches', 'teeth,module,bore (in),width\n24,0.5,0.07874,4\n'],
    ['quotes', '"teeth","module","bore","width"\n"24","0,5","2,0","4"\n'],
    ['Windows line ends and a byte order mark', '\ufeffteeth,module,bore,width\r\n24,0.5,2,4\r\n'],
    ['old line ends', 'teeth,module,bore,width\r24,0.5,2,4\r'],
    ['a title and remarks above', 'My gears\n# invented\n\nteeth,module,bore,width\n24,0.5,2,4\n'],
    ['unknown columns', 'color,teeth,module,bore,width,mood\nwhite,24,0.5,2,4,good\n'],
  ])('is read whatever its form: %s', (_, text) => {
    const file = parseParts(text);
    expect(file.badRows).toEqual([]);
    expect(brief(file).map((one) => one.replace(/bore 2\.0000\d*|bore 1\.9999\d*/, 'bore 2'))).toEqual([
      '24 m0.5 bore 2 width 4',
    ]);
  });

  test.each([
    ['0.5', 0.5],
    ['0,5', 0.5],
    ['m0.5', 0.5],
    ['module 0.5', 0.5],
    ['48 DP', 25.4 / 48],
    ['48DP', 25.4 / 48],
    ['DP 48', 25.4 / 48],
    ['48', 25.4 / 48],
    ['48 pitch', 25.4 / 48],
    ['1.25', 1.25],
  ])('a size written as %s is module %s mm (25.4 over the diametral pitch)', (text, module) => {
    expect(parseParts(`teeth;size\n24;${text}\n`).parts[0].sizes[0].module).toBeCloseTo(module, 9);
  });

  test.each([
    ['2', 'round', 2],
    ['2,0', 'round', 2],
    ['Ø2.3 mm', 'round', 2.3],
    ['1/8 in', 'round', 3.175],
    ['0.125"', 'round', 3.175],
    ['5 D', 'd', 5],
    ['3 mm D-shaft', 'd', 3],
    ['5 mm hex', 'hex', 5],
    ['blank', 'none', 0],
  ])('a bore written as %s is %s, %s mm', (text, shape, diameter) => {
    const [part] = parseParts(`teeth;module;bore\n24;0.5;${text}\n`).parts;
    expect(part.bore?.shape).toBe(shape);
    expect(part.bore?.diameter).toBeCloseTo(diameter, 9);
  });

  test('outside alone gives a guess of the size, said with its uncertainty and its rivals', () => {
    const [plain, fat] = parseParts('teeth,OD\n24,13.02\n10,6.48\n').parts;
    expect(plain.isGuess).toBe(true);
    expect(plain.sizes[0]).toEqual({ system: 'module', size: 0.5, module: 0.5 });
    expect(plain.moduleUncertainty).toBeGreaterThan(0.002);
    // Ten teeth of module 0.5 and shift 0.5 are as wide as ten of 48 DP with a third: both must stay in sight.
    expect(fat.sizes.map(({ size }) => size)).toEqual(expect.arrayContaining([0.5, 48]));
  });

  test('the outside beside a size tells the shift', () => {
    const [fat, plain] = parseParts('teeth,module,OD\n10,0.5,6.48\n24,0.5,12.98\n').parts;
    expect(fat.profileShift).toBeCloseTo(0.48, 2);
    expect(plain.profileShift).toBe(0);
  });

  test.each([
    ['twelve;0.5;7', 'teeth', 'not a number'],
    [';0.5;13', 'no tooth count', ''],
    ['32;0.5;13', '17 mm across the tips', ''],
    ['40;;', 'neither size nor outside', ''],
    ['25,5;0.5;13', 'not a whole number', ''],
    ['-5;0.5;3', 'outside 4 to 1000', ''],
    ['24;0;3', 'is no size', ''],
    ['24;500 mm;3', 'outside', ''],
    ['24;0.5;13;;;9', 'cells', ''],
  ])('the row "%s" is a bad one, with its line and its text', (row, ...words) => {
    const file = parseParts(`teeth;size;OD;bore\n24;0.5;13;2\n${row}\n24;0.5;13;3\n`);
    expect(file.parts.length).toBe(2);
    expect(file.badRows).toHaveLength(1);
    const [bad] = file.badRows;
    expect(bad.line).toBe(3);
    expect(bad.text).toBe(row);
    for (const word of words) expect(bad.reason).toContain(word);
    expect(bad.remedy.length).toBeGreaterThan(8);
    expect(formatParts(file)).toContain(row);
  });

  test('a cell that does not matter for the teeth spoils the cell, not the row', () => {
    const file = parseParts('teeth,module,bore,width\n24,0.5,about two,4\n');
    expect(brief(file)).toEqual(['24 m0.5 bore ? width 4']);
    expect(file.notices[0]).toEqual({ line: 2, message: 'could not read bore "about two": kept, not used' });
  });

  test('two sizes in one row that differ make it a bad row, two that agree do not', () => {
    expect(parseParts('teeth,module,dp\n24,0.5,48\n').badRows[0].reason).toContain('two sizes');
    expect(parseParts('teeth,module,dp\n24,0.52917,48\n').parts).toHaveLength(1);
  });

  test('a decimal comma in a comma file is told how to write', () => {
    const [bad] = parseParts('teeth,module\n24,0,5\n').badRows;
    expect(bad.remedy).toContain('decimal comma');
  });

  test('a quote that is never closed does not swallow the rows after it', () => {
    const file = parseParts('teeth,module,notes\n24,0.5,"open\n30,0.5,fine\n');
    expect(file.parts.map(({ teeth }) => teeth)).toEqual([24, 30]);
  });

  test('lines are counted over cells of several lines', () => {
    const file = parseParts('teeth,module,notes\n24,0.5,"two\nlines"\nx,0.5,\n');
    expect(file.badRows[0].line).toBe(4);
    expect(file.parts[0].notes).toBe('two\nlines');
  });

  test('a file without headings loses nothing, and says what to begin with', () => {
    const text = '24,0.5,2\n30,0.5,2\n';
    const file = parseParts(text);
    expect(file.columns).toEqual([]);
    expect(file.badRows.map(({ line }) => line)).toEqual([1, 2]);
    expect(file.badRows[0].remedy).toContain('teeth,module');
    expect(formatParts(file)).toBe(text);
  });

  test('Western and UTF-16 files are read', () => {
    const western = new Uint8Array(
      [...'teeth;module;Bore (']
        .map((c) => c.charCodeAt(0))
        .concat([0xd8, 0x29, 10, ...[...'24;0,5;2'].map((c) => c.charCodeAt(0))]),
    );
    expect(parseParts(western).parts).toHaveLength(1);
    const wide = new Uint8Array(Buffer.from('\ufeffteeth;module\n24;0,5\n', 'utf16le'));
    expect(parseParts(wide).parts[0].teeth).toBe(24);
  });
});

describe('the drawer of the demo', () => {
  const text = readFileSync('demo-data/drawer-of-spares.csv', 'utf8');
  test('says that it is invented, has good and bad rows, and goes out as it came in', () => {
    expect(text.split('\n')[0]).toContain('invented');
    const file = parseParts(text);
    expect(file.parts.length).toBe(13);
    expect(file.badRows.map(({ line }) => line)).toEqual([14, 15, 16, 17, 19]);
    expect(formatParts(file)).toBe(text);
  });
});

describe('nothing is lost', () => {
  const cell = fc.oneof(
    fc.constantFrom(
      '24',
      '0.5',
      '0,5',
      '48 DP',
      '13.0',
      '',
      '?',
      'POM',
      '1/8 in',
      '"',
      '"a',
      'a"',
      '"a;b"',
      '# x',
      '1e9',
      'NaN',
      '-1',
    ),
    fc.string({ maxLength: 12 }),
  );
  const separator = fc.constantFrom(',', ';', '\t', '|');
  const table = fc
    .tuple(
      separator,
      fc.array(fc.constantFrom('teeth', 'module', 'OD', 'bore', 'width', 'color', 'price'), { maxLength: 6 }),
      fc.array(fc.array(cell, { maxLength: 8 }), { maxLength: 12 }),
    )
    .map(([mark, heads, rows]) => [heads, ...rows].map((cells) => cells.join(mark)).join('\n'));

  test('of any garbage: it never throws, every line stands in the rows, and writing and reading again changes nothing', () => {
    fc.assert(
      fc.property(
        fc.oneof(table, fc.string({ maxLength: 300 }), fc.string({ unit: 'binary', maxLength: 200 })),
        (text) => {
          const file = parseParts(text);
          const written = formatParts(file);
          const plain = text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n');
          expect(written.replace(/\n$/, '')).toBe(plain.replace(/\n$/, ''));
          const again = parseParts(written);
          expect(again.parts).toEqual(file.parts);
          expect(again.badRows).toEqual(file.badRows);
        },
      ),
      { numRuns: 600, seed: 424 },
    );
  });

  test('of any bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(parseParts(bytes).parts.length).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 300, seed: 425 },
    );
  });

  test('of parts that are added: they are read back as they were, under any headings that hold them', () => {
    const own = listRangeParts(stockRanges[0]).map((part) => ({
      ...part,
      kept: 'tin; 3',
      notes: 'say "new"',
      isAngleAssumed: true,
    }));
    for (const head of ['', 'teeth;pitch;shift;bore;width;material;where;count;notes\n']) {
      const file = parseParts(`${head}`);
      const plain = own.filter(({ profileShift }) => head !== '' || profileShift === 0);
      const again = parseParts(formatParts(file, plain));
      expect(again.badRows).toEqual([]);
      expect(again.parts.map((part) => ({ ...part, id: '', from: 'range', name: '' }))).toEqual(
        plain.map((part) => ({ ...part, id: '', name: '' })),
      );
    }
  });
});
