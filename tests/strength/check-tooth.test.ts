import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Material, materials } from '../../gear-library/materials.ts';
import { type Process, processes } from '../../gear-library/processes.ts';
import { Fail } from '../../src/fail.ts';
import { checkTooth, type ToothDuty } from '../../src/strength/check-tooth.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';

function material(key: string): Material {
  const found = materials.find((one) => one.key === key);
  if (!found) throw new Error(key);
  return found;
}

function process(key: string): Process {
  const found = processes.find((one) => one.key === key);
  if (!found) throw new Error(key);
  return found;
}

const deck: ToothDuty = {
  spec: makeSpec({ teeth: 12, module: 0.5, profileShift: 0.3 }),
  faceWidth: 3,
  material: material('pom'),
  process: process('machine-shop'),
  temperatureC: 30,
  cycles: 1e7,
  running: { torque: 5 },
  stall: { torque: 20 },
  mate: { spec: makeSpec({ teeth: 40, module: 0.5 }), material: material('brass') },
};

describe('a tooth checked', () => {
  test('of a tape deck at 5 N mm is far from breaking: bending is not its limit', () => {
    // 1.67 N on 3 mm at m 0.5, Lewis about 4.5 MPa (own arithmetic); POM bears 40 MPa.
    const { criteria, governs } = checkTooth(deck);
    const running = criteria.find(({ kind }) => kind === 'root-running');
    expect(running?.margin.value).toBeGreaterThan(5);
    expect(running?.verdict).toBe('holds');
    expect(criteria.map(({ kind }) => kind).sort()).toEqual(['flank-running', 'root-running', 'root-stall']);
    const least = Math.min(...criteria.map(({ margin, wanted }) => margin.value / wanted));
    expect(governs && governs.margin.value / governs.wanted).toBe(least);
  });

  test('halves its bending margin under twice the torque, and carries the same', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1000, noNaN: true }), (torque) => {
        const one = checkTooth({ ...deck, running: { torque } });
        const two = checkTooth({ ...deck, running: { torque: 2 * torque } });
        expect(one.criteria[0].margin.value / two.criteria[0].margin.value).toBeCloseTo(2, 9);
        expect(one.carries.running.value).toBeCloseTo(two.carries.running.value, 9);
      }),
      { numRuns: 10 },
    );
  });

  test('carries just what meets the wanted margin', () => {
    const { carries } = checkTooth(deck);
    const radius = (12 * 0.5) / 2;
    const at = (key: 'running' | 'stall') =>
      checkTooth({
        ...deck,
        running: undefined,
        stall: undefined,
        [key]: { torque: carries[key].value * radius },
      }).criteria.find(({ kind }) => kind === `root-${key}`);
    expect(at('running')?.margin.value).toBeCloseTo(2, 9);
    expect(at('stall')?.margin.value).toBeCloseTo(1.25, 9);
  });

  test('keeps low, usual and high in order, the load at the tip the worst', () => {
    for (const key of ['machine-shop', 'filament-0.4']) {
      for (const { margin, stress } of checkTooth({ ...deck, process: process(key) }).criteria) {
        expect(margin.low).toBeLessThan(margin.value);
        expect(margin.value).toBeLessThan(margin.high);
        expect(stress.low).toBeLessThanOrEqual(stress.value);
        expect(stress.value).toBeLessThanOrEqual(stress.high);
      }
    }
    const cut = checkTooth(deck).criteria[0].stress;
    const printed = checkTooth({ ...deck, process: process('filament-0.4') }).criteria[0].stress;
    expect(cut.value).toBe(cut.low);
    expect(printed.value).toBe(printed.high);
  });

  test('is weaker as an idler, warmer, over a thin rim, across layers', () => {
    const at = (given: Partial<ToothDuty>): number =>
      checkTooth({ ...deck, material: material('pa12'), process: process('powder-bed'), ...given }).carries
        .running.value;
    const plain = at({});
    expect(at({ isReversed: true })).toBeCloseTo(0.7 * plain, 9);
    expect(at({ temperatureC: 70 })).toBeLessThan(plain);
    expect(at({ rim: 0.6 })).toBeLessThan(plain);
    expect(at({ isAcrossLayers: true })).toBeLessThan(plain);
  });

  test("spreads a stall's peak where the material flows, and not in a brittle one", () => {
    const of = (key: string) =>
      checkTooth({ ...deck, material: material(key) }).criteria.find(({ kind }) => kind === 'root-stall')
        ?.stress;
    const pom = of('pom');
    const rigid = of('resin-rigid');
    expect(pom && rigid && rigid.value / pom.value).toBeGreaterThan(1.3);
    expect(rigid?.high).toBe(pom?.high);
  });

  test('without a load judges nothing, but says what it carries', () => {
    const { criteria, governs, carries } = checkTooth({ ...deck, running: undefined, stall: undefined });
    expect(criteria).toEqual([]);
    expect(governs).toBeUndefined();
    expect(carries.running.value).toBeGreaterThan(0);
  });

  test("leaves out a mate that can't run with it", () => {
    const odd = { spec: makeSpec({ teeth: 40, module: 0.6 }), material: material('steel') };
    const { contactRatio, criteria } = checkTooth({ ...deck, mate: odd });
    expect(contactRatio).toBeUndefined();
    expect(criteria.map(({ kind }) => kind)).toEqual(['root-running', 'root-stall']);
  });

  test('works on rings and racks', () => {
    const pinion = { spec: deck.spec, material: material('steel') };
    const ring = makeSpec({ kind: 'internal', teeth: 50, module: 0.5, rootRadius: 0.2 });
    const rack = makeSpec({ kind: 'rack', teeth: 20, module: 0.5 });
    const inRing = checkTooth({ ...deck, spec: ring, mate: pinion });
    const onRack = checkTooth({ ...deck, spec: rack, running: { force: 5 }, stall: undefined, mate: pinion });
    expect(inRing.criteria).toHaveLength(3);
    expect(onRack.criteria).toHaveLength(2);
    expect(onRack.contactRatio).toBeGreaterThan(1);
    expect(() => checkTooth({ ...deck, spec: rack })).toThrow('a rack is loaded by a force');
  });

  test('of two rings or a ring and a rack has no mate', () => {
    const ring = makeSpec({ kind: 'internal', teeth: 50, module: 0.5, rootRadius: 0.2 });
    const other = { spec: ring, material: material('pom') };
    expect(checkTooth({ ...deck, spec: ring, mate: other }).contactRatio).toBeUndefined();
  });

  test('of any shape that can be drawn gives numbers', () => {
    const shape = fc.record({
      kind: fc.constantFrom('external' as const, 'internal' as const, 'rack' as const),
      teeth: fc.integer({ min: 6, max: 150 }),
      module: fc.double({ min: 0.2, max: 3, noNaN: true }),
      pressureAngle: fc.constantFrom(rad(14.5), rad(20), rad(25)),
      helixAngle: fc.constantFrom(0, rad(15), rad(-30)),
      profileShift: fc.double({ min: -0.4, max: 0.7, noNaN: true }),
      dedendum: fc.constantFrom(1.157, 1.25, 1.4),
      rootRadius: fc.constantFrom(0, 0.2, 0.38),
      thinning: fc.double({ min: 0, max: 0.1, noNaN: true }),
    });
    let drawn = 0;
    fc.assert(
      fc.property(shape, fc.integer({ min: 8, max: 80 }), (given, mateTeeth) => {
        const spec = makeSpec(given);
        const load = spec.kind === 'rack' ? { force: 3 } : { torque: 3 };
        const mate = {
          spec: makeSpec({
            teeth: mateTeeth,
            module: given.module,
            pressureAngle: given.pressureAngle,
            helixAngle: spec.kind === 'internal' ? given.helixAngle : -given.helixAngle,
          }),
          material: material('steel'),
        };
        try {
          const { criteria, carries } = checkTooth({ ...deck, spec, mate, running: load, stall: load });
          drawn++;
          for (const { margin, stress } of criteria) {
            for (const value of [margin.low, margin.value, margin.high, stress.value]) {
              expect(Number.isFinite(value)).toBe(true);
              expect(value).toBeGreaterThan(0);
            }
          }
          expect(carries.running.low).toBeGreaterThan(0);
        } catch (error) {
          if (!(error instanceof Fail)) throw error;
        }
      }),
      { numRuns: 300 },
    );
    expect(drawn).toBeGreaterThan(100);
  });
});
