import { pairLimits } from '../../gear-library/rework-limits.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { toothThicknessAt } from '../involute/tooth-thickness.ts';
import { findUndercutShift } from '../involute/undercut.ts';
import { bisect } from '../numeric/bisect.ts';

/**
 * The profile shifts that an external wheel can be made with: from where undercut would reach the flank that is used
 * (practice allows a little: unshifted from 14 teeth on, where theory wants 17.1) to where the tip land falls under the
 * limit. Undefined where even the least shift leaves no land.
 *
 * Source: undercut x = h_a − z sin² α_t/(2 cos β) (ISO 21771); in practice x = (14 − z)/17 for 20°, as gear handbooks
 * have it (value from memory), here as 3/17 of the addendum below theory for every angle.
 *
 * @example 12 teeth, 20°: from 0.12 (theory 0.298) to about 0.6
 */
export function findShiftRange(
  spec: GearSpec,
): { readonly least: number; readonly greatest: number } | undefined {
  const { teeth, addendum, pressureAngle, helixAngle } = spec;
  const theory = findUndercutShift(teeth, addendum, pressureAngle, helixAngle);
  const least = Math.max(leastOfAll, theory - (3 / 17) * addendum);
  const hasLand = (shift: number): boolean => {
    const one = { ...spec, profileShift: shift, tipDiameter: null };
    const { tip, base } = findDiameters(one);
    return tip > base && toothThicknessAt(one, tip) >= pairLimits.tipLand.least * spec.module;
  };
  if (!hasLand(least)) return undefined;
  const greatest = hasLand(mostOfAll) ? mostOfAll : bisect(hasLand, least, mostOfAll).holding;
  return { least, greatest };
}

/** Beyond these a full-depth tooth is no longer one, and nobody cuts it. */
const leastOfAll = -0.6;
const mostOfAll = 1;
