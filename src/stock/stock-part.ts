import type { PitchSystem } from '../../gear-library/pitch-series.ts';

/** One gear that exists: out of a person's own drawer, or as a range has it. Lengths mm, angles rad. */
export interface StockPart {
  /** `own:LINE`, or `RANGE:TEETH:BORE`, with `:fat` for the shifted one */
  readonly id: string;
  readonly from: 'own' | 'range';
  /** What the person calls it, or the range's name */
  readonly name: string;
  /** z */
  readonly teeth: number;
  /** What its size is, the likeliest first; more than one only where it was guessed from its outside */
  readonly sizes: readonly PartSize[];
  /** Whether the size was worked out from the outside diameter instead of read */
  readonly isGuess: boolean;
  /** Standard uncertainty of the module that was guessed, mm; 0 for one that was read */
  readonly moduleUncertainty: number;
  /** α_n, rad; where it was not said, 20° */
  readonly pressureAngle: number;
  readonly isAngleAssumed: boolean;
  /** x; 0 where nothing speaks for another */
  readonly profileShift: number;
  /** d_a as measured, where it was */
  readonly tipDiameter: number | null;
  readonly bore: PartBore | null;
  readonly faceWidth: number | null;
  readonly material: string;
  /** Where it is kept, or where to look for it */
  readonly kept: string;
  /** As written */
  readonly price: string;
  /** How many there are; of a range, how many come in a bag */
  readonly count: number | null;
  readonly notes: string;
}

export interface PartSize {
  readonly system: PitchSystem | 'free';
  /** mm for a module, teeth an inch for a diametral pitch, inches for a circular pitch */
  readonly size: number;
  /** m_n, mm */
  readonly module: number;
}

export interface PartBore {
  readonly shape: 'round' | 'd' | 'hex' | 'square' | 'none';
  /** Diameter, or across the flats; 0 for none */
  readonly diameter: number;
}
