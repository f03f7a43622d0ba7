import type { Wheel } from '../../index.ts';

/** The job says what the wheel was made to be: it needs no readings. */
export function isSpecified({ spec }: Wheel): boolean {
  return spec?.teeth !== undefined && spec.moduleMm !== undefined;
}
