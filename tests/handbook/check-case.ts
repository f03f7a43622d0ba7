import { expect } from 'vitest';
import values from './values.json' with { type: 'json' };

type Value = number | boolean | null | readonly (number | null)[];

export interface HandbookCase {
  readonly id: string;
  readonly topic: string;
  // biome-ignore lint/suspicious/noExplicitAny: inputs differ from topic to topic
  readonly inputs: any;
  readonly expected: Record<string, Value>;
  readonly digits: Record<string, number>;
  readonly source: string;
}

export const handbookCases = values as unknown as readonly HandbookCase[];

export function findCase(id: string): HandbookCase {
  const found = handbookCases.find((one) => one.id === id);
  if (!found) throw new Error(`no handbook case ${id}`);
  return found;
}

/** Each figure to one unit of the last printed digit: handbooks often truncate. */
export function checkCase(one: HandbookCase, computed: Readonly<Record<string, unknown>>): void {
  for (const [key, expected] of Object.entries(one.expected)) {
    const actual = computed[key];
    const label = `${one.id}: ${key} (${one.source})`;
    if (typeof expected === 'boolean') {
      expect(actual, label).toBe(expected);
      continue;
    }
    const wanted = Array.isArray(expected) ? expected : [expected];
    const found = Array.isArray(actual) ? actual : [actual];
    expect(found.length, label).toBe(wanted.length);
    const unit = 10 ** -(one.digits[key] ?? 0);
    wanted.forEach((value, i) => {
      expect(
        Math.abs(Number(found[i]) - value),
        `${label}[${i}]: ${found[i]} against ${value}`,
      ).toBeLessThanOrEqual(unit * 1.000001);
    });
  }
}
