/**
 * A probability in words, as `19 in 20`. Above a half it is never put higher than it is; the words end at 999 in
 * 1000 and 1 in 1000, since no bench knows better.
 *
 * @example tellOdds(0.957) = '19 in 20'
 */
export function tellOdds(probability: number): string {
  if (probability < 0.001) return 'less than 1 in 1000';
  if (probability <= 0.5) {
    let nearest = steps[0];
    for (const step of steps) {
      const [part, of] = step;
      // Near on the scale of odds: 1 in 50 is as far from 1 in 20 as 1 in 20 is from 1 in 8.
      const distance = Math.abs(Math.log(part / of / probability));
      if (distance < Math.abs(Math.log(nearest[0] / nearest[1] / probability))) nearest = step;
    }
    return `${nearest[0]} in ${nearest[1]}`;
  }
  let reached: readonly [number, number] = [1, 2];
  for (const [part, of] of steps) {
    const value = (of - part) / of;
    if (value <= probability + 1e-9 && value > reached[0] / reached[1]) reached = [of - part, of];
  }
  return `${reached[0]} in ${reached[1]}`;
}

/** Chances up to a half; those above mirror them. */
const steps: readonly (readonly [number, number])[] = [
  [1, 1000],
  [1, 200],
  [1, 100],
  [1, 50],
  [1, 20],
  [1, 10],
  [2, 10],
  [3, 10],
  [4, 10],
  [1, 2],
];
