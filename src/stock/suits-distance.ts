import { pairLimits } from '../../gear-library/rework-limits.ts';
import { Fail } from '../fail.ts';
import { findContactRatio } from '../involute/contact-ratio.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { findPairClearances } from '../involute/pair-clearances.ts';
import type { NeedMate } from './need.ts';

/**
 * Whether a toothing is worth rolling against every mate at its distance: by their numbers, backlash, contact ratio and
 * tip clearance are within what the limits allow, somewhere in the distance's uncertainty. Only for one base pitch and
 * hand; all else is refused. Rolling decides; this only saves rolling what can't run.
 */
export function suitsDistance(spec: GearSpec, mates: readonly NeedMate[]): boolean {
  return mates.every((mate) => suitsMate(spec, mate));
}

/**
 * Whether teeth reach about as deep into the mate's as they should: how far the distance is from where unshifted teeth
 * would have it, in modules, less the shifts, is 0 where the teeth fill their spaces and 0.5 where a third of a tooth is
 * free. Cheap.
 */
export function isNearDistance(
  spec: GearSpec,
  { wheel, centerDistance, uncertainty }: NeedMate,
  within: number,
): boolean {
  const mate = wheel.spec;
  const m = spec.module;
  const side = mate.kind === 'internal' ? -1 : 1;
  const nominal =
    mate.kind === 'rack'
      ? (m * spec.teeth) / 2
      : Math.abs(mate.module * mate.teeth + side * m * spec.teeth) / 2;
  const mateShift = mate.kind === 'rack' ? 0 : side * mate.profileShift;
  const off = (side * (centerDistance - nominal)) / m - spec.profileShift - mateShift;
  return Math.abs(off) <= within + (2 * uncertainty) / m;
}

function suitsMate(spec: GearSpec, mate: NeedMate): boolean {
  if (!isNearDistance(spec, mate, widest)) return false;
  const { wheel, centerDistance, uncertainty } = mate;
  const m = spec.module;
  const { backlash, contactRatio, tipClearance } = pairLimits;
  for (const a of [centerDistance, centerDistance - 2 * uncertainty, centerDistance + 2 * uncertainty]) {
    try {
      const room = findPairClearances(spec, wheel.spec, a);
      const path = findContactRatio(spec, wheel.spec, { centerDistance: a });
      if (
        room.backlash >= backlash.least * m &&
        room.backlash <= backlash.greatest * m &&
        Math.min(...room.tip) >= tipClearance.least * m - 1e-9 &&
        path.transverse >= contactRatio.least
      ) {
        return true;
      }
    } catch (error) {
      if (!(error instanceof Fail)) return false;
    }
  }
  return false;
}

/** Modules: 1 is more than half a tooth's depth. */
const widest = 1;
