import { nameReading } from '../../index.ts';
import type { Slot } from '../state/slot.ts';

const plainNames: Readonly<Record<string, string>> = {
  'looks-like': 'which looks like yours',
  happened: 'what happened to it',
  'split-gap': 'gap of the split',
  zero: "the caliper's zero",
  'd-flat': 'flat of the D',
  bore: 'bore',
  shaft: 'shaft',
  'face-width': 'tooth width (face width)',
  'hub-diameter': 'across the hub',
  'overall-length': 'overall length',
  'face-offset': 'from the back to the teeth',
};

/** What an act is called in a list or after "Undo:". */
export function nameAct(slot: Slot): string {
  return plainNames[slot.of] ?? nameReading(slot);
}
