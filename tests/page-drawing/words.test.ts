import { describe, expect, test } from 'vitest';
import type { WheelReport } from '../../src/index.ts';
import { drawWheel, identify, type Job, parseJob } from '../../src/index.ts';
import { listDimensions, writeLength } from '../../src/page/drawing/list-dimensions.ts';
import { setJaws } from '../../src/page/drawing/set-jaws.ts';
import { tellFocus } from '../../src/page/drawing/tell-focus.ts';

function look(readings: object[], more: object = {}) {
  const text = JSON.stringify({
    format: 'sparetooth-job',
    version: 1,
    kit: { caliper: 'digital-0.01', zeroMm: 0, zeroUMm: 0.02, jawTipMm: 0.7 },
    wheels: [{ id: 'gear', kind: 'external', readings, ...more }],
  });
  const job: Job = parseJob(text).job;
  const report = identify(job).wheels[0];
  const wheel = job.wheels?.[0] ?? { id: 'gear' };
  const asked = report.next;
  return { wheel, report, asked, drawing: drawWheel(report, 'external', asked, 0.002) };
}

const count = { of: 'teeth', count: 24 };
const tips = { of: 'outside', mm: 26 };
const root = { of: 'root', mm: 21.5 };

describe('the drawing in one sentence', () => {
  const settled = look([count, tips, root]).report;
  const pitch = (system: 'module' | 'diametral-pitch', size: number, probability: number) => ({
    system,
    size,
    moduleMm: system === 'module' ? size : 25.4 / size,
    probability,
  });
  const report = (...pitches: WheelReport['pitch'][number][]): WheelReport => ({
    ...settled,
    pitch: pitches,
  });

  test('says what leads, how likely, and what the reading put out', () => {
    const before = report(pitch('module', 0.5, 0.6), pitch('diametral-pitch', 48, 0.38));
    const now = report(pitch('module', 0.5, 0.957), pitch('diametral-pitch', 48, 0.004));
    expect(tellFocus(before, now)).toBe(
      'Now metric size 0.5 (module), 24 teeth, 19 in 20; inch size 48 (DP) is out.',
    );
  });

  test('says what it could also be, and that it still is what it was', () => {
    const now = report(pitch('module', 0.5, 0.85), pitch('diametral-pitch', 48, 0.13));
    expect(tellFocus(undefined, now)).toMatch(/^Drawn as metric size 0.5 .*could also be inch size 48/);
    expect(tellFocus(now, now)).toMatch(/^Still metric size 0.5/);
  });

  test('does not name a winner where there is none', () => {
    const many = report(
      pitch('module', 0.5, 0.3),
      pitch('module', 0.6, 0.3),
      pitch('diametral-pitch', 48, 0.3),
    );
    expect(tellFocus(undefined, many)).toBe(
      "Can't tell yet: metric size 0.5 (module) leads, 3 in 10; 2 other sizes could be it.",
    );
    expect(tellFocus(undefined, { ...many, verdict: 'nothing-fits' })).toBe(
      'No gear I know gives these readings.',
    );
  });
});

describe('dimensions', () => {
  test('before anything is known the count is asked for, then the size across the tips', () => {
    const asked = { asked: [], unit: 'mm' } as const;
    expect(listDimensions({ ...asked, wheel: { id: 'a' } }).map((one) => one.name)).toEqual([
      'Count the teeth',
    ]);
    const counted = listDimensions({ ...asked, wheel: { id: 'a', readings: [{ of: 'teeth', count: 9 }] } });
    expect(counted.map((one) => one.slot.of)).toEqual(['outside']);
  });

  test('read ones stand plain, worked out ones in parentheses, the open one has its name only', () => {
    const seen = look([count, tips, root]);
    expect(['certain', 'likely']).toContain(seen.report.verdict);
    const active = { of: 'span', teeth: 3 };
    const all = listDimensions({ ...seen, active, unit: 'mm' });
    const shown = (of: string) => all.find((one) => one.slot.of === of)?.value;
    expect(shown('outside')).toBe('⌀ 26.00');
    expect(all.find((one) => one.slot.of === 'span')).toMatchObject({ isActive: true });
    expect(shown('span')).toBeUndefined();
    expect(shown('face-width')).toBeUndefined();
    const closed = listDimensions({
      ...seen,
      unit: 'mm',
      active: { of: 'teeth' },
      asked: seen.asked.slice(1),
    });
    expect(
      closed.filter((one) => one.how === 'worked out').every((one) => /^\(.*\)$/.test(one.value ?? '')),
    ).toBe(true);
    expect(closed.some((one) => one.how === 'worked out')).toBe(true);
  });

  test('nothing is worked out while it can’t be told what it is', () => {
    const seen = look([count]);
    expect(seen.report.verdict).toBe('undecided');
    const all = listDimensions({ ...seen, unit: 'mm' });
    expect(all.filter((one) => one.how === 'worked out')).toEqual([]);
  });

  test('a reading that doesn’t agree is marked and said so', () => {
    const seen = look([
      count,
      tips,
      root,
      { of: 'span', teeth: 3, mm: 7.72 },
      { of: 'span', teeth: 4, mm: 0.42 },
    ]);
    const span = listDimensions({ ...seen, unit: 'mm' }).find((one) => one.slot.teeth === 4);
    expect(span).toMatchObject({ isSuspect: true, value: '0.42' });
    expect(span?.spoken).toContain('agree');
  });

  test('inches have four places', () => {
    expect(writeLength(25.4, 'in')).toBe('1.0000');
    expect(writeLength(0.49, 'in')).toBe('0.0193');
    expect(writeLength(12.444, 'mm')).toBe('12.44');
  });
});

describe('the jaws', () => {
  test('stand open, close on what is typed, and stop where one still sees them', () => {
    const seen = look([count, tips]);
    const slot = { of: 'root' };
    const set = (typedMm?: number) => setJaws({ ...seen, slot, typedMm, pxPerMm: 20 });
    const waiting = set();
    const exact = waiting?.place.opening ?? 0;
    expect(waiting?.opening).toBeGreaterThan(exact);
    const row = seen.asked.findIndex((one) => one.of === 'root');
    const expected = seen.drawing.expected[row]?.[0] ?? exact;
    expect(set(expected)?.opening).toBeCloseTo(exact, 6);
    expect(set(expected - 0.3)?.opening).toBeCloseTo(exact - 0.3, 6);
    expect(set(2150)?.opening).toBeLessThan(2 * exact);
    expect(set(0)?.opening).toBeGreaterThanOrEqual(0);
  });
});
