/** By how much a pair is within what is asked for at a distance; below 0 where it is not. */
export type Margin = (distance: number) => number;

/**
 * The first distance from `from` on at which a margin is 0 or above; undefined where there is none before `isOver`.
 *
 * A sketch of the margin, which costs little and errs by about a two-hundredth of a step, is followed by steps and its
 * crossing closed in; the margin itself is asked around there only, and what comes out is a distance at which it was
 * found to hold. A stretch shorter than a step can be missed.
 *
 * @param step signed: the way that teeth draw apart
 */
export function seekDistance(
  exact: Margin,
  sketch: Margin,
  from: number,
  step: number,
  isOver: (distance: number) => boolean,
): number | undefined {
  if (exact(from) >= 0) return from;

  // 1. Where the sketch has it.
  let before = from;
  let there = from;
  while (sketch(there) < 0) {
    before = there;
    there += step;
    if (isOver(there)) return undefined;
  }
  const near = there === from ? from : closeIn(sketch, before, there, Math.abs(step) * 0.01);

  // 2. The exact margin on either side of that.
  let off = step * 0.04;
  let good = near + off;
  let bad: number | undefined;
  for (let round = 0; exact(good) < 0; round++) {
    bad = good;
    off *= 2;
    good += off;
    if (round > 5 || isOver(good)) return undefined;
  }
  if (bad === undefined) {
    off = step * 0.04;
    bad = near - off;
    while ((bad - from) * step > 0 && exact(bad) >= 0) {
      good = bad;
      off *= 2;
      bad -= off;
    }
    if ((bad - from) * step < 0) bad = from;
  }
  return closeIn(exact, bad, good, Math.abs(step) * 0.01);
}

/**
 * Where a margin passes 0 between a distance at which it fails and one at which it holds, to within `width`: by
 * straight lines, an end that stays counted half (the Illinois rule). The distance given back holds.
 */
function closeIn(marginOf: Margin, failing: number, holding: number, width: number): number {
  let bad = failing;
  let good = holding;
  let badMargin = marginOf(bad);
  let goodMargin = marginOf(good);
  for (let round = 0; round < 40 && Math.abs(good - bad) > width; round++) {
    // Where the margin is endless or drops at once, where a tip meets a root, halving is the surer way.
    const part = badMargin / (badMargin - goodMargin);
    const isSteady = round % 3 < 2 && part > 0 && part < 1;
    // A little past the crossing, so that the bracket closes from both sides.
    const middle = isSteady
      ? bad + Math.min(0.95, Math.max(0.05, part)) * (good - bad) + (Math.sign(good - bad) * width) / 3
      : (bad + good) / 2;
    const margin = marginOf(middle);
    if (margin >= 0) {
      good = middle;
      goodMargin = margin;
      badMargin /= 2;
    } else {
      bad = middle;
      badMargin = margin;
      goodMargin /= 2;
    }
  }
  return good;
}
