import { mixedDistance, sharedPitch } from '../../gear-library/mesh-priors.ts';
import type { DistanceWay } from './distance-ways.ts';

/** A reference radius as far as it is known, mm. */
export interface Radius {
  readonly mean: number;
  readonly variance: number;
}

/**
 * The chance that two wheels have different labels, times the density of their distance then: near the sum of the
 * reference radii, since posts are set so that teeth reach each other. A radius of which nothing is known may be
 * anything up to the distance.
 *
 * @param signs how either radius opens the distance: 1 or −1, 0 for a rack
 * @param byWay where given, gets each way's part
 */
export function weighMixed(
  ways: readonly DistanceWay[],
  signs: readonly [number, number],
  own: Radius | undefined,
  other: Radius | undefined,
  byWay?: Float64Array,
): number {
  const chance = 1 - sharedPitch.chance;
  if (ways.length === 0) return chance;
  const known = own && other;
  const mean = known ? signs[0] * own.mean + signs[1] * other.mean : 0;
  const least = (own ?? other)?.mean ?? 0;
  let sum = 0;
  ways.forEach((way, index) => {
    let density = 0;
    if (known) {
      const variance = way.variance + (mixedDistance.spread * mean) ** 2 + own.variance + other.variance;
      const square = (way.value - mean) ** 2 / variance;
      density = square > 80 ? 0 : Math.exp(-0.5 * square) / Math.sqrt(2 * Math.PI * variance);
    } else if (way.value > least) density = 1 / (2 * way.value);
    const part = chance * Math.exp(way.log) * density;
    if (byWay) byWay[index] += part;
    sum += part;
  });
  return sum;
}
