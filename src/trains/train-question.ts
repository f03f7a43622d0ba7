import type { Fraction } from './fraction.ts';
import type { Ranked } from './keep-best.ts';

/** What is asked of a search for trains of tooth counts alone. */
export interface TrainQuestion {
  /** Input speed over output speed: driven over drivers */
  readonly wanted: Fraction;
  /** Meshing pairs, from 1 to 8 */
  readonly pairs: number;
  /** Tooth counts that a wheel may have, ascending, each once; any may be used more than once */
  readonly counts: readonly number[];
  /** How many trains to find */
  readonly top: number;
  /** Farthest that |found/wanted - 1| may be */
  readonly tolerance?: number;
  /** All pairs on the same two axes at one module: driver and driven teeth add up to the same in each */
  readonly isReverted?: boolean;
  /** No pair shares a factor. There must be some way to pair drivers and driven like that, and it is the one listed */
  readonly isHunting?: boolean;
  /** Lets a count stand on both sides; else it cancels, and the train belongs to the searches with fewer pairs */
  readonly allowsIdlers?: boolean;
}

/** What ranks a train in this search; `mates` are the driven in the order of the drivers. */
export interface Candidate extends Ranked {
  readonly mates: readonly number[];
}
