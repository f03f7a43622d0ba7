import { expect, test } from 'vitest';
import { identify, type Job } from '../../src/index.ts';
import { listNextActs } from '../../src/page/state/choose-next.ts';
import { putReading } from '../../src/page/state/edit-job.ts';
import { findReading, isSameSlot, slotKey, slotOf } from '../../src/page/state/slot.ts';

test('a bar is asked over how many pitches, and what is read there says so too', () => {
  const wheel = { id: 'bar', kind: 'rack', state: 'sound', readings: [{ of: 'teeth', count: 20 }] } as const;
  const job: Job = { format: 'sparetooth-job', version: 1, wheels: [wheel] };
  const acts = listNextActs(wheel, identify(job).wheels[0]);
  const along = acts.map((act) => act.slot).filter((slot) => slot.of === 'rack-pitch');
  expect(along.length).toBeGreaterThan(1);
  expect(new Set(along.map((slot) => slot.pitches)).size).toBe(along.length);
  const [longest] = along.toSorted((a, b) => (b.pitches ?? 0) - (a.pitches ?? 0));
  const many = longest.pitches ?? 0;
  expect(many).toBeGreaterThan(5);
  // Module 0.5: a reading over many pitches that were taken for one would be another gear altogether.
  const read = putReading(wheel, { ...longest, of: 'rack-pitch', mm: Math.PI * 0.5 * many });
  expect(findReading(read, longest)).toBe(1);
  const [answer] = identify({ ...job, wheels: [read] }).wheels;
  expect(answer.pitch[0].moduleMm).toBeCloseTo(0.5, 6);
});

test('slots are the same exactly where the reading is', () => {
  expect(isSameSlot({ of: 'span', teeth: 3 }, { of: 'span', teeth: 4 })).toBe(false);
  expect(isSameSlot({ of: 'rack-pitch', pitches: 1 }, { of: 'rack-pitch', pitches: 10 })).toBe(false);
  expect(slotKey(slotOf({ of: 'teeth', pitches: 14 }))).toBe('teeth');
  expect(slotOf({ of: 'over-pins', pinMm: 1, teeth: 9 })).toEqual({ of: 'over-pins', pinMm: 1 });
});
