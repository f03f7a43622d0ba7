import { describe, expect, test } from 'vitest';
import { usualSizes } from '../../gear-library/bores-and-shafts.ts';
import { findUsualShafts } from '../../src/making/find-usual-shafts.ts';
import { planPart } from '../../src/making/plan-part.ts';
import type { WheelEvidence } from '../../src/readings/wheel-evidence.ts';
import { makeSpec } from '../involute/make-spec.ts';

const plan = (given: Partial<WheelEvidence>) =>
  planPart(
    { id: 'w', kind: 'external', damage: [], readings: [], kit: {}, machine: {}, mates: [], ...given },
    makeSpec({ teeth: 30 }),
    {},
    false,
  );
const adviceOf = (given: Partial<WheelEvidence>): string[] =>
  plan(given).warnings.filter((warning) => warning.includes('reads like'));

describe('a measured shaft near a usual one', () => {
  test('is named, and the bore keeps what was measured', () => {
    const { form, warnings } = plan({ readings: [{ of: 'shaft', mm: 2.98 }] });
    expect(warnings.join(' ')).toContain('Your 2.98 mm reads like a shaft of 3 mm (gear pins and spindles).');
    expect(form.bore).toEqual({ shape: 'round', diameter: 2.98 });
  });

  test('has no name where it lies farther off than it is known to, or where the name adds nothing', () => {
    expect(adviceOf({ readings: [{ of: 'shaft', mm: 2.8 }] })).toEqual([]);
    expect(adviceOf({ readings: [{ of: 'shaft', mm: 3 }] })).toEqual([]);
    expect(adviceOf({ readings: [{ of: 'shaft', mm: 2.98, uMm: 0.005 }] })).toEqual([]);
    expect(adviceOf({ readings: [{ of: 'shaft', mm: 2.8, uMm: 0.12 }] })).toHaveLength(1);
  });

  test('has both names where two lie as near', () => {
    const [advice] = adviceOf({ readings: [{ of: 'shaft', mm: 3.15 }] });
    expect(advice).toContain('3.17 mm or 1/8 in');
  });

  test('is read without what the closed jaws show', () => {
    const kit = { zeroMm: 0.06 };
    const { form } = plan({ kit, readings: [{ of: 'shaft', mm: 3.06 }] });
    expect(form.bore).toEqual({ shape: 'round', diameter: 3 });
    expect(adviceOf({ kit, readings: [{ of: 'shaft', mm: 3.06 }] })).toEqual([]);
  });

  test.each(usualSizes.map((size) => [size.name, size] as const))('%s is found for what it is', (_, size) => {
    expect(findUsualShafts(size.diameterMm + 0.002, 0.025)[0]).toBe(size);
  });
});
