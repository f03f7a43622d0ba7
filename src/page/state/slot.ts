import type { Wheel } from '../../index.ts';

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
  return slotKey(a) === slotKey(b);
}

/** A key that stays the same while the slot does: for drafts, lists and readings left out. */
export function slotKey({ of, teeth, pinMm, pitches, mate }: Slot): string {
  return [of, teeth, pinMm, pitches, mate].filter((part) => part !== undefined).join('~');
}

/** The slot of a reading, taken or proposed: of its fields, those that tell it from another of its kind. */
export function slotOf({
  of,
  teeth,
  pinMm,
  mate,
  pitches,
}: Omit<Slot, 'of'> & { readonly of?: string | undefined }): Slot {
  return {
    of: of ?? 'unknown',
    ...(teeth !== undefined && of === 'span' ? { teeth } : {}),
    ...(pinMm !== undefined ? { pinMm } : {}),
    // A count's pitches say how it was counted; a bar's say which reading it is.
    ...(pitches !== undefined && of === 'rack-pitch' ? { pitches } : {}),
    ...(mate !== undefined ? { mate } : {}),
  };
}

/** Index of the reading that fills the slot, −1 where none does. */
export function findReading(wheel: Wheel, slot: Slot): number {
  return (wheel.readings ?? []).findIndex((reading) => isSameSlot(slotOf(reading), slot));
}
