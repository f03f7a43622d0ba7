/** The products of so many tooth counts, handed out run by run, since more of them may exist than memory holds. */
export interface Products {
  readonly least: number;
  readonly greatest: number;
  /** Whether all lie in one list, so that a run costs nothing */
  readonly isListed: boolean;
  /** Whether every value is exact; else those beyond 2^53 are rounded, and one value may stand for several */
  readonly isExact: boolean;
  /** Share of all the ways to take the counts that is looked at: below 1 where even their parts are too many */
  readonly coverage: number;
  /** How many values lie in [from, to), some of them counted more than once */
  readonly count: (from: number, to: number) => number;
  readonly take: (from: number, to: number) => ProductRun;
  /** What a split costs, as so many pairs looked at */
  readonly splitSteps: number;
  /** The ways to take the counts that give a value, each ascending */
  readonly split: (value: number) => readonly (readonly number[])[];
}

/** Values ascending, each once, and what the counts behind a value come to at least. */
export interface ProductRun {
  readonly values: Float64Array;
  /** Fewest different counts */
  readonly leastDistinct: (place: number) => number;
  /** Least sum of those ways that have the fewest different counts */
  readonly leastTeeth: (place: number) => number;
}
