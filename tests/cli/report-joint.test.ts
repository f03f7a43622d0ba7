import { describe, expect, test } from 'vitest';
import { reportIdentity } from '../../src/cli/report-identity.ts';
import { columns } from '../../src/cli/wrap-text.ts';
import { identify, parseJob } from '../../src/index.ts';

const report = (wheels: readonly object[], meshes: readonly object[], wheelId: string): string => {
  const { job } = parseJob(
    JSON.stringify({ format: 'sparetooth-job', version: 1, invented: true, wheels, meshes }),
  );
  const lines = reportIdentity(identify(job, { wheelId }), job);
  for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(columns);
  return lines.join(' ').replace(/\s+/g, ' ');
};
const pinion = {
  id: 'p1',
  readings: [
    { of: 'teeth', count: 12 },
    { of: 'outside', mm: 7.42 },
  ],
};

describe('the report of gears in mesh', () => {
  test('says on which gear to take a reading that tells more there', () => {
    const text = report(
      [pinion, { id: 'w1', readings: [{ of: 'teeth', count: 60 }] }],
      [{ driver: 'p1', driven: 'w1' }],
      'p1',
    );
    expect(text).toMatch(/On w1, (across|over|bottom|distance).*: measure w1 instead/);
  });

  test('of a lost gear tells the size without a count, and what to look for in order', () => {
    const mate = { id: 'm', spec: { teeth: 20, moduleMm: 0.5 } };
    const text = report([mate, { id: 'gone', state: 'lost' }], [{ driver: 'm', driven: 'gone' }], 'gone');
    expect(text).toContain("Can't tell yet how many teeth. Its mates say metric size 0.5 (module)");
    expect(text).toMatch(
      /1\. Crumbs of it in the grease.*2\. Its post.*3\. Distance of the posts to m.*4\. One row of teeth or two/,
    );
    expect(text).not.toMatch(/undefined|NaN/);
  });

  test('of a lost gear with a distance names size and count', () => {
    const mate = { id: 'm', spec: { teeth: 20, moduleMm: 0.5 } };
    const gone = { id: 'gone', state: 'lost', readings: [{ of: 'center-distance', mate: 'm', mm: 15.01 }] };
    expect(report([mate, gone], [], 'gone')).toContain(
      'Metric size 0.5 (module), 40 teeth: likely, 19 in 20.',
    );
  });
});
