import type {
  DriveReport,
  drawPair,
  Job,
  MadePart,
  Notice,
  PairDrawing,
  PartsFile,
  PlainFail,
  ShapedPart,
  SubstituteProgress,
  SubstitutesReport,
  TrainDrawing,
  WheelDrawing,
  WheelReport,
} from '../../index.ts';
import type { Slot } from '../state/slot.ts';

/** What the page asks its worker, and what comes back, by name. Everything crosses as plain data or typed arrays. */
export interface Asks {
  /** What one wheel is, its outlines, and what each rival would show at the readings still to come. */
  readonly identify: {
    readonly ask: { readonly job: Job; readonly wheelId: string; readonly slots: readonly Slot[] };
    readonly answer: {
      readonly report: WheelReport;
      readonly drawing: WheelDrawing;
      /** The readings that `drawing.expected` is about, best first: what to take next, then `slots` */
      readonly asked: readonly Slot[];
    };
  };
  /** The part files of one wheel. */
  readonly make: {
    readonly ask: {
      readonly job: Job;
      readonly wheelId: string;
      readonly process?: string;
      /** What is known of the gear already, so that it isn't worked out again */
      readonly answer?: WheelReport | undefined;
      readonly formats: readonly string[];
    };
    readonly answer: MadePart;
  };
  /** The shape of one wheel's part, to look at: as `shapePart` gives it, without the mesh that files are made from. */
  readonly solid: {
    readonly ask: {
      readonly job: Job;
      readonly wheelId: string;
      readonly process?: string | undefined;
      /** What the page has been told of this wheel in this job, where it has: else it is worked out again */
      readonly answer?: WheelReport | undefined;
    };
    readonly answer: Omit<ShapedPart, 'mesh'>;
  };
  /** Gears of several counts at one size across the tips, to lay the broken one on. */
  readonly lay: {
    readonly ask: { readonly tipDiameterMm: number; readonly counts: readonly number[] };
    readonly answer: readonly { readonly teeth: number; readonly outline: Float64Array }[];
  };
  /** What the whole train does, and how it looks from above. */
  readonly train: {
    readonly ask: { readonly job: Job };
    readonly answer: { readonly report: DriveReport; readonly drawing: TrainDrawing };
  };
  /** What fits a gear, or every gear that is damaged or lost. */
  readonly fits: {
    readonly ask: {
      readonly job: Job;
      /** Without one: every gear that is damaged or lost, and trains that keep the ratio */
      readonly wheelId?: string | undefined;
      /** Gears that such trains may change */
      readonly change?: readonly string[] | undefined;
      /** Files of the person's own parts */
      readonly parts: readonly Uint8Array[];
    };
    readonly answer: SubstitutesReport;
    readonly progress: SubstituteProgress;
  };
  /** A pair rolled and drawn where it is tightest; with `spec`, as if the wheel were another one. */
  readonly pair: {
    readonly ask: Parameters<typeof drawPair>[1] & { readonly job: Job };
    readonly answer: PairDrawing | undefined;
  };
  /** What could be read of a file of the person's own parts, and what could not. */
  readonly parts: {
    readonly ask: { readonly bytes: Uint8Array };
    readonly answer: Pick<PartsFile, 'badRows' | 'notices'> & { readonly count: number };
  };
  /** A job from a file's bytes. */
  readonly open: {
    readonly ask: { readonly bytes: Uint8Array };
    readonly answer: { readonly job: Job; readonly notices: readonly Notice[] };
  };
}

export type AskName = keyof Asks;

/** What a question tells of its work before it is answered. */
export type Progress<Name extends AskName> = Name extends AskName
  ? Asks[Name] extends { readonly progress: infer Told }
    ? Told
    : never
  : never;

export interface WorkerRequest {
  readonly id: number;
  readonly name: AskName;
  readonly ask: Asks[AskName]['ask'];
}

/** The request of this number is to end with the best so far, where it can. */
export interface WorkerStop {
  readonly stop: number;
}

export type WorkerReply =
  | { readonly id: number; readonly answer: Asks[AskName]['answer'] }
  /** Told while it is at work; the answer is still to come */
  | { readonly id: number; readonly progress: Progress<AskName> }
  | { readonly id: number; readonly fail: PlainFail }
  /** A programmer's mistake, with its message */
  | { readonly id: number; readonly broken: string };
