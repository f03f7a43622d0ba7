import type { Compensation, CompensationUncertainty } from '../making/compensation.ts';
import type { JudgedDimension, MadeVerdict } from '../making/judge-made.ts';
import type { RollingProof } from '../rolling/rolling-proof.ts';
import type { fieldsOfSpec } from './spec-fields.ts';

/** What `check --json` prints: whether a made part fits, what is off by how much, and what to draw next time. mm. */
export interface MadeReport {
  readonly wheel: string;
  readonly process: string;
  readonly verdict: MadeVerdict;
  readonly chance: number;
  readonly dimensions: readonly {
    readonly of: JudgedDimension['of'];
    readonly meantMm: number;
    readonly madeMm: number;
    /** Made less meant: on the diameter, of a tooth both flanks together */
    readonly errorMm: number;
    readonly uMm: number;
    readonly isRead: boolean;
    readonly verdict: JudgedDimension['verdict'];
    readonly chance: number;
    readonly heldAgainst: JudgedDimension['heldAgainst'];
  }[];
  /** Of the takings that differ most; null where no length was taken twice */
  readonly outOfRound: {
    readonly reading: number;
    readonly of: string;
    readonly rangeMm: number;
    readonly mm: number;
    readonly uMm: number;
  } | null;
  readonly unread: readonly ('span' | 'outside' | 'bore')[];
  readonly residuals: readonly {
    readonly reading: number;
    readonly of: string;
    readonly readMm: number;
    readonly expectedMm: number;
    readonly sigmas: number;
    /** So far from what all say together that it wants measuring again */
    readonly isSuspect: boolean;
    /** So far that it was not used */
    readonly isLeftOut: boolean;
  }[];
  /** The toothing as measured */
  readonly spec: ReturnType<typeof fieldsOfSpec>;
  /** This part as measured, rolled against its mate; null where `proofMissing` says why */
  readonly proof: {
    readonly mate: string;
    readonly centerMm: number;
    /** Of the distance, with what isn't known of the tooth's thickness in it */
    readonly uMm: number;
    readonly verdict: RollingProof['verdict'];
    readonly contactRatio: number;
    /** Null where the teeth don't reach each other */
    readonly backlashMinMm: number | null;
    readonly backlashMaxMm: number | null;
    readonly transmissionErrorMm: number | null;
    /** The first distance from the measured one on at which it is free; null where there is none */
    readonly freeFromMm: number | null;
    readonly reasons: RollingProof['reasons'];
  } | null;
  readonly proofMissing: string | null;
  /** What to take back in the next drawing: what was taken back, corrected by what this one part tells of the machine */
  readonly next: { readonly compensation: Compensation; readonly uncertainty: CompensationUncertainty };
}
