import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { involute } from '../../src/involute/involute-function.ts';
import { findFlankPoint } from '../../src/strength/find-flank-point.ts';
import { findFormFactor } from '../../src/strength/find-form-factor.ts';
import { findSingleContact } from '../../src/strength/find-single-contact.ts';
import { traceToothHalf } from '../../src/strength/trace-tooth-half.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';
import { findLewisY, lewisCounts, lewisTables } from './lewis-tables.ts';

describe("Lewis's form factors from the real outline, load at the tip", () => {
  for (const table of lewisTables) {
    test.each(lewisCounts.map((teeth, i) => [teeth || 'rack', teeth, table.y[i]] as const))(
      `${table.name}, %s teeth`,
      (_, teeth, printed) => {
        const found = findLewisY(table, teeth);
        const isFew = teeth > 0 && teeth < 18;
        expect(Math.abs(found / printed - 1), `${found.toFixed(4)} against ${printed}`).toBeLessThan(
          isFew ? 0.06 : 0.03,
        );
      },
    );
  }

  // Shigley, Mechanical Engineering Design, Table 14-2 (value from memory): Y by the module, π times the y above.
  test.each([
    [18, 0.309],
    [20, 0.322],
    [22, 0.331],
    [24, 0.337],
    [26, 0.346],
    [28, 0.353],
    [30, 0.359],
    [34, 0.371],
    [38, 0.384],
    [43, 0.397],
    [50, 0.409],
    [60, 0.422],
    [75, 0.435],
    [100, 0.447],
  ])("the other common table's Y, 20°, %s teeth", (teeth, printed) => {
    const found = findLewisY(lewisTables[1], teeth) * Math.PI;
    expect(Math.abs(found / printed - 1), `${found.toFixed(4)} against ${printed}`).toBeLessThan(0.03);
  });
});

describe('ISO form and stress correction factors at the 30° tangent', () => {
  // Y_Fa and Y_Sa for a rack of 20°, 1/1.25, corner 0.38, load at the tip, as printed at
  // china-reducers.com/jxcjjp/kcnr/6/21.htm (a table of Chinese machine design handbooks); 0 is the rack.
  test.each([
    [17, 2.97, 1.52],
    [18, 2.91, 1.53],
    [19, 2.85, 1.54],
    [20, 2.8, 1.55],
    [21, 2.76, 1.56],
    [22, 2.72, 1.57],
    [23, 2.69, 1.575],
    [24, 2.65, 1.58],
    [25, 2.62, 1.59],
    [26, 2.6, 1.595],
    [27, 2.57, 1.6],
    [28, 2.55, 1.61],
    [29, 2.53, 1.62],
    [30, 2.52, 1.625],
    [35, 2.45, 1.65],
    [40, 2.4, 1.67],
    [45, 2.35, 1.68],
    [50, 2.32, 1.7],
    [60, 2.28, 1.73],
    [70, 2.24, 1.75],
    [80, 2.22, 1.77],
    [90, 2.2, 1.78],
    [100, 2.18, 1.79],
    [150, 2.14, 1.83],
    [200, 2.12, 1.865],
    [0, 2.06, 1.97],
  ])('%s teeth: %s and %s within 1 %', (teeth, form, correction) => {
    const spec = makeSpec({ kind: teeth === 0 ? 'rack' : 'external', teeth: teeth || 1 });
    const { tangent } = findFormFactor(traceToothHalf(spec));
    expect(Math.abs(tangent.form / form - 1)).toBeLessThan(0.01);
    expect(Math.abs(tangent.concentration / correction - 1)).toBeLessThan(0.01);
    expect(tangent.isConcentrationInRange).toBe(true);
  });

  test('the figures that handbooks give for internal wheels, 2.053 and 2.65, are those of a rack with a corner of 0.15', () => {
    // Y_Fa 2.053 as the same textbook prints it (value from memory), Y_Sa 2.65 there.
    const { tangent } = findFormFactor(
      traceToothHalf(makeSpec({ kind: 'rack', teeth: 1, rootRadius: 0.15 })),
    );
    expect(tangent.form).toBeCloseTo(2.053, 2);
    expect(Math.abs(tangent.concentration / 2.65 - 1)).toBeLessThan(0.01);
  });

  test('a rack has the form factor of its formula', () => {
    // ISO 6336-3's rack for z → ∞, written out (own arithmetic): thickness and lever at the corner's 30° tangent.
    const a = rad(20);
    const [hf, rho] = [1.25, 0.38];
    const thickness =
      2 * (Math.PI / 4 + (hf - rho) * Math.tan(a) + rho / Math.cos(a) - rho * Math.cos(Math.PI / 6));
    const vertex = 1 - (Math.PI / 4 - Math.tan(a)) * Math.tan(a);
    const lever = vertex + hf - rho * (1 - Math.sin(Math.PI / 6));
    const { tangent } = findFormFactor(traceToothHalf(makeSpec({ kind: 'rack', teeth: 1 })));
    expect(tangent.thickness).toBeCloseTo(thickness, 4);
    expect(tangent.lever).toBeCloseTo(lever, 4);
    expect(tangent.filletRadius).toBeCloseTo(rho, 3);
    expect(tangent.form).toBeCloseTo((6 * lever) / thickness ** 2, 3);
  });
});

describe('the load on the flank', () => {
  test('at the tip it points as the involute says', () => {
    for (const teeth of [12, 20, 60]) {
      const spec = makeSpec({ teeth, profileShift: 0.2 });
      const { base, tip } = findDiameters(spec);
      const roll = Math.sqrt((tip / base) ** 2 - 1);
      // Half a tooth's angle at the base circle, from the thickness at the reference circle.
      const half = (Math.PI / 2 + 0.4 * Math.tan(rad(20))) / teeth + involute(rad(20));
      const { angle, vertex } = findFlankPoint(traceToothHalf(spec));
      expect(angle).toBeCloseTo(roll - half, 4);
      expect(vertex).toBeCloseTo(base / 2 / Math.cos(roll - half), 3);
    }
  });

  test('of a 20/20 pair stands at the point of single contact that its path gives', () => {
    // From the mate's tip circle: ρ = a sin α − √(r_a² − r_b²) + p_b (ISO 6336-1, point D).
    const spec = makeSpec({ teeth: 20 });
    const { base, tip } = findDiameters(spec);
    const reach = Math.sqrt(tip ** 2 - base ** 2) / 2;
    const at = 20 * Math.sin(rad(20)) - reach + Math.PI * Math.cos(rad(20));
    const { loadRadius, contactRatio } = findSingleContact(spec, spec);
    expect(loadRadius).toBeCloseTo(Math.hypot(at, base / 2), 6);
    expect(contactRatio).toBeCloseTo(1.557, 3);
  });

  test('bends less at the point of single contact than at the tip, on every kind of wheel', () => {
    const pinion = makeSpec({ teeth: 20 });
    const ring = makeSpec({ kind: 'internal', teeth: 60, rootRadius: 0.25 });
    const rack = makeSpec({ kind: 'rack', teeth: 5 });
    for (const [wheel, mate] of [
      [pinion, makeSpec({ teeth: 30 })],
      [ring, pinion],
      [rack, pinion],
      [makeSpec({ teeth: 20, helixAngle: rad(15) }), makeSpec({ teeth: 30, helixAngle: rad(-15) })],
    ]) {
      const half = traceToothHalf(wheel);
      const { loadRadius } = findSingleContact(wheel, mate);
      const single = findFormFactor(half, loadRadius);
      const tip = findFormFactor(half);
      expect(single.tangent.form).toBeLessThan(tip.tangent.form * 0.85);
      expect(single.lewis.Y).toBeGreaterThan(tip.lewis.Y);
    }
  });

  test('of a pair that hardly reaches stays at the tip', () => {
    const spec = makeSpec({ teeth: 12, addendum: 0.5 });
    expect(findSingleContact(spec, spec).loadRadius).toBeUndefined();
  });

  test('beyond the tooth is a mistake of the program', () => {
    const half = traceToothHalf(makeSpec({ teeth: 20 }));
    expect(() => findFlankPoint(half, 11.5)).toThrow('no flank at radius 11.5');
  });
});

describe('the form factor', () => {
  const anyWheel = fc.record({
    teeth: fc.integer({ min: 10, max: 120 }),
    profileShift: fc.double({ min: 0, max: 0.4, noNaN: true }),
    rootRadius: fc.double({ min: 0.1, max: 0.38, noNaN: true }),
  });

  test('does not know the size of the tooth', () => {
    fc.assert(
      fc.property(anyWheel, fc.double({ min: 0.2, max: 5, noNaN: true }), (wheel, module) => {
        const one = findFormFactor(traceToothHalf(makeSpec(wheel)));
        const scaled = findFormFactor(traceToothHalf(makeSpec({ ...wheel, module })));
        expect(scaled.lewis.Y).toBeCloseTo(one.lewis.Y, 8);
        expect(scaled.tangent.form).toBeCloseTo(one.tangent.form, 7);
        expect(scaled.tangent.concentration).toBeCloseTo(one.tangent.concentration, 5);
      }),
      { numRuns: 40 },
    );
  });

  test("puts Lewis's parabola inside the tooth's foot, touching it", () => {
    fc.assert(
      fc.property(anyWheel, (wheel) => {
        const half = traceToothHalf(makeSpec(wheel));
        const { lewis, load } = findFormFactor(half);
        const foot = load.vertex - lewis.lever;
        for (let k = 0; k < half.points.length; k += 2) {
          if (half.points[k + 1] > foot) break;
          const Y = (4 * half.points[k] ** 2) / (6 * (load.vertex - half.points[k + 1]));
          expect(Y).toBeGreaterThanOrEqual(lewis.Y * (1 - 1e-12));
        }
        expect(lewis.Y).toBeCloseTo(lewis.thickness ** 2 / (6 * lewis.lever), 12);
      }),
      { numRuns: 40 },
    );
  });

  test("barely moves with the outline's fineness", () => {
    const spec = makeSpec({ teeth: 17 });
    const fine = findFormFactor(traceToothHalf(spec, 1e-6));
    const usual = findFormFactor(traceToothHalf(spec));
    expect(Math.abs(usual.lewis.Y / fine.lewis.Y - 1)).toBeLessThan(2e-4);
    expect(Math.abs(usual.tangent.form / fine.tangent.form - 1)).toBeLessThan(1e-4);
    expect(Math.abs(usual.tangent.concentration / fine.tangent.concentration - 1)).toBeLessThan(2e-3);
  });

  test('knows a trimmed tip, a thinned tooth, shift and undercut from the outline', () => {
    const at = (given: Parameters<typeof makeSpec>[0]): number =>
      findFormFactor(traceToothHalf(makeSpec(given))).lewis.Y;
    const plain = at({ teeth: 12 });
    expect(at({ teeth: 12, tipDiameter: 13.4 })).toBeGreaterThan(plain);
    expect(at({ teeth: 12, thinning: 0.1 })).toBeLessThan(plain);
    expect(at({ teeth: 12, profileShift: 0.3 })).toBeGreaterThan(plain * 1.1);
    expect(at({ teeth: 8 })).toBeLessThan(at({ teeth: 8, profileShift: 0.5 }) * 0.75);
  });

  test('says where a corner is too sharp for the stress correction', () => {
    const { tangent } = findFormFactor(
      traceToothHalf(makeSpec({ kind: 'internal', teeth: 60, rootRadius: 0.02 })),
    );
    expect(tangent.isConcentrationInRange).toBe(false);
    expect(Number.isFinite(tangent.concentration)).toBe(true);
  });

  test("of a helical wheel is near that of the virtual spur wheel, and of no helix the spur wheel's own", () => {
    const straight = findFormFactor(traceToothHalf(makeSpec({ teeth: 20 })));
    const slanted = findFormFactor(traceToothHalf(makeSpec({ teeth: 20, helixAngle: 1e-6 })));
    expect(slanted.tangent.form).toBeCloseTo(straight.tangent.form, 6);
    // z_n of 20 teeth at 30°: 20/(cos² 28.02° cos 30°) = 29.6 (ISO 6336-3).
    const virtual = findFormFactor(traceToothHalf(makeSpec({ teeth: 29.637 })));
    const helical = findFormFactor(traceToothHalf(makeSpec({ teeth: 20, helixAngle: rad(30) })));
    expect(helical.tangent.form).toBeCloseTo(virtual.tangent.form, 3);
  });
});
