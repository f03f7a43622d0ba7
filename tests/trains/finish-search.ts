/** Runs a search to its end. */
export function finishSearch<Answer>(search: Generator<unknown, Answer, 'stop' | undefined>): Answer {
  let next = search.next();
  while (!next.done) next = search.next();
  return next.value;
}

export function listRange(from: number, to: number): number[] {
  return Array.from({ length: to - from + 1 }, (_, k) => from + k);
}
