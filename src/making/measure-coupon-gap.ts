import { couponForm, gapWidth } from './coupon-form.ts';

/**
 * From the coupon's far edge to the top of a round shank laid in its gap, as drawn, mm: a rack's measurement over a
 * pin, H + D/(2 sin α) − w/(2 tan α) + D/2, w the gap's width at the datum line and H that line's height. The first
 * part grows with the coupon, the second is the shank's own.
 *
 * Flanks that move out by t bring the shank up by t/sin α.
 */
export function measureCouponGap(pin: number): { readonly ofCoupon: number; readonly ofPin: number } {
  const { module: m, pressureAngleDeg } = couponForm.gap;
  const angle = (pressureAngleDeg * Math.PI) / 180;
  const space = (Math.PI * m) / 2;
  return {
    ofCoupon: gapWidth - m - space / (2 * Math.tan(angle)),
    ofPin: pin / 2 + pin / (2 * Math.sin(angle)),
  };
}
