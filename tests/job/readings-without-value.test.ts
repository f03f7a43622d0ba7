import { describe, expect, test } from 'vitest';
import { identify, type Job, make, parseJob } from '../../src/index.ts';

const taken = [
  { of: 'teeth', count: 24 },
  { of: 'outside', mm: 13 },
  { of: 'span', teeth: 3, mm: 3.86 },
  { of: 'shaft', mm: 2 },
];

function parse(readings: readonly object[]): { job: Job; notices: string[] } {
  const { job, notices } = parseJob(
    JSON.stringify({
      format: 'sparetooth-job',
      version: 1,
      invented: true,
      kit: { pinsMm: [0.9], jawTipMm: 0.2 },
      wheels: [
        { id: 'a', readings },
        { id: 'b', readings: [{ of: 'teeth', count: 60 }] },
      ],
      meshes: [{ driver: 'a', driven: 'b' }],
    }),
  );
  return { job, notices: notices.map(({ field, message }) => `${field} ${message}`) };
}

const empty: readonly [object, string][] = [
  [{ uMm: 0.02 }, 'of'],
  [{ of: 'teeth' }, 'count'],
  [{ of: 'teeth', pitches: 3 }, 'count'],
  [{ of: 'outside', jaws: 'rocked' }, 'mm'],
  [{ of: 'root' }, 'mm'],
  [{ of: 'tooth-depth' }, 'mm'],
  [{ of: 'span', teeth: 4 }, 'mm'],
  [{ of: 'span', mm: 5.3 }, 'teeth'],
  [{ of: 'over-pins', pinMm: 0.9 }, 'mm'],
  [{ of: 'over-pins', mm: 14 }, 'pinMm'],
  [{ of: 'center-distance', mate: 'b' }, 'mm'],
  [{ of: 'center-distance', mate: 'b', overPostsMm: 23 }, 'mm'],
  [{ of: 'bore' }, 'mm'],
  [{ of: 'shaft' }, 'mm'],
  [{ of: 'face-width' }, 'mm'],
  [{ of: 'helix-angle' }, 'deg'],
  [{ of: 'hand-roll', spec: { moduleMm: 0.5 } }, 'felt'],
];

describe('a reading without a value is not taken', () => {
  const { job } = parse(taken);
  const next = identify(job, { wheelId: 'a' }).wheels[0].next.map((one) => one.of);
  const part = make(job, { wheelId: 'a', formats: ['stl'], chordErrorMm: 0.05 });

  test('the wheel it is tried on has readings left to take', () => {
    expect(next).toEqual(expect.arrayContaining(['root', 'span', 'over-pins', 'center-distance']));
  });

  test.each(empty)('%j', (reading, missing) => {
    // Before the others, so that an index that slips is seen.
    const { job: filled, notices } = parse([reading, ...taken]);
    const [wheel] = identify(filled, { wheelId: 'a' }).wheels;
    const [plain] = identify(job, { wheelId: 'a' }).wheels;
    expect(wheel.next).toEqual(plain.next);
    expect(wheel.pitch).toEqual(plain.pitch);
    expect(wheel.candidates[0].residuals.map((one) => one.reading)).toEqual(
      plain.candidates[0].residuals.map((one) => one.reading + 1),
    );
    expect(make(filled, { wheelId: 'a', formats: ['stl'], chordErrorMm: 0.05 })).toEqual(part);
    expect(notices).toEqual([expect.stringContaining('wheels[0].readings[0]')]);
    expect(notices[0]).toContain(`"${missing}"`);
  });

  test.each([
    [{ of: 'root', mm: 10.8 }],
    [{ of: 'over-pins', pinMm: 0.9, mm: 13.3 }],
    [{ of: 'center-distance', mate: 'b', overPostsMm: 23, postsMm: [2, 2] }],
  ])('%j, which has one, is', (reading) => {
    const { job: filled, notices } = parse([reading, ...taken]);
    const [wheel] = identify(filled, { wheelId: 'a' }).wheels;
    expect(wheel.next.map((one) => one.of)).not.toContain(reading.of);
    expect(notices).toEqual([]);
  });
});
