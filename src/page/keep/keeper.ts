import type { CompensationFile } from '../../index.ts';
import type { OpenJob } from '../state/open-job.ts';

/**
 * Whether this browser keeps the work: kept; refused (no storage at all); full; newer (what is kept was written by a
 * newer page and is left as it is).
 */
export type KeepCondition = 'kept' | 'refused' | 'full' | 'newer';

export interface KeptSummary {
  readonly id: string;
  readonly title: string;
  /** Milliseconds since 1970 */
  readonly changed: number;
  readonly gears: number;
  /** Written by a newer page: listed, but neither opened, written over nor removed by this one */
  readonly isNewer?: true | undefined;
}

/** What came of a save. `elsewhere`: another window saved a newer revision first; nothing was overwritten. */
export type SaveOutcome =
  | { readonly outcome: 'saved'; readonly revision: number }
  | { readonly outcome: 'elsewhere'; readonly theirs: OpenJob }
  | { readonly outcome: 'not-kept'; readonly condition: Exclude<KeepCondition, 'kept'> };

/** A machine as it was measured with one material, and how it stood before each change. */
export interface KeptMachine {
  /** What the person calls it; jobs name it so */
  readonly name: string;
  readonly file: CompensationFile;
  readonly past: readonly CompensationFile[];
}

/** A file of the person's own parts, byte for byte. */
export interface KeptParts {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What was typed into a field and not taken yet, by slot key. */
export type Drafts = Readonly<Record<string, string>>;

/** Keeps jobs, their undo history and half-typed fields on this machine. Methods never reject: they say what came. */
export interface Keeper {
  readonly condition: () => KeepCondition;
  readonly list: () => Promise<readonly KeptSummary[]>;
  /** Undefined where there is no such job, or a newer page wrote it: `condition` is `newer` then */
  readonly load: (id: string) => Promise<OpenJob | undefined>;
  readonly save: (open: OpenJob) => Promise<SaveOutcome>;
  readonly remove: (id: string) => Promise<void>;
  readonly keepDrafts: (jobId: string, drafts: Drafts) => Promise<void>;
  readonly loadDrafts: (jobId: string) => Promise<Drafts>;
  /** The job last open here */
  readonly lastOpen: () => Promise<string | undefined>;
  readonly keepLastOpen: (id: string) => Promise<void>;
  /** Small settings of this machine: screen scale, mirrored, unit, theme */
  readonly loadSettings: () => Promise<Readonly<Record<string, unknown>>>;
  readonly keepSettings: (settings: Readonly<Record<string, unknown>>) => Promise<void>;
  /** The person's own parts: files as they were given */
  readonly loadParts: () => Promise<readonly KeptParts[]>;
  /** False where they could not be kept; then they last as long as the window */
  readonly keepParts: (parts: readonly KeptParts[]) => Promise<boolean>;
  /** Machines that the person measured */
  readonly loadMachines: () => Promise<readonly KeptMachine[]>;
  /** False where they could not be kept; then they last as long as the window */
  readonly keepMachines: (machines: readonly KeptMachine[]) => Promise<boolean>;
  /** Calls back when another window saved or removed a job; returns what stops it */
  readonly onSavedElsewhere: (listener: (id: string) => void) => () => void;
}
