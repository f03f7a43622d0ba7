import { expect, test } from 'vitest';
import { Fail, failCodes } from '../../src/fail.ts';
import { formatPath } from '../../src/job/format-path.ts';
import type { Job } from '../../src/job/job-schema.ts';
import { parseJob } from '../../src/job/parse-job.ts';
import { formatJob } from '../../src/job/write-job.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { fullJob } from './full-job.ts';
import { listWrongTypes, type Mutation, mutateJob } from './mutate-job.ts';

const seed = 20251;
const count = 1200;

/** What became of a spoilt job: the parsed one, or the Fail. Any other error goes through and fails the test. */
function parse(mutation: Mutation): { job: unknown } | { fail: Fail } {
  try {
    return { job: parseJob(mutation.bytes).job };
  } catch (error) {
    if (error instanceof Fail) return { fail: error };
    throw error;
  }
}

test(`${count} spoilt jobs (seed ${seed}): each a typed job or a Fail that says what to do`, () => {
  const random = startRandom(seed);
  const refused = new Map<string, number>();
  const accepted = new Map<string, number>();
  for (let k = 0; k < count; k++) {
    const mutation = mutateJob(fullJob, random);
    const label = `${mutation.kind} ${k} ${formatPath(mutation.path ?? [])}`;
    const result = parse(mutation);
    if ('fail' in result) {
      const { fail } = result;
      refused.set(mutation.kind, (refused.get(mutation.kind) ?? 0) + 1);
      expect(Object.keys(failCodes), label).toContain(fail.code);
      expect(fail.message, label).not.toMatch(/undefined|\[object|^$/);
      expect(fail.remedy, label).not.toMatch(/undefined|\[object|^$/);
      if (mutation.path && mutation.mustFail) expect(fail.field, label).toContain(formatPath(mutation.path));
      continue;
    }
    accepted.set(mutation.kind, (accepted.get(mutation.kind) ?? 0) + 1);
    expect(mutation.mustFail, `accepted in silence: ${label}`).toBe(false);
    expect(listWrongTypes(result.job), label).toEqual([]);
    const again = parseJob(formatJob(result.job as Job)).job;
    expect(JSON.stringify(again), label).toBe(JSON.stringify(result.job));
  }
  // Both outcomes were really met, in every kind of spoiling that can have both.
  expect(refused.get('retype')).toBeGreaterThan(200);
  expect(refused.get('huge')).toBeGreaterThan(60);
  for (const kind of ['drop', 'nest', 'flip', 'unicode', 'swap', 'truncate']) {
    expect(refused.get(kind), kind).toBeGreaterThan(0);
  }
  for (const kind of ['drop', 'nest', 'flip', 'unicode', 'unknown']) {
    expect(accepted.get(kind), kind).toBeGreaterThan(0);
  }
});

test('the oracle of wrong types sees a wrong type', () => {
  expect(listWrongTypes({ wheels: [{ readings: [{ of: 'outside', mm: '3' }] }] })).toEqual([
    'wheels.readings.mm',
  ]);
  expect(listWrongTypes({ wheels: [{ readings: [{ of: 'outside', mm: [3] }] }] })).toEqual([]);
});
