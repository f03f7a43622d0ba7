/**
 * Where a condition that holds at `from` ends on the way to `to` (either may be the larger), closed in until no number
 * lies between: the last value tried at which it holds and the first at which it fails. Neither end is tried.
 *
 * @example bisect((x) => x * x < 2, 0, 2): both √2 within a rounding
 */
export function bisect(
  holds: (value: number) => boolean,
  from: number,
  to: number,
): { readonly holding: number; readonly failing: number } {
  let holding = from;
  let failing = to;
  for (let round = 0; round < mostRounds; round++) {
    const middle = (holding + failing) / 2;
    if (middle === holding || middle === failing) break;
    if (holds(middle)) holding = middle;
    else failing = middle;
  }
  return { holding, failing };
}

// A range is 2^60 times narrower then; only a search toward zero could go on.
const mostRounds = 60;
