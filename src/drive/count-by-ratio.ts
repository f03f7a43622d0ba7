import { wantedSlip } from '../../gear-library/mesh-priors.ts';
import type { CountChance } from '../readings/weigh-counts.ts';

/** The ratio that a drive was made for, and how counts make it: input speed over output speed. */
export interface WantedCounts {
  readonly ratio: number;
  /** Relative, one standard deviation */
  readonly spread: number;
  /** 1 for a driven wheel, −1 for a driver; wheels that are both, idlers, are not in it */
  readonly exponents: ReadonlyMap<string, number>;
  /** What belts and worms make of it besides the counts */
  readonly factor: number;
}

/**
 * How well each count of one wheel agrees with the speed that was wanted, up to a constant; undefined where its count
 * doesn't change the speed, or another wheel on the way leaves too many counts open. The other wheels' counts stand
 * with their own chances, as if independent.
 */
export function weighByRatio(
  wanted: WantedCounts,
  wheelId: string,
  countsOf: (id: string) => readonly CountChance[],
): ((teeth: number) => number) | undefined {
  const exponent = wanted.exponents.get(wheelId);
  if (exponent === undefined || exponent === 0) return undefined;
  let rest: { log: number; weight: number }[] = [
    { log: Math.log(wanted.factor) - Math.log(wanted.ratio), weight: 1 },
  ];
  for (const [id, power] of wanted.exponents) {
    if (id === wheelId || power === 0) continue;
    const counts = countsOf(id);
    if (rest.length * counts.length > mostSums) return undefined;
    rest = rest.flatMap(({ log, weight }) =>
      counts.map((count) => ({ log: log + power * Math.log(count.teeth), weight: weight * count.weight })),
    );
  }
  return (teeth) => {
    let sum = wantedSlip.chance;
    for (const { log, weight } of rest) {
      const off = (log + exponent * Math.log(teeth)) / wanted.spread;
      sum += (1 - wantedSlip.chance) * weight * Math.exp(-0.5 * off * off);
    }
    return sum;
  };
}

/** Beyond that a wheel nobody counted stands beside this one, and the ratio settles neither. */
const mostSums = 2000;
