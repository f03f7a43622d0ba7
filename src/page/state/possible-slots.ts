import type { Wheel } from '../../index.ts';
import type { Slot } from './slot.ts';

/** Readings whose expected value the sheet shows beside those that are proposed: what a drawing dimensions anyway. */
export function listPossibleSlots(wheel: Wheel): Slot[] {
  if (wheel.kind === 'rack') return [{ of: 'rack-pitch', pitches: 1 }, { of: 'tooth-depth' }];
  const taken = (wheel.readings ?? []).flatMap((reading): Slot[] => {
    if (reading.of === 'span' && reading.teeth !== undefined) return [{ of: 'span', teeth: reading.teeth }];
    if (reading.of === 'over-pins' && reading.pinMm !== undefined)
      return [{ of: 'over-pins', pinMm: reading.pinMm }];
    return [];
  });
  return [{ of: 'outside' }, { of: 'root' }, { of: 'tooth-depth' }, ...taken];
}
