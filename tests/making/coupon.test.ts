import { describe, expect, test } from 'vitest';
import { printErrors } from '../../gear-library/print-errors.ts';
import { type Process, processes } from '../../gear-library/processes.ts';
import { calibrate } from '../../src/making/calibrate.ts';
import type { Compensation } from '../../src/making/compensation.ts';
import { couponForm } from '../../src/making/coupon-form.ts';
import { measureCouponGap } from '../../src/making/measure-coupon-gap.ts';
import { shapeCoupon } from '../../src/making/shape-coupon.ts';
import { bisect } from '../../src/numeric/bisect.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { findErrorPrior } from '../../src/readings/error-prior.ts';
import { checkMesh } from '../../src/solid/check-mesh.ts';
import type { Mesh } from '../../src/solid/mesh.ts';
import { drawCoupons, drawMachine } from './draw-coupons.ts';

const find = (key: string): Process => {
  const process = processes.find((one) => one.key === key);
  if (!process) throw new Error(key);
  return process;
};
const filament = find('filament-0.4');
const keys = [
  'scalePercent',
  'outsidePerSideMm',
  'teethPerSideMm',
  'holesPerSideMm',
] as const satisfies readonly (keyof Compensation)[];

/** The outer loop of the lower face: the stair has no other points on its outline. */
const outlineOf = ({ positions }: Mesh): [number, number][] => {
  const points: [number, number][] = [];
  // 12 corners of three steps, 4 more of the gap.
  for (let k = 0; k < 16; k++) points.push([positions[3 * k], positions[3 * k + 1]]);
  return points;
};

describe('a coupon', () => {
  test.each(processes.filter(({ key }) => key !== 'machine-shop').map(({ key }) => key))(
    '%s: is one closed solid with its holes, as large as it is drawn',
    (key) => {
      const { mesh, steps } = shapeCoupon(find(key), 0.0002);
      const report = checkMesh(mesh);
      expect(report).toMatchObject({ isClosed: true, degenerate: 0, genus: couponForm.bores.length });
      const height = key === 'laser-cut' ? 3 : 5;
      // Three rectangles, less a trapezoid of depth 2.25 and the holes.
      const gap = 2.25 * 2 * (Math.PI / 4 + ((1 - 1.25) / 2) * Math.tan(Math.PI / 9));
      const holes = couponForm.bores.reduce((sum, d) => sum + (Math.PI * d * d) / 4, 0);
      const area = 5 * 8 + 10 * 12 + 20 * 26 - gap - holes;
      expect(report.volume / (area * height)).toBeCloseTo(1, 4);
      expect(steps.length).toBeGreaterThanOrEqual(4);
    },
  );

  test('is not made for a shop', () => {
    expect(() => shapeCoupon(find('machine-shop'), 0.01)).toThrow('gauges its own work');
  });

  test('has a library entry for every process', () => {
    expect(printErrors.map(({ process }) => process)).toEqual(processes.map(({ key }) => key));
  });

  // A shank let down into the notch of the file itself, of a machine that lays its line t further out: no formula.
  test.each([
    [1.5, 0],
    [2, 0],
    [2.3, 0.06],
    [2, -0.05],
  ])('a shank of %f mm stands as high as the formula says, flanks %f mm out', (pin, out) => {
    const points = outlineOf(shapeCoupon(filament, 0.002).mesh);
    const middle = couponForm.lengths[0] + couponForm.lengths[1] / 2;
    const clear = (height: number): boolean =>
      points.every(([ax, ay], k) => {
        const [bx, by] = points[(k + 1) % points.length];
        const length = (bx - ax) ** 2 + (by - ay) ** 2;
        const part = Math.min(
          1,
          Math.max(0, ((middle - ax) * (bx - ax) + (height - ay) * (by - ay)) / length),
        );
        return Math.hypot(middle - ax - part * (bx - ax), height - ay - part * (by - ay)) > pin / 2 + out;
      });
    const rests = bisect(clear, 20, 0).holding;
    const { ofCoupon, ofPin } = measureCouponGap(pin);
    const sine = Math.sin(Math.PI / 9);
    expect(rests + pin / 2 + (5 + out)).toBeCloseTo(ofCoupon + ofPin + out + out / sine, 6);
  });
});

describe('a calibration', () => {
  test('without readings is what is usual for the process', () => {
    const { compensation, uncertainty, coupons } = calibrate(filament, []);
    expect(coupons).toBe(0);
    // Library: holes 0.1 to 0.2 smaller, outsides 0 to 0.2 larger, on the diameter.
    expect(compensation.holesPerSideMm).toBeCloseTo(0.075, 12);
    expect(compensation.outsidePerSideMm).toBeCloseTo(0.05, 12);
    expect(uncertainty.outsidePerSideMm).toBeCloseTo(0.1 / 1.5 / 2, 12);
  });

  test('finds the machine again, means the give or take that it states, and gains from every coupon', () => {
    const { betweenPrints } = findErrorPrior(filament);
    const errors: Record<number, number> = {};
    for (const count of [1, 3, 5]) {
      const random = startRandom(77 + count);
      const squares: Record<string, number> = {};
      const inside: Record<string, number> = {};
      const draws = 100;
      let teeth = 0;
      for (let draw = 0; draw < draws; draw++) {
        const machine = drawMachine(filament, random);
        const scatter = betweenPrints * Math.exp(0.6 * random.normal());
        const found = calibrate(filament, drawCoupons(machine, count, scatter, random));
        for (const key of keys) {
          const apart = (found.compensation[key] - machine[key]) / found.uncertainty[key];
          squares[key] = (squares[key] ?? 0) + apart ** 2 / draws;
          inside[key] = (inside[key] ?? 0) + (Math.abs(apart) < 1.96 ? 1 / draws : 0);
        }
        teeth += (found.compensation.teethPerSideMm - machine.teethPerSideMm) ** 2 / draws;
      }
      for (const key of keys) {
        // Of 100 draws, 0.95 has a standard error of 0.022, a mean square of 1 one of 0.14.
        expect(inside[key], `${count} ${key}`).toBeGreaterThan(0.87);
        expect(squares[key], `${count} ${key}`).toBeGreaterThan(0.55);
        expect(squares[key], `${count} ${key}`).toBeLessThan(1.5);
      }
      errors[count] = Math.sqrt(teeth);
    }
    expect(errors[3]).toBeLessThan(errors[1]);
    expect(errors[5]).toBeLessThan(0.8 * errors[1]);
  });

  test('says how much prints differ', () => {
    const scatterOf = (scatter: number): number => {
      const random = startRandom(9);
      let sum = 0;
      for (let k = 0; k < 20; k++) {
        const machine = drawMachine(filament, random);
        sum += calibrate(filament, drawCoupons(machine, 5, scatter, random)).betweenPrintsMm / 20;
      }
      return sum;
    };
    expect(scatterOf(0.006)).toBeLessThan(0.015);
    expect(scatterOf(0.05)).toBeGreaterThan(0.035);
  });

  test('leaves out a reading that is plainly wrong, and says which', () => {
    const random = startRandom(4);
    const machine = drawMachine(filament, random);
    const coupons = drawCoupons(machine, 3, 0.01, random);
    const right = calibrate(filament, coupons);
    expect(right.readings.every(({ isLeftOut }) => !isLeftOut)).toBe(true);
    const wrong = coupons.map((readings, c) =>
      readings.map((one, k) => (c === 1 && k === 2 ? { ...one, mm: (one.mm as number) + 0.6 } : one)),
    );
    const found = calibrate(filament, wrong);
    expect(
      found.readings.filter(({ isLeftOut }) => isLeftOut).map((one) => [one.coupon, one.reading]),
    ).toEqual([[1, 2]]);
    expect(found.compensation.outsidePerSideMm).toBeCloseTo(right.compensation.outsidePerSideMm, 2);
  });

  test('reads a hole by shanks: between what goes in and what does not', () => {
    const shanks = calibrate(filament, [
      [3, 4, 5].map((nominalMm) => ({
        of: 'bore' as const,
        nominalMm,
        goesMm: nominalMm - 0.3,
        stopsMm: nominalMm - 0.2,
      })),
    ]);
    // 0.25 smaller on the diameter; the prior says 0.15.
    expect(shanks.compensation.holesPerSideMm).toBeGreaterThan(0.085);
    expect(shanks.compensation.holesPerSideMm).toBeLessThan(0.125);
  });

  test('refuses a size that the coupon does not have, and a shank that falls through', () => {
    expect(() => calibrate(filament, [[{ of: 'outside', nominalMm: 7, mm: 7 }]])).toThrow('no 7 mm');
    expect(() => calibrate(filament, [[{ of: 'bore', nominalMm: 3, goesMm: 3, stopsMm: 2.9 }]])).toThrow(
      "can't stop",
    );
    expect(() => calibrate(filament, [[{ of: 'gap', pinMm: 1, mm: 11 }]])).toThrow('does not rest');
  });
});
