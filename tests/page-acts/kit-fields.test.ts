import { expect, test } from 'vitest';
import { instruments } from '../../gear-library/reading-uncertainty.ts';
import { parseJob } from '../../src/job/parse-job.ts';
import { formatJob } from '../../src/job/write-job.ts';
import {
  calipers,
  editKit,
  editMachine,
  readOneLength,
  readPins,
  readYear,
  readZero,
} from '../../src/page/kit/kit-fields.ts';
import { startJob } from '../../src/page/state/edit-job.ts';

test('every caliper offered is one that the library knows, and all are offered', () => {
  expect(calipers.map(({ key }) => key).sort()).toEqual(Object.keys(instruments).sort());
});

test('a zero keeps its sign, whatever dash it was typed with', () => {
  expect(readZero('0.02')).toEqual({ value: 0.02 });
  expect(readZero('-0.02')).toEqual({ value: -0.02 });
  expect(readZero('−0,02')).toEqual({ value: -0.02 });
  expect(readZero('-0')).toEqual({ value: 0 });
  expect(readZero('0.00')).toEqual({ value: 0 });
  expect(readZero(' ')).toEqual({});
});

test('a length is read as everywhere, and what can’t be read is said with what to do', () => {
  expect(readOneLength('0.5 in', 100)).toEqual({ value: 12.7 });
  expect(readOneLength('0.02 0.04', 100)).toEqual({ value: 0.03 });
  expect(readOneLength('', 100)).toEqual({});
  expect(readOneLength('1,2,3', 100).wrong).toMatch(/more than one point.*Type a length/);
  expect(readOneLength('12', 10).wrong).toContain('more than 10 mm');
});

test('pins are kept thinnest first, each once', () => {
  expect(readPins('1.5 0,8 1 1.5')).toEqual({ value: [0.8, 1, 1.5] });
  expect(readPins('1/32 in')).toEqual({ value: [0.79375] });
  expect(readPins('thin').wrong).toBeDefined();
  expect(readPins(Array.from({ length: 120 }, (_, i) => `${i + 1}`).join(' ')).wrong).toContain('120 pins');
});

test('a year becomes its decade', () => {
  expect(readYear('1984')).toEqual({ value: 1980 });
  expect(readYear('1970s')).toEqual({ value: 1970 });
  expect(readYear('84').wrong).toBeDefined();
  expect(readYear('')).toEqual({});
});

test('a kit edited field by field is a job that reads back the same, its own fields kept', () => {
  let job = startJob('A counter');
  job = editKit(job, 'caliper', 'vernier-0.05');
  job = editKit(job, 'zeroMm', -0.02);
  job = editKit(job, 'pinsMm', [0.8, 1]);
  job = editKit(job, 'scanner', true);
  job = editKit(job, 'printers', 'filament, 0.4 mm');
  job = editMachine(job, 'made', 'inch-land');
  job = editMachine(job, 'decade', 1980);
  const read = parseJob(formatJob(job)).job;
  expect(read).toEqual(job);
  expect(read.kit).toMatchObject({ caliper: 'vernier-0.05', zeroMm: -0.02, pinsMm: [0.8, 1], scanner: true });
});

test('an emptied field is taken out, not left empty', () => {
  const job = editKit(editKit(startJob('A counter'), 'uMm', 0.03), 'uMm', undefined);
  expect(job.kit).toEqual({});
});
