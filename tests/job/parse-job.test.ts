import { describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { checkSize } from '../../src/job/check-size.ts';
import { parseJob } from '../../src/job/parse-job.ts';
import { fullJob } from './full-job.ts';

const least = { format: 'sparetooth-job', version: 1 };

/** The Fail that a text is refused with. */
function refusal(text: string | Uint8Array): Fail {
  try {
    parseJob(text);
  } catch (error) {
    if (error instanceof Fail) return error;
    throw error;
  }
  throw new Error('the text was accepted');
}

function refusalOf(job: unknown): Fail {
  return refusal(JSON.stringify(job));
}

const withWheel = (wheel: object): object => ({ ...least, wheels: [{ id: 'a', ...wheel }] });
const withReading = (reading: object): object => withWheel({ readings: [reading] });

describe('a job is accepted', () => {
  test('with every field of the format, none of them unknown', () => {
    const { job, notices } = parseJob(JSON.stringify(fullJob));
    expect(job).toEqual(fullJob);
    expect(notices).toEqual([]);
  });

  test('with nothing but format and version, and a wheel with nothing but its id', () => {
    expect(parseJob(JSON.stringify(least)).job).toEqual(least);
    expect(parseJob(JSON.stringify(withWheel({}))).notices).toEqual([]);
  });

  test('without any one field that is not format, version or a wheel id', () => {
    let tried = 0;
    const drop = (value: unknown, path: readonly (string | number)[]): void => {
      if (typeof value !== 'object' || value === null) return;
      for (const key of Object.keys(value)) {
        const place = [...path, Array.isArray(value) ? Number(key) : key];
        drop((value as Record<string, unknown>)[key], place);
        if (Array.isArray(value) || key === 'format' || key === 'version') continue;
        if (key === 'id' && path[0] === 'wheels') continue;
        // Without wheels or without its kind, what names a wheel or has few teeth can't stand either.
        if (key === 'wheels' || (key === 'kind' && path[0] === 'wheels' && path.length === 2)) continue;
        const copy = structuredClone(fullJob);
        let holder = copy as Record<string | number, unknown>;
        for (const part of path) holder = holder[part] as Record<string | number, unknown>;
        delete holder[key];
        const text = JSON.stringify(copy);
        expect(JSON.stringify(parseJob(text).job), place.join('.')).toBe(text);
        tried++;
      }
    };
    drop(fullJob, []);
    expect(tried).toBeGreaterThan(120);
  });

  test('with a byte order mark, as text and as bytes', () => {
    const text = `\ufeff${JSON.stringify(least)}`;
    expect(parseJob(text).job).toEqual(least);
    expect(parseJob(new TextEncoder().encode(text)).job).toEqual(least);
  });

  test('with unknown fields at every level, kept in their order and told', () => {
    const text =
      '{"x-first":1,"format":"sparetooth-job","version":1,"wheels":[{"color":"white","id":"a",' +
      '"readings":[{"by":"me","of":"outside","pinMm":1,"mm":3}],"spec":{"bore":{"plating":true}}}]}';
    const { job, notices } = parseJob(text);
    expect(JSON.stringify(job)).toBe(text);
    expect(notices.map(({ field }) => field)).toEqual([
      'x-first',
      'wheels[0].color',
      'wheels[0].readings[0].by',
      'wheels[0].readings[0].pinMm',
      'wheels[0].spec.bore.plating',
    ]);
  });

  test('with a reading that does not say of what, and tells so', () => {
    const [notice] = parseJob(JSON.stringify(withReading({ mm: 3 }))).notices;
    expect(notice.field).toBe('wheels[0].readings[0]');
    expect(notice.message).toContain('does not say what was measured');
  });

  test('with a list that looks like a decimal comma, and asks', () => {
    const { notices } = parseJob(JSON.stringify(withReading({ of: 'outside', mm: [12, 44] })));
    expect(notices[0].message).toContain('Write 12.44');
    expect(parseJob(JSON.stringify(withReading({ of: 'outside', mm: [12, 12] }))).notices).toEqual([]);
  });

  test('with __proto__ and constructor as fields, which change nothing', () => {
    const text = '{"format":"sparetooth-job","version":1,"__proto__":{"wheels":3},"constructor":1}';
    const { job } = parseJob(text);
    expect(job.wheels).toBeUndefined();
    expect(JSON.stringify(job)).toBe(text);
  });
});

describe('a value is refused, with its field, its line and what to do', () => {
  test.each([
    [
      'text for a number',
      withReading({ of: 'outside', mm: '12.44' }),
      'wheels[0].readings[0].mm',
      'Write 12.44',
    ],
    [
      'a comma in text',
      withReading({ of: 'outside', mm: '12,44' }),
      'wheels[0].readings[0].mm',
      'Write 12.44,',
    ],
    ['text in a list', withReading({ of: 'root', mm: [1, '2'] }), 'wheels[0].readings[0].mm[1]', 'Write 2,'],
    ['a negative length', withReading({ of: 'span', mm: -3 }), 'wheels[0].readings[0].mm', '10000 mm'],
    ['a length of zero', withReading({ of: 'bore', mm: 0 }), 'wheels[0].readings[0].mm', '10000 mm'],
    ['1e308', withReading({ of: 'outside', mm: 1e308 }), 'wheels[0].readings[0].mm', '10000 mm'],
    ['no takings', withReading({ of: 'outside', mm: [] }), 'wheels[0].readings[0].mm', 'leave the field out'],
    ['null', withReading({ of: 'outside', mm: null }), 'wheels[0].readings[0].mm', 'Leave the field out'],
    ['2 teeth', withReading({ of: 'teeth', count: 2 }), 'wheels[0].readings[0].count', '4 to 1000'],
    ['2.5 teeth', withReading({ of: 'teeth', count: 2.5 }), 'wheels[0].readings[0].count', 'whole'],
    ['1e308 teeth', withReading({ of: 'teeth', count: 1e308 }), 'wheels[0].readings[0].count', '1 to 1000'],
    [
      '3 teeth of a ring',
      withWheel({ kind: 'internal', spec: { teeth: 3 } }),
      'wheels[0].spec.teeth',
      '4 to 1000',
    ],
    ['a spec of 2.5 teeth', withWheel({ spec: { teeth: 2.5 } }), 'wheels[0].spec.teeth', 'whole'],
    ['a module of zero', withWheel({ spec: { moduleMm: 0 } }), 'wheels[0].spec.moduleMm', '100 mm'],
    ['an unknown reading', withReading({ of: 'weight' }), 'wheels[0].readings[0].of', '"outside"'],
    ['unknown jaws', withReading({ of: 'outside', jaws: 'soft' }), 'wheels[0].readings[0].jaws', '"settled"'],
    ['no id', { ...least, wheels: [{}] }, 'wheels[0].id', 'text in quotation marks'],
    ['an empty id', { ...least, wheels: [{ id: '' }] }, 'wheels[0].id', 'Fill it in'],
    ['a number as id', { ...least, wheels: [{ id: 7 }] }, 'wheels[0].id', 'text in quotation marks'],
    ['wheels in a group', { ...least, wheels: {} }, 'wheels', 'a list in [ ]'],
    ['a text as kit', { ...least, kit: 'caliper' }, 'kit', 'a group in { }'],
    ['one post', withReading({ of: 'center-distance', postsMm: [2] }), 'wheels[0].readings[0].postsMm', ''],
    [
      'a hole wider than what stops',
      withReading({ of: 'bore', goesMm: 2.1, stopsMm: 2 }),
      'wheels[0].readings[0].stopsMm',
      'largest that goes in',
    ],
    ['two wheels of one id', { ...least, wheels: [{ id: 'a' }, { id: 'a' }] }, 'wheels[1].id', 'of its own'],
    [
      'itself as mate',
      withReading({ of: 'center-distance', mate: 'a' }),
      'wheels[0].readings[0].mate',
      'the other wheel',
    ],
  ])('%s', (_, job, field, remedy) => {
    const fail = refusalOf(job);
    expect(fail.code).toBe('bad-value');
    expect(fail.field).toBe(field);
    expect(fail.message).not.toBe('');
    expect(fail.remedy).toContain(remedy);
  });

  test.each([
    ['a mate', withReading({ of: 'center-distance', mate: 'b' }), 'wheels[0].readings[0].mate'],
    ['a wheel to roll against', withReading({ of: 'hand-roll', with: 'b' }), 'wheels[0].readings[0].with'],
    ['a driver', { ...least, wheels: [{ id: 'a' }], meshes: [{ driver: 'b' }] }, 'meshes[0].driver'],
    ['a driven wheel', { ...least, meshes: [{ driven: 'b' }] }, 'meshes[0].driven'],
  ])('%s that the job has not', (_, job, field) => {
    const fail = refusalOf(job);
    expect([fail.code, fail.field]).toEqual(['no-such-wheel', field]);
  });

  test('and all of them are listed, the first one leading', () => {
    const fail = refusal(
      '{"format":"sparetooth-job","version":1,\n"title":3,\n"wheels":[{"id":"a","kind":4}]}',
    );
    expect(fail.field).toBe('title');
    expect(fail.message).toContain('line 2');
    const all = fail.details.all as { field: string }[];
    expect(all.map(({ field }) => field)).toEqual(['title', 'wheels[0].kind']);
  });

  test('more readings than can be weighed', () => {
    const readings = Array.from({ length: 65 }, () => ({ of: 'outside', mm: 3 }));
    expect(refusalOf(withWheel({ readings })).field).toBe('wheels[0].readings');
  });
});

describe('what is no job is refused', () => {
  test.each([
    ['', 'not-json', 'empty'],
    ['   \n', 'not-json', 'empty'],
    ['{"format":"sparetooth-job","version":1', 'not-json', 'ends before'],
    ['{"format":"sparetooth-job",}', 'not-json', 'comma too many'],
    ['{"format":"sparetooth-job","version":1} x', 'not-json', 'after the end'],
    ['{"format":"sparetooth-job", // ours\n"version":1}', 'not-json', 'comment'],
    ['{"format":"sparetooth-job", /* ours */ "version":1}', 'not-json', 'comment'],
    ['# ours\n{}', 'not-json', 'comment'],
    ["{'format':1}", 'not-json', 'quotation mark'],
    ['{format:1}', 'not-json', 'without quotation marks'],
    ['{"a":NaN}', 'not-json', 'not a number'],
    ['{"a":-Infinity}', 'not-json', 'not a number'],
    ['{"a":True}', 'not-json', 'without quotation marks'],
    ['{"a":12,44}', 'not-json', 'decimal comma'],
    ['{"a":.5}', 'not-json', "can't stand here"],
    ['{"a":05}', 'not-json', 'not how a number'],
    ['{"a" 1}', 'not-json', 'colon'],
    ['{"a":1 "b":2}', 'not-json', 'comma'],
    ['{"a":"\n"}', 'not-json', 'line or tab'],
    ['{"a":"\\x"}', 'not-json', 'means nothing'],
    ['{\u00a0"a":1}', 'not-json', 'U+00A0'],
    ['{"a":1e999}', 'bad-value', 'too large'],
    ['{"a":1,"a":2}', 'bad-value', 'twice'],
    ['[]', 'not-a-job', 'a list'],
    ['3', 'not-a-job', 'only 3'],
    ['null', 'not-a-job', 'only null'],
    ['{}', 'not-a-job', 'does not say'],
    ['{"format":"part"}', 'not-a-job', '"part"'],
    ['{"format":"sparetooth-job"}', 'wrong-version', 'which version'],
    ['{"format":"sparetooth-job","version":"1"}', 'wrong-version', '"1"'],
    ['{"format":"sparetooth-job","version":0}', 'wrong-version', '0'],
    ['{"format":"sparetooth-job","version":1.5}', 'wrong-version', '1.5'],
    ['{"format":"sparetooth-job","version":2}', 'wrong-version', 'version 2'],
  ])('%j', (text, code, message) => {
    const fail = refusal(text);
    expect(fail.code).toBe(code);
    expect(fail.message).toContain(message);
    expect(fail.remedy).not.toBe('');
  });

  test('nesting without end, which would break any reader', () => {
    const fail = refusal(`{"format":"sparetooth-job","version":1,"x":${'['.repeat(1_000_000)}`);
    expect([fail.code, fail.field]).toEqual(['bad-value', 'x[0][0][0]']);
  });

  test('bytes that are no text, and text in UTF-16', () => {
    expect(refusal(new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0xff])).code).toBe('not-json');
    expect(refusal(new Uint8Array([0xff, 0xfe, 0x7b, 0x00])).message).toContain('UTF-16');
  });

  test('a file of 50 MB, before any of it is looked at', () => {
    const bytes = new Uint8Array(50_000_000);
    expect(refusal(bytes).code).toBe('too-large');
    expect(refusal(' '.repeat(5_000_001)).code).toBe('too-large');
    expect(() => checkSize(5_000_000)).not.toThrow();
  });

  test('where a syntax error stands is said by line and column', () => {
    const fail = refusal('{\n  "format": "sparetooth-job",\n  "version": 1,\n  "x": ?\n}');
    expect(fail.field).toBe('line 4, column 8');
    expect(fail.details).toEqual({ line: 4, column: 8 });
  });
});
