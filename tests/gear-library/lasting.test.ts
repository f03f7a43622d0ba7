import { describe, expect, test } from 'vitest';
import { cautions } from '../../gear-library/cautions.ts';
import { flankErrors, lookAgain, shaftFits, ungluable } from '../../gear-library/lasting.ts';
import { materials } from '../../gear-library/materials.ts';
import { processes } from '../../gear-library/processes.ts';
import { listCautions } from '../../src/making/list-cautions.ts';

describe('what a lasting part is planned with', () => {
  test('has a fit and a stray for every process, and a day to look again for every material, once each', () => {
    for (const { key } of processes) {
      expect(
        shaftFits.filter(({ process }) => process === key),
        key,
      ).toHaveLength(1);
      expect(
        flankErrors.filter(({ process }) => process === key),
        key,
      ).toHaveLength(1);
    }
    for (const { key } of materials) {
      expect(
        lookAgain.filter(({ materials: keys }) => keys.includes(key)),
        key,
      ).toHaveLength(1);
    }
    for (const { slipMm, turnsMm } of shaftFits) {
      expect(slipMm[0]).toBeLessThan(slipMm[1]);
      // What turns is wider than what is glued.
      expect(turnsMm[0]).toBeGreaterThanOrEqual(slipMm[1]);
    }
    for (const key of ungluable)
      expect(materials.find((one) => one.key === key)?.glue.holds).toMatch(/^None/);
  });
});

describe('cautions', () => {
  test('that always hold come first, and resin, filament and acetal each have their own', () => {
    const of = (process: string, material: string) => listCautions(process, material).map(({ key }) => key);
    expect(of('resin', 'resin-tough')).toContain('uncured-resin');
    expect(of('filament-0.4', 'pla')).not.toContain('uncured-resin');
    expect(of('filament-0.4', 'pla')).toEqual(expect.arrayContaining(['fumes', 'hot-parts', 'dust']));
    expect(of('machine-shop', 'pom')).toContain('acetal-fumes');
    for (const { key } of processes) expect(of(key, 'brass')[0]).toBe('never-for');
  });

  test('name what such a part is never for', () => {
    const [first] = cautions;
    for (const word of [
      'lifting',
      'braking',
      'steering',
      'vehicles',
      'medical',
      'food',
      'guards',
      'interlocks',
    ])
      expect(first.says).toContain(word);
  });

  test('speak of processes and materials that exist', () => {
    for (const { when } of cautions) {
      if ('processes' in when)
        for (const key of when.processes) expect(processes.map((one) => one.key)).toContain(key);
      if ('materials' in when)
        for (const key of when.materials) expect(materials.map((one) => one.key)).toContain(key);
    }
  });
});
