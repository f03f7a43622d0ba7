import type { RollingProof } from '../rolling/rolling-proof.ts';

/** A ratio of whole numbers where every count is known exactly; a slipping or measured belt gives `value` alone. */
export interface Ratio {
  readonly num: number | null;
  readonly den: number | null;
  readonly value: number;
}

/** What a job's drive does, and every mesh of it checked. Written as `drive --json` prints it: mm, degrees, rpm. */
export interface DriveReport {
  /** Input speed over output speed, positive; null where it can't be said */
  readonly ratio: Ratio | null;
  readonly direction: 'same' | 'opposite' | null;
  readonly from: string | null;
  readonly to: string | null;
  /** Where the output is a rack: how far it moves for one turn of the input */
  readonly travelMmPerTurn: number | null;
  readonly shafts: readonly ShaftReport[];
  readonly racks: readonly RackReport[];
  readonly wheels: readonly DrivenWheelReport[];
  /** Seen from above, mm: where the distances put them, and where nothing says in which direction */
  readonly posts: readonly {
    readonly id: string;
    readonly x: number;
    readonly y: number;
    readonly isGuessed: boolean;
  }[];
  readonly wanted: WantedReport | null;
  readonly meshes: readonly MeshReport[];
  /** What keeps the drive from being worked out, or can't all be true; empty where all is well */
  readonly troubles: readonly DriveTrouble[];
  readonly notes: readonly string[];
}

export interface ShaftReport {
  readonly id: string;
  /** Signed: positive turns with the input. Null where the input's speed is unknown or no mesh reaches it */
  readonly rpm: number | null;
  /** Turns of this shaft for one turn of the input, signed: negative turns against it */
  readonly turns: Ratio | null;
  /** False behind axes that cross, where the sign can't be told and rpm and turns are given without */
  readonly isDirectionKnown: boolean;
  /** With the motor at standstill, no loss reckoned */
  readonly torqueNmm: number | null;
  /** With the motor at its speed, where its torque there is given */
  readonly runningTorqueNmm: number | null;
  /** Of a rack that this shaft drives: how far it moves for one turn of this shaft */
  readonly travelMmPerTurn?: number;
}

export interface RackReport {
  readonly id: string;
  /** For one turn of the input; null where that isn't known */
  readonly travelMmPerTurn: number | null;
  readonly mmPerMinute: number | null;
}

/** What is known of a wheel, and from where. */
export interface DrivenWheelReport {
  readonly id: string;
  readonly shaft: string;
  /** Which of the posts it turns on; null for a rack */
  readonly post: string | null;
  readonly teeth: number | null;
  readonly knownFrom: 'spec' | 'identified' | 'counted' | 'nothing';
}

export interface WantedReport {
  /** Positive: the output is slower than wanted */
  readonly errorPercent: number;
  readonly tolerancePercent: number;
  readonly within: boolean;
  readonly directionHolds: boolean | null;
  /** The error in the person's own terms */
  readonly effects: readonly {
    readonly kind: 'seconds-an-hour' | 'travel-mm' | 'cents';
    readonly value: number;
    readonly words: string;
  }[];
}

export interface MeshReport {
  readonly kind: 'teeth' | 'worm' | 'belt';
  readonly driver: string;
  readonly driven: string;
  readonly centerMm: number | null;
  readonly workingPressureAngleDeg: number | null;
  readonly contactRatio: number | null;
  /** Null for what isn't rolled: belts, worms, and wheels that are not known well enough */
  readonly verdict: RollingProof['verdict'] | null;
  readonly backlashMinMm: number | null;
  readonly backlashMaxMm: number | null;
  readonly transmissionErrorMm: number | null;
  /** The distance's standard uncertainty */
  readonly centerUMm: number | null;
  /** From the distance less twice its uncertainty to as much more; the figures above are those at the distance */
  readonly range: DistanceRange | null;
  /** From this distance on it turns at all, and smoothly; null where there is none or it wasn't rolled */
  readonly freeFromMm: number | null;
  readonly smoothFromMm: number | null;
  readonly notes: readonly string[];
}

/** What comes of not knowing the distance better; null where no tooth holds the wheel. */
export interface DistanceRange {
  readonly centerLeastMm: number;
  readonly centerGreatestMm: number;
  readonly backlashMinMm: number | null;
  readonly backlashMaxMm: number | null;
  readonly transmissionErrorMm: number | null;
}

export interface DriveTrouble {
  readonly kind:
    | 'contradiction'
    | 'not-reached'
    | 'cannot-mesh'
    | 'unknown-teeth'
    | 'no-input'
    | 'no-output'
    /** Everything is counted, and still it may turn as it likes */
    | 'undetermined';
  /** Ids of the wheels and shafts it is about */
  readonly about: readonly string[];
  readonly message: string;
  readonly remedy: string;
  /** Of one wheel that nobody has counted: the count that would give the wanted ratio, as it comes out */
  readonly needed?: { readonly wheel: string; readonly teeth: number };
}
