import type { GearSpec } from '../involute/gear-spec.ts';
import type { RolledWheel } from '../rolling/rolled-wheel.ts';
import type { RollingProof } from '../rolling/rolling-proof.ts';
import type { PartBore } from './stock-part.ts';

/** What has to be filled: one wheel of a drive, as far as it is known. Lengths mm, angles rad. */
export interface Need extends NeedPlace {
  readonly wheelId: string;
  /** What the wheel was made to be */
  readonly spec: GearSpec;
  /** Whether that is sure enough to order by */
  readonly isSure: boolean;
  readonly mates: readonly NeedMate[];
  /** What the proof leaves out */
  readonly notes: readonly string[];
  /** What another count does to the speed; null where that can't be said */
  readonly speedWith: (teeth: number) => SpeedEffect | null;
}

/** What is known of the place a wheel has, beside its teeth. */
export interface NeedPlace {
  /** Diameter of the shaft it goes on; undefined where nobody measured it */
  readonly shaft: number | undefined;
  /** What the original's hole is like; undefined where nobody said */
  readonly bore: PartBore | undefined;
  /** Width of the original's teeth, and from face to face with its hub */
  readonly faceWidth: number | undefined;
  readonly overallLength: number | undefined;
  /** Whether it is one piece with another wheel */
  readonly isJoined: boolean;
}

export interface NeedMate {
  readonly id: string;
  readonly wheel: RolledWheel;
  /** Whether the mate turns the wheel */
  readonly isDriver: boolean;
  readonly centerDistance: number;
  /** Standard uncertainty of the distance */
  readonly uncertainty: number;
  /** False where the distance is what the two would have by their numbers */
  readonly isMeasured: boolean;
}

export interface SpeedEffect {
  /** Of the output, against the drive with the original: positive is faster */
  readonly changePercent: number;
  /** Of the ratio, against what is wanted: positive is slower; null where nothing is wanted */
  readonly errorPercent: number | null;
  readonly isWithin: boolean | null;
}

/** Rolls a pair at a distance, mm, with its standard uncertainty: `rollPair`. */
export type Roll = (
  driver: RolledWheel,
  driven: RolledWheel,
  at: { readonly mm: number; readonly u: number },
) => RollingProof;
