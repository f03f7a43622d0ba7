/** What a verb has to say: one JSON document, the same for people, and the exit code. */
export interface CommandOutput {
  readonly json: unknown;
  readonly lines: readonly string[];
  /** Worth a word beside the answer: goes to standard error. */
  readonly notes: readonly string[];
  /** 0: answered. 1: the job is readable, the answer is no. */
  readonly exitCode: 0 | 1;
}
