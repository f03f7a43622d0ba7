import { traceCircle } from '../solid/bore-outline.ts';
import { couponForm } from './coupon-form.ts';

/** The coupon's face, mm: loops counter-clockwise, x0, y0, …; x along its length, y = 0 in its middle. */
export interface CouponFace {
  readonly outline: readonly number[];
  readonly holes: readonly Float64Array[];
}

/** The face of the calibration coupon; no chord of a hole strays further than `chordError`, mm. */
export function traceCoupon(chordError: number): CouponFace {
  return { outline: traceStair(), holes: traceHoles(chordError) };
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
