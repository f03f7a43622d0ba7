import { pairLimits } from '../../gear-library/rework-limits.ts';
import { Fail } from '../fail.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { findPairClearances } from '../involute/pair-clearances.ts';
import type { NeedMate } from './need.ts';

/**
 * The shift that leaves the aimed backlash against one mate at the near end of its distance: thickness grows by
 * 2 m tan α for each shift at the reference circle, by cos α_t/cos α_wt of that at the working circle (ISO 21771).
 */
export function findShiftForDistance(
  spec: GearSpec,
  mate: Pick<NeedMate, 'wheel' | 'centerDistance' | 'uncertainty'>,
): number | undefined {
  const a = mate.centerDistance - 2 * mate.uncertainty;
  try {
    const { backlash } = findPairClearances(spec, mate.wheel.spec, a);
    const step = 0.01;
    const more = findPairClearances(
      { ...spec, profileShift: spec.profileShift + step },
      mate.wheel.spec,
      a,
    ).backlash;
    const slope = (more - backlash) / step;
    return spec.profileShift + (pairLimits.backlash.aimed * spec.module - backlash) / slope;
  } catch (error) {
    if (error instanceof Fail) return undefined;
    throw error;
  }
}
