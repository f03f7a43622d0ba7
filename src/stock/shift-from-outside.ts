/**
 * The profile shift that an outside diameter speaks for, x = (d_a/m − z − 2)/2, full-depth tooth; 0 where it is within
 * what caliper, worn tips and shortened tips do anyway. Undefined where no gear of that count and size is so wide or
 * narrow: then one of the three is wrong, or it is no full-depth tooth.
 *
 * @param module mm
 * @param outside d_a, mm
 * @example findShiftFromOutside(10, 0.5, 6.48) = 0.48
 */
export function findShiftFromOutside(teeth: number, module: number, outside: number): number | undefined {
  const shift = (outside / module - teeth - 2) / 2;
  if (Math.abs(2 * shift * module) <= Math.max(leastOff, 0.2 * module)) return 0;
  if (shift < -0.6 || shift > 1.2) return undefined;
  return Math.round(shift * 100) / 100;
}

/** mm on the diameter: what an ordinary caliper and a worn or burred tip come to. */
const leastOff = 0.08;
