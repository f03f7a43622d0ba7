import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Job } from '../../src/job/job-schema.ts';
import { parseJob } from '../../src/job/parse-job.ts';
import { formatJob } from '../../src/job/write-job.ts';
import { fullJob } from './full-job.ts';

const job = fullJob as unknown as Job;

describe('a job written', () => {
  test('and read again is the same job, field order included', () => {
    const again = parseJob(formatJob(job)).job;
    expect(JSON.stringify(again)).toBe(JSON.stringify(job));
  });

  test('twice gives the same bytes, and so does one that was read in between', () => {
    const text = formatJob(job);
    expect(formatJob(job)).toBe(text);
    expect(formatJob(parseJob(text).job)).toBe(text);
  });

  test('has a reading on a line and no line wider than 110', () => {
    const lines = formatJob(job).split('\n');
    expect(lines).toContain('        { "of": "span", "teeth": 3, "mm": 3.84 },');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(110);
    expect(lines.at(-1)).toBe('');
  });

  test('keeps whatever else stands in it, wherever it stands', () => {
    const holders = ['job', 'wheel', 'reading', 'spec'] as const;
    fc.assert(
      fc.property(
        fc.constantFrom(...holders),
        fc.string(),
        fc.jsonValue({ maxDepth: 4 }),
        (where, key, value) => {
          const extra = { [`x-${key}`]: value };
          const written = {
            format: 'sparetooth-job',
            version: 1,
            ...(where === 'job' ? extra : {}),
            wheels: [
              {
                id: 'a',
                ...(where === 'wheel' ? extra : {}),
                readings: [{ of: 'outside', ...(where === 'reading' ? extra : {}) }],
                spec: where === 'spec' ? extra : {},
              },
            ],
          };
          const text = formatJob(written as unknown as Job);
          expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(written)));
          expect(parseJob(text).job).toEqual(JSON.parse(JSON.stringify(written)));
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });

  test('refuses what JSON would turn into nothing', () => {
    const withRatio = (ratio: unknown): Job => ({ ...job, wanted: { ratio } }) as Job;
    expect(() => formatJob(withRatio(Number.NaN))).toThrow("can't hold NaN");
    expect(() => formatJob(withRatio(Number.POSITIVE_INFINITY))).toThrow("can't hold Infinity");
    expect(() => formatJob(withRatio(() => 1))).toThrow("can't hold a function");
    expect(formatJob({ ...job, title: undefined })).not.toContain('"title"');
  });
});
