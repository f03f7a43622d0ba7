import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { reportIdentity } from '../../src/cli/report-identity.ts';
import { columns } from '../../src/cli/wrap-text.ts';
import { identify, type Job, parseJob } from '../../src/index.ts';

const demos = readdirSync('demo-data')
  .filter((name) => name.endsWith('.json'))
  .map((name): [string, Job] => [name, parseJob(readFileSync(`demo-data/${name}`)).job]);

describe.each(demos)('the report of %s', (_, job) => {
  const report = identify(job);

  test('is plain text of 80 columns at most, in words for the bench', () => {
    const lines = reportIdentity(report, job);
    for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(columns);
    const text = lines.join('\n');
    expect(text).toMatch(/\d in \d/);
    expect(text).not.toMatch(/posterior|hypothes|evidence|\bbits?\b|sigma|residual|%/i);
    expect(text).not.toMatch(/NaN|undefined|\[object/);
    // No boxes, no colors.
    expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u2500-\u259f]/u);
  });

  test('tells of a reading still to come why, and with which pin, but no length to expect', () => {
    for (const wheel of report.wheels) {
      const lines = reportIdentity({ wheels: [wheel] }, job);
      const from = lines.findIndex((line) => /^ {2}(Measure next|Nothing more is needed)/.test(line));
      if (from < 0) continue;
      const rest = lines.slice(from + 1);
      const end = rest.indexOf('');
      const section = rest
        .slice(0, end < 0 ? rest.length : end)
        .join(' ')
        .replace(/\s+/g, ' ');
      const pins = wheel.next.map(({ pinMm }) => `${pinMm} mm`);
      for (const length of section.match(/\d+(?:\.\d+)? mm/g) ?? []) expect(pins).toContain(length);
    }
  });
});

test('the README shows the report of its example as it is printed', () => {
  const { job } = parseJob(readFileSync('demo-data/slide-projector.json'));
  expect(readFileSync('README.md', 'utf8')).toContain(
    `\`\`\`\n${reportIdentity(identify(job), job).join('\n')}\n\`\`\``,
  );
});
