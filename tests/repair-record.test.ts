import { describe, expect, test } from 'vitest';
import { type Job, parseJob, repairRecord } from '../src/index.ts';
import { inventedJob } from './cli/invented-job.ts';
import { makeLastingJob } from './making/lasting-job.ts';

const made = { wheelId: 'p1', process: 'filament-0.4', material: 'pla' };

describe('the record of a repair', () => {
  test('says why it failed, what it was, what was made of it and what proves it', () => {
    const record = repairRecord(makeLastingJob(), { ...made, date: '2026-11-25' });
    expect(record.failed).toMatchObject({
      seen: ['split'],
      causes: [{ cause: 'hub-split' }, ...record.failed.causes.slice(1)],
    });
    expect(record.readings).toEqual([{ what: 'shaft', read: '2 mm' }]);
    expect(record.identity).toMatchObject({ from: 'spec', verdict: 'given', probability: null });
    expect(record.identity.what).toBe('12 teeth, metric size 0.8 (module)');
    expect(record.made.changes.some(({ key, isOn }) => key === 'bore' && isOn)).toBe(true);
    expect(record.check.rolled[0]).toMatchObject({ mate: 'w1', after: { verdict: 'turns' } });
    expect(record.check.strength.governs).not.toBeNull();
  });

  test('sets a day to look again: PLA is a stopgap of three months, brass holds for two years', () => {
    const on = (date: string, options: object = {}) =>
      repairRecord(makeLastingJob(), { ...made, date, ...options }).lookAgain;
    expect(on('2026-11-25')).toMatchObject({ on: '2027-02-25', months: 3, isStopgap: true });
    expect(on('2026-11-30').on).toBe('2027-02-28');
    expect(on('2027-11-30').on).toBe('2028-02-29');
    expect(on('2026-02-28', { process: 'machine-shop', material: 'brass' })).toMatchObject({
      on: '2028-02-28',
      isStopgap: false,
    });
    expect(repairRecord(makeLastingJob(), made).lookAgain.on).toBeNull();
  });

  test.each(['2026-02-30', '26-11-25', 'today', '2026-13-01'])('refuses %s as a date', (date) => {
    expect(() => repairRecord(makeLastingJob(), { ...made, date })).toThrow(
      expect.objectContaining({ code: 'bad-value', field: 'date' }),
    );
  });

  test('of a wheel known from its readings says how sure that is', () => {
    const job: Job = parseJob(JSON.stringify(inventedJob)).job;
    const record = repairRecord(job, { wheelId: 'p1', process: 'resin' });
    expect(record.identity.from).toBe('readings');
    expect(record.identity.probability).toBeGreaterThan(0.8);
    expect(record.readings).toHaveLength(6);
  });
});
