import type { Process } from '../../gear-library/processes.ts';
import { Fail } from '../fail.ts';
import { extrudeFace } from '../solid/extrude-face.ts';
import type { Mesh } from '../solid/mesh.ts';
import { couponForm } from './coupon-form.ts';
import { traceCoupon } from './trace-coupon.ts';

/** A coupon to make and to measure. */
export interface Coupon {
  readonly mesh: Mesh;
  /** What to do, in order */
  readonly steps: readonly string[];
}

/**
 * The calibration coupon of a process, as drawn, nothing compensated: print it as the parts will be printed. No chord
 * strays further than `chordError`, mm. Throws Fail `bad-usage` for a shop, which gauges its own work.
 */
export function shapeCoupon(process: Process, chordError: number): Coupon {
  if (process.key === 'machine-shop') {
    throw new Fail(
      'bad-usage',
      'process',
      'a machine shop gauges its own work: no coupon is made for it',
      'Order by the sizes on the sheet, or choose the process of your own machine.',
      { key: process.key },
    );
  }
  const height = process.key === 'laser-cut' ? couponForm.sheetHeight : couponForm.height;
  const { outline, holes } = traceCoupon(chordError);
  return {
    mesh: extrudeFace(outline, holes, height),
    steps: [
      'Make three to five, one after the other, flat, with the settings and the material of the part; leave them a day.',
      `Across the three widths (${couponForm.widths.join(', ')} mm): jaws well above the bed's side, two places each.`,
      ...(process.isLayered
        ? ["Across the same widths at the bed's side (foot): the first layers may bulge."]
        : []),
      `The holes (${couponForm.bores.join(', ')} mm): drill shanks, the largest that goes in and the next that does not; or inside jaws, less sure.`,
      `Lay a drill's shank of ${couponForm.gap.leastPin} to ${couponForm.gap.greatestPin} mm into the notch: from the far edge over the shank, and the shank itself.`,
    ],
  };
}
