/** What a search says between its strides. */
export interface SearchProgress<Answer> {
  /** Entries listed and looked at so far, and pairs of them that came near */
  readonly visited: number;
  /** All trains that the question allows */
  readonly space: number;
  /** What `visited` will come to, roughly: known before the search starts */
  readonly work: number;
  /** Share of the space that is settled, from 0 to 1 */
  readonly searched: number;
  /** What there is so far */
  readonly best: () => Answer;
}

/** A part of a search: what it cost, and the share of the whole that is done with it. */
export interface Stride {
  readonly steps: number;
  readonly searched: number;
}
