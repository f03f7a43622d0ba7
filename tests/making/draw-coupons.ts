import type { Process } from '../../gear-library/processes.ts';
import type { CouponReading } from '../../src/making/calibrate.ts';
import type { Compensation } from '../../src/making/compensation.ts';
import { couponForm } from '../../src/making/coupon-form.ts';
import { measureCouponGap } from '../../src/making/measure-coupon-gap.ts';
import type { Random } from '../../src/numeric/random.ts';
import { findErrorPrior } from '../../src/readings/error-prior.ts';

/** An invented machine of a process: its errors drawn from what is usual. */
export function drawMachine(process: Process, random: Random): Compensation {
  const { mean, deviation } = findErrorPrior(process);
  const [scale, outside, apart, holes, first] = mean.map((one, k) => one + deviation[k] * random.normal());
  return {
    scalePercent: 100 * scale,
    outsidePerSideMm: outside,
    teethPerSideMm: outside + apart,
    holesPerSideMm: holes,
    firstLayerPerSideMm: Math.max(0, first),
  };
}

/** What a caliper reads off coupons of that machine; each print has errors of its own, the caliper one zero for all. */
export function drawCoupons(
  machine: Compensation,
  count: number,
  betweenPrints: number,
  random: Random,
): CouponReading[][] {
  const zero = 0.02 * random.normal();
  const scale = 1 + machine.scalePercent / 100;
  const sine = Math.sin((couponForm.gap.pressureAngleDeg * Math.PI) / 180);
  const round = (value: number): number => Math.round(value * 100) / 100;
  return Array.from({ length: count }, () => {
    const outside = machine.outsidePerSideMm + betweenPrints * random.normal();
    const teeth =
      outside + machine.teethPerSideMm - machine.outsidePerSideMm + betweenPrints * random.normal();
    const holes = machine.holesPerSideMm + betweenPrints * random.normal();
    const read = (true_: number, u: number): number =>
      round(true_ + zero + Math.hypot(0.015, u) * random.normal());
    const { ofCoupon, ofPin } = measureCouponGap(2);
    return [
      ...couponForm.widths.map(
        (nominalMm): CouponReading => ({
          of: 'outside',
          nominalMm,
          mm: read(nominalMm * scale + 2 * outside, 0.015),
        }),
      ),
      ...couponForm.widths.map(
        (nominalMm): CouponReading => ({
          of: 'foot',
          nominalMm,
          mm: read(nominalMm * scale + 2 * outside + 2 * machine.firstLayerPerSideMm, 0.015),
        }),
      ),
      ...couponForm.bores.map(
        (nominalMm): CouponReading => ({
          of: 'bore',
          nominalMm,
          mm: read(nominalMm * scale - 2 * holes - 0.02, 0.04),
        }),
      ),
      { of: 'gap', pinMm: 2, mm: read(ofCoupon * scale + ofPin + outside + teeth / sine, 0.02) },
    ];
  });
}
