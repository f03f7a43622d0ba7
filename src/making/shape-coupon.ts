import type { Process } from '../../gear-library/processes.ts';
import { Fail } from '../fail.ts';
import { traceCircle } from '../solid/bore-outline.ts';
import { extrudeFace } from '../solid/extrude-face.ts';
import type { Mesh } from '../solid/mesh.ts';
import { couponForm } from './coupon-form.ts';

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
  return {
    mesh: extrudeFace(traceStair(), traceHoles(chordError), height),
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

/** Counter-clockwise about the x axis: the lower edge to the right, the upper one back with the gap in it. */
function traceStair(): number[] {
  const { widths, lengths } = couponForm;
  const points: number[] = [];
  let x = 0;
  widths.forEach((width, k) => {
    points.push(x, -width / 2, x + lengths[k], -width / 2);
    x += lengths[k];
  });
  for (let k = widths.length - 1; k >= 0; k--) {
    const half = widths[k] / 2;
    points.push(x, half);
    if (k === 1) points.push(...traceGap(x - lengths[k] / 2, half));
    x -= lengths[k];
    points.push(x, half);
  }
  return points;
}

/** From right to left. */
function traceGap(middle: number, top: number): number[] {
  const { module: m, pressureAngleDeg, dedendum } = couponForm.gap;
  const slope = Math.tan((pressureAngleDeg * Math.PI) / 180);
  const open = (Math.PI * m) / 4 + m * slope;
  const bottom = (Math.PI * m) / 4 - dedendum * m * slope;
  const depth = top - m * (1 + dedendum);
  return [middle + open, top, middle + bottom, depth, middle - bottom, depth, middle - open, top];
}

function traceHoles(chordError: number): Float64Array[] {
  const from = couponForm.lengths[0] + couponForm.lengths[1];
  return couponForm.bores.map((bore, k) => {
    const circle = traceCircle(bore / 2, chordError);
    for (let i = 0; i < circle.length; i += 2) circle[i] += from + couponForm.boreAt[k];
    return circle;
  });
}
