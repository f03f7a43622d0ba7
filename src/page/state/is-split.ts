import type { Wheel } from '../../index.ts';

/** Whether the gear is split: what is read of it while it stands open reads large. */
export function isSplit(wheel: Wheel): boolean {
  return wheel.damage?.some((one) => one.kind === 'split') ?? false;
}
