import type { Job, PlainFail, WheelDrawing, WheelReport } from '../../index.ts';
import type { Place } from '../address.ts';
import type { Drafts, KeepCondition, KeptMachine, KeptParts, KeptSummary } from '../keep/keeper.ts';
import type { OpenJob } from './open-job.ts';
import type { Slot } from './slot.ts';

/** What the worker said of one gear, and of which job it said so. */
export interface GearAnswer {
  readonly job: Job;
  readonly report: WheelReport;
  readonly drawing: WheelDrawing;
  readonly asked: readonly Slot[];
  /** The answer before this one, for saying what changed */
  readonly before?: WheelReport | undefined;
}

export interface Settings {
  readonly unit: 'mm' | 'in';
  readonly light: 'auto' | 'light' | 'dark';
  /** The slip stands left of the sheet, for the other hand */
  readonly mirrored: boolean;
  readonly paper: 'a4' | 'letter';
  /** CSS pixels that a millimeter takes on this screen, measured with a bank card */
  readonly pixelsPerMm?: number | undefined;
  readonly hasSeenCard: boolean;
}

export const usualSettings: Settings = {
  unit: 'mm',
  light: 'auto',
  mirrored: false,
  paper: 'a4',
  hasSeenCard: false,
};

/** A failure that the person can mend, or a mistake in the page itself (`broken`). */
export type Trouble = Omit<PlainFail, 'code'> & { readonly code: PlainFail['code'] | 'broken' };

/** Everything the page is drawn from. Only what the person typed or chose is stored; answers follow from it. */
export interface PageState {
  readonly place: Place;
  readonly open: OpenJob | undefined;
  /** The open job is the invented example as it came: a change makes a copy of it first */
  readonly isExample: boolean;
  readonly jobs: readonly KeptSummary[];
  readonly keeping: KeepCondition;
  readonly answers: Readonly<Record<string, GearAnswer>>;
  /** Gears whose answer is being worked out */
  readonly working: ReadonlySet<string>;
  /** The act that was opened by touch, where it isn't the one the page proposes */
  readonly act: Slot | undefined;
  readonly drafts: Drafts;
  readonly settings: Settings;
  /** Files of the person's own parts, which no job holds */
  readonly parts: readonly KeptParts[];
  /** Machines that the person measured, which no job holds */
  readonly machines: readonly KeptMachine[];
  /** What could not be done, until the next action */
  readonly trouble: Trouble | undefined;
  /** What the page did by itself, said once and kept until dismissed */
  readonly said: string | undefined;
  /** A panel over the sheet: kit, the other jobs, laying a gear on the drawing */
  readonly over: 'kit' | 'jobs' | 'lay' | 'before' | 'names' | 'parts' | undefined;
  /** The person did something: what comes next takes the focus. Never on loading a page. */
  readonly hasActed: boolean;
  /** What the next print shows */
  readonly printed: 'sheet' | 'blank';
}
