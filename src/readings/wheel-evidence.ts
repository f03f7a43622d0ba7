/**
 * What the bench says about one wheel: the input of identification. Field names and meaning are those of the job
 * file, so a parsed job fits without copying; mm, and degrees where the name says so.
 */
export interface WheelEvidence {
  readonly id: string;
  readonly kind: 'external' | 'internal' | 'rack';
  readonly state?: 'sound' | 'damaged' | 'lost' | undefined;
  readonly material?: string | undefined;
  readonly damage: readonly Damage[];
  readonly readings: readonly Reading[];
  readonly kit: Kit;
  readonly machine: Machine;
  /** Wheels that this one runs against and whose teeth are counted. */
  readonly mates: readonly Mate[];
}

export interface Mate {
  readonly id: string;
  readonly kind: 'external' | 'internal' | 'rack';
  readonly teeth: number;
}

export interface Machine {
  readonly made?: 'metric-land' | 'inch-land' | 'unknown' | undefined;
  readonly decade?: number | undefined;
}

export interface Kit {
  readonly caliper?: string | undefined;
  /** Instrument's own standard uncertainty. */
  readonly uMm?: number | undefined;
  /** What the closed jaws show; subtracted from every reading of this caliper. */
  readonly zeroMm?: number | undefined;
  readonly zeroUMm?: number | undefined;
  readonly jawTipMm?: number | undefined;
  readonly pinsMm?: readonly number[] | undefined;
}

export interface Damage {
  readonly kind: 'teeth-missing' | 'split' | 'worn' | 'crumbling' | 'swollen';
  readonly count?: number | undefined;
  readonly gapMm?: number | undefined;
  readonly where?: string | undefined;
}

export type Takings = number | readonly number[];

/** A reading of one length. */
export interface LengthReading {
  readonly of: LengthKind;
  readonly mm?: Takings | undefined;
  readonly uMm?: number | undefined;
  readonly jaws?: 'settled' | 'rocked' | 'true' | undefined;
  readonly taken?: 'open' | 'closed' | undefined;
  /** span: over how many teeth */
  readonly teeth?: number | undefined;
  readonly pinMm?: number | undefined;
  /** rack-pitch: over how many pitches */
  readonly pitches?: number | undefined;
  readonly mate?: string | undefined;
  readonly overPostsMm?: number | undefined;
  readonly betweenPostsMm?: number | undefined;
  readonly postsMm?: readonly number[] | undefined;
}

export type LengthKind =
  | 'outside'
  | 'root'
  | 'tooth-depth'
  | 'span'
  | 'over-pins'
  | 'center-distance'
  | 'rack-pitch'
  | 'bore'
  | 'shaft'
  | 'face-width'
  | 'hub-diameter'
  | 'overall-length'
  | 'face-offset';

export interface TeethReading {
  readonly of: 'teeth';
  readonly count?: number | undefined;
  /** How likely the count is right, where that is known: 0 to 1 */
  readonly chance?: number | undefined;
  readonly left?: number | undefined;
  /** How many teeth seem gone; each is a candidate. */
  readonly missing?: readonly number[] | undefined;
  readonly pitches?: number | undefined;
  readonly overDeg?: number | undefined;
  readonly uDeg?: number | undefined;
}

export interface AngleReading {
  readonly of: 'helix-angle';
  readonly deg: number;
  readonly uDeg?: number | undefined;
}

/** A trial gear of a known spec rolled by hand against the mate. */
export interface HandRollReading {
  readonly of: 'hand-roll';
  readonly with?: string | undefined;
  readonly spec: RolledSpec;
  readonly felt: 'smooth' | 'bumps' | 'jams';
}

export interface RolledSpec {
  readonly moduleMm?: number | undefined;
  readonly pressureAngleDeg?: number | undefined;
}

/** Stands where a reading says nothing yet, so that those behind it keep their index. */
export interface NoReading {
  readonly of: 'nothing';
}

export type Reading = LengthReading | TeethReading | AngleReading | HandRollReading | NoReading;
