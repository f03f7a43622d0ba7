import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Material, materials } from '../../gear-library/materials.ts';
import { breakCauses, type DamageSeen } from '../../gear-library/strength-limits.ts';
import { type BrokenWheel, explainBreak } from '../../src/strength/explain-break.ts';

function material(key: string): Material {
  const found = materials.find((one) => one.key === key);
  if (!found) throw new Error(key);
  return found;
}

const first = (wheel: BrokenWheel) => explainBreak(wheel)[0];

describe('why a wheel broke', () => {
  test('split on its shaft: the hub, the surer the more its bore was stretched', () => {
    const unknown = first({ seen: ['split'], material: material('pom') });
    const strained = first({ seen: ['split'], material: material('pom'), boreStrain: 0.02 });
    expect(unknown.cause).toBe('hub-split');
    expect(strained.probability).toBeGreaterThan(unknown.probability);
    expect(strained.likelihood).toBe('very likely');
    expect(strained.figure).toEqual({ of: 'strain-over-lasting', value: 2 });
  });

  test('teeth gone: a stall where the stall breaks it, fatigue where running does', () => {
    const common = { seen: ['teeth-missing'], material: material('pom') } as const;
    expect(first({ ...common, stallMargin: 0.8, runningMargin: 6 }).cause).toBe('stall-shock');
    expect(first({ ...common, stallMargin: 6, runningMargin: 0.8 }).cause).toBe('fatigue');
  });

  test.each([
    [['worn'], 'wear'],
    [['crumbling'], 'breakdown'],
    [['swollen'], 'swelling'],
  ] as const)('%s: %s', (seen, cause) => {
    expect(first({ seen, material: material('pa6') }).cause).toBe(cause);
  });

  test('near a lamp, over its limit: heat comes forward', () => {
    const common = { seen: ['split', 'crumbling'], material: material('pla') } as const;
    const rank = (temperatureC: number): number =>
      explainBreak({ ...common, temperatureC }).findIndex(({ cause }) => cause === 'heat');
    expect(rank(70)).toBeLessThan(rank(15));
  });

  test('a brass hub does not creep: its split is something else', () => {
    expect(first({ seen: ['teeth-missing'], material: material('brass') }).cause).not.toBe('hub-split');
    const split = explainBreak({ seen: ['split'], material: material('brass') });
    expect(split.find(({ cause }) => cause === 'hub-split')?.probability).toBeLessThan(0.5);
  });

  test('nothing seen: nothing broke', () => {
    expect(explainBreak({ seen: [], material: material('pom') })).toEqual([]);
  });

  test('chances sum to one, in order, each cause once', () => {
    const damage = fc.uniqueArray(
      fc.constantFrom<DamageSeen>('split', 'teeth-missing', 'worn', 'crumbling', 'swollen'),
      { minLength: 1 },
    );
    const maybe = fc.option(fc.double({ min: 0, max: 20, noNaN: true }), { nil: undefined });
    fc.assert(
      fc.property(
        damage,
        fc.constantFrom(undefined, ...materials),
        maybe,
        maybe,
        maybe,
        (seen, of, stallMargin, runningMargin, temperatureC) => {
          const said = explainBreak({ seen, material: of, stallMargin, runningMargin, temperatureC });
          expect(said.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9);
          expect(new Set(said.map(({ cause }) => cause)).size).toBe(breakCauses.length);
          const sorted = [...said].sort((a, b) => b.probability - a.probability);
          expect(said).toEqual(sorted);
        },
      ),
    );
  });
});
