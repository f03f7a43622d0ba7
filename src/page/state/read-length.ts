import type { Wheel } from '../../index.ts';
import { findReading, type Slot } from './slot.ts';

/** The length read at a slot, mm: the middle of several takings; undefined where none was read. */
export function readLength(wheel: Wheel, slot: Slot): number | undefined {
  const at = findReading(wheel, slot);
  const reading = at < 0 ? undefined : wheel.readings?.[at];
  if (!reading) return undefined;
  if ('mm' in reading && reading.mm !== undefined) {
    return typeof reading.mm === 'number'
      ? reading.mm
      : reading.mm.reduce((sum, one) => sum + one, 0) / reading.mm.length;
  }
  if (reading.of === 'bore' && reading.goesMm !== undefined) {
    return reading.stopsMm === undefined ? reading.goesMm : (reading.goesMm + reading.stopsMm) / 2;
  }
  return undefined;
}
