import type { Wheel } from '../../index.ts';

/** How many of `teeth` are gone: those not left of a count, else what the damage says, one where it says no number. */
export function countMissing(wheel: Wheel, teeth: number): number {
  for (const reading of wheel.readings ?? []) {
    if (reading.of === 'teeth' && reading.left !== undefined) return Math.max(0, teeth - reading.left);
  }
  let count = 0;
  for (const one of wheel.damage ?? []) if (one.kind === 'teeth-missing') count += one.count ?? 1;
  return Math.min(count, teeth);
}

/**
 * Which teeth of the drawing are left out. Nobody says where on the rim they were, so they stand in a row at the lower
 * left, where no jaw is set and no dimension starts.
 */
export function chooseMissing(wheel: Wheel, teeth: number): ReadonlySet<number> {
  const count = Math.min(countMissing(wheel, teeth), Math.floor(teeth * 0.7));
  const first = Math.floor(teeth / 2) + 1;
  return new Set(Array.from({ length: count }, (_, i) => (first + i + teeth) % teeth));
}
