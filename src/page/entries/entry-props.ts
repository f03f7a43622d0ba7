import type { Job, Wheel } from '../../index.ts';
import type { Slot } from '../state/slot.ts';

/** What every entry gets: the act, the gear, the text typed so far, and what to call when the reading is taken. */
export interface EntryProps {
  readonly job: Job;
  readonly wheel: Wheel;
  readonly slot: Slot;
  readonly unit: 'mm' | 'in';
  readonly text: string;
  readonly onType: (text: string) => void;
  readonly onUnit: (unit: 'mm' | 'in') => void;
  /** The reading as an edit of the job, with what it is called for undo */
  readonly onTake: (what: string, edit: (job: Job) => Job) => void;
}
