import { expect, test } from 'vitest';
import { collectWanted } from '../../src/job/collect-wanted.ts';
import { findWantedRatio } from '../../src/job/find-wanted-ratio.ts';
import type { Job } from '../../src/job/job-schema.ts';

const job = (wanted: Job['wanted'], motor: Job['motor'] = { shaft: 'motor', rpm: 3000 }): Job => ({
  format: 'sparetooth-job',
  version: 1,
  motor,
  wanted,
});

test('the ratio wanted comes from whatever the person knows', () => {
  expect(findWantedRatio(job({ ratio: 12.5 }))).toBe(12.5);
  expect(findWantedRatio(job({ turnsPerMinute: 240 }))).toBeCloseTo(12.5, 12);
  // 95.3 mm/s (3 3/4 inches a second) over a roller of 18.2 mm: 100.0 turns a minute (own arithmetic).
  expect(findWantedRatio(job({ beltSpeedMmPerS: 95.3, rollerDiameterMm: 18.2 }))).toBeCloseTo(29.998, 3);
  expect(findWantedRatio(job({ secondsForStroke: 2 }))).toBeCloseTo(100, 12);
});

test('without the motor, the roller or an answer there is none', () => {
  expect(findWantedRatio(job({ turnsPerMinute: 240 }, { shaft: 'motor' }))).toBeUndefined();
  expect(findWantedRatio(job({ beltSpeedMmPerS: 95.3 }))).toBeUndefined();
  expect(findWantedRatio(job({ unknown: true }))).toBeUndefined();
  expect(findWantedRatio(job(undefined))).toBeUndefined();
});

test('on the way from motor to output an idler cancels, a compound gear counts twice and a belt by its diameters', () => {
  const wanted = collectWanted({
    ...job({ to: 'out', ratio: 10, tolerancePercent: 0.5 }),
    wheels: [
      { id: 'a', shaft: 'motor' },
      { id: 'idler' },
      { id: 'b', part: 'compound' },
      { id: 'c', part: 'compound' },
      { id: 'd', shaft: 'drum' },
      { id: 'e', shaft: 'drum', kind: 'pulley', diameterMm: 12 },
      { id: 'f', shaft: 'out', kind: 'pulley', diameterMm: 30 },
    ],
    meshes: [
      { driver: 'a', driven: 'idler' },
      { driver: 'idler', driven: 'b' },
      { driver: 'd', driven: 'c' },
      { kind: 'belt', driver: 'e', driven: 'f' },
    ],
  });
  expect(wanted?.factor).toBeCloseTo(2.5, 12);
  expect(wanted?.spread).toBeCloseTo(0.0025, 12);
  expect(Object.fromEntries(wanted?.exponents ?? [])).toEqual({ a: -1, idler: 0, b: 1, c: -1, d: 1 });
});
