import type { Wheel } from '../../index.ts';
import type { JobReading } from './edit-job.ts';

/**
 * One act that the page can ask for: a reading by what it is of (and over how many teeth, with which pin, to which
 * gear), or one of the questions before the first reading.
 */
export interface Slot {
  /** A reading's `of`; or looks-like, happened, split-gap, zero, d-flat */
  readonly of: string;
  readonly teeth?: number | undefined;
  readonly pinMm?: number | undefined;
  readonly pitches?: number | undefined;
  readonly mate?: string | undefined;
}

/** Two slots ask for the same reading. */
export function isSameSlot(a: Slot, b: Slot): boolean {
  return a.of === b.of && a.teeth === b.teeth && a.pinMm === b.pinMm && a.mate === b.mate;
}

/** A key that stays the same while the slot does: for drafts, lists and addresses. */
export function slotKey(slot: Slot): string {
  return [slot.of, slot.teeth, slot.pinMm, slot.mate].filter((part) => part !== undefined).join('~');
}

/** The slot that a taken reading fills. */
export function slotOf(reading: JobReading): Slot {
  const { of, teeth, pinMm, mate, pitches } = reading as Slot;
  return {
    of: of ?? 'unknown',
    ...(of === 'span' && teeth !== undefined ? { teeth } : {}),
    ...(pinMm !== undefined ? { pinMm } : {}),
    ...(mate !== undefined ? { mate } : {}),
    ...(pitches !== undefined && of === 'rack-pitch' ? { pitches } : {}),
  };
}

/** Index of the reading that fills the slot, −1 where none does. */
export function findReading(wheel: Wheel, slot: Slot): number {
  return (wheel.readings ?? []).findIndex((reading) => isSameSlot(slotOf(reading), slot));
}
