import type {
  CompensationFile,
  CouponFiles,
  DesignDrawing,
  DriveReport,
  drawPair,
  FoundCompensation,
  HandedOver,
  Job,
  MadeReport,
  Notice,
  PairDrawing,
  PartsFile,
  PlainFail,
  RepairRecord,
  ShapedPart,
  SheetPage,
  SubstituteProgress,
  SubstitutesReport,
  TrainDrawing,
  Wheel,
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
  /** The part as whoever makes it is given it, with its files, and how it differs from the old one. */
  readonly design: {
    readonly ask: MakingAsk;
    readonly answer: {
      readonly handed: Omit<HandedOver, 'forms'>;
      readonly drawing: DesignDrawing;
      /** What the job keeps of it, once it was made */
      readonly meant: MeantSpec;
    };
  };
  /** Everything that a maker is given as one zip. */
  readonly folder: {
    readonly ask: MakingAsk & { readonly paper: 'a4' | 'letter' };
    readonly answer: { readonly name: string; readonly bytes: Uint8Array };
    readonly progress: { readonly done: number; readonly of: number; readonly doing: string };
  };
  /** The making sheet: its pages to look at, and the file to print. */
  readonly sheet: {
    readonly ask: MakingAsk & { readonly paper: 'a4' | 'letter' };
    readonly answer: {
      readonly pages: readonly SheetPage[];
      readonly name: string;
      readonly bytes: Uint8Array;
    };
  };
  /** The small part to measure a machine by, as files. */
  readonly coupon: { readonly ask: { readonly process: string }; readonly answer: CouponFiles };
  /** What a machine's readings say of it. */
  readonly compensation: {
    readonly ask: { readonly file: CompensationFile };
    readonly answer: FoundCompensation;
  };
  /** A measured machine from a file's bytes. */
  readonly machine: {
    readonly ask: { readonly bytes: Uint8Array };
    readonly answer: CompensationFile;
  };
  /** Whether the part that was made fits. */
  readonly made: {
    readonly ask: { readonly job: Job; readonly wheelId: string };
    readonly answer: MadeReport;
  };
  /** One page on a repair. */
  readonly record: {
    readonly ask: { readonly job: Job; readonly wheelId: string; readonly date: string };
    readonly answer: RepairRecord;
  };
  /** The shape of one wheel's part, to look at: as `shapePart` gives it, without the mesh that files are made from. */
  readonly solid: {
    readonly ask: {
      readonly job: Job;
      readonly wheelId: string;
      readonly process?: string | undefined;
      readonly material?: string | undefined;
      readonly isLasting?: boolean | undefined;
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

/** A part, who makes it, and how. */
export interface MakingAsk {
  readonly job: Job;
  readonly wheelId: string;
  /** A key of the makers */
  readonly maker: string;
  readonly process?: string | undefined;
  readonly material?: string | undefined;
  /** What the machine adds, to be taken back; nothing is where left out */
  readonly machine?: CompensationFile | undefined;
  /** What is known of the gear already, so that it isn't worked out again */
  readonly answer?: WheelReport | undefined;
}

export type MeantSpec = NonNullable<NonNullable<Wheel['made']>['spec']>;

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
