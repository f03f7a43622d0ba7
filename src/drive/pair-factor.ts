import { distancePlay } from '../../gear-library/tooth-variation.ts';
import { inverseInvolute, involute } from '../involute/involute-function.ts';
import type { WheelEvidence } from '../readings/wheel-evidence.ts';
import type { DistanceWay } from './distance-ways.ts';
import type { PitchLabel } from './pitch-labels.ts';

type Kind = WheelEvidence['kind'];

/** What a pair's distance says of its shifts, one entry a way: ±x_a ± x_b lies at `value`, give or take. */
export interface ShiftTarget {
  readonly way: number;
  /** log of the way's chance and of the density of distance by shift */
  readonly log: number;
  readonly value: number;
  readonly variance: number;
  /** The part of the variance that is the reading's own */
  readonly noise: number;
  /** mm that the distance changes by for a module of shift */
  readonly slope: number;
}

/** How the shifts of two kinds of wheel open their distance: 1 or −1, and 0 for a rack; undefined: no such pair. */
export function findSigns(a: Kind, b: Kind): readonly [number, number] | undefined {
  if (a === 'rack' || b === 'rack') {
    if (a === b || a === 'internal' || b === 'internal') return undefined;
    return a === 'rack' ? [0, 1] : [1, 0];
  }
  if (a === 'internal' && b === 'internal') return undefined;
  return [b === 'internal' ? -1 : 1, a === 'internal' ? -1 : 1];
}

/** The slant that a pair shares: β and its standard deviation, rad. */
export interface PairHelix {
  readonly angle: number;
  readonly spread: number;
}

/**
 * The shifts that a distance asks for, with one label and two counts: a cos α_w = a_0 cos α_t and inv α_w = inv α_t +
 * 2 Σx tan α_n/Σz (ISO 21771), solved for Σx, with the play that distances are opened by taken off. A slip far from
 * all that shifts can do (beyond ±`reach`) is passed over; plain wrong distances are taken as linear.
 *
 * @param teeth of both wheels; of a rack anything
 */
export function listShiftTargets(
  ways: readonly DistanceWay[],
  label: PitchLabel,
  kinds: readonly [Kind, Kind],
  teeth: readonly [number, number],
  helix: PairHelix,
): ShiftTarget[] {
  const signs = findSigns(...kinds);
  if (!signs) return [];
  const m = label.module;
  const isRack = kinds.includes('rack');
  const isInternal = kinds.includes('internal');
  const sum = isRack
    ? teeth[kinds[0] === 'rack' ? 1 : 0]
    : Math.abs(signs[0] * teeth[0] + signs[1] * teeth[1]);
  if (!isRack && signs[0] * teeth[0] + signs[1] * teeth[1] <= 0) return [];
  const nominal = sum / (2 * Math.cos(helix.angle));
  const play = (isInternal ? -1 : 1) * distancePlay.mean;
  const slant = nominal * Math.tan(helix.angle) * helix.spread;
  const loose = distancePlay.spread ** 2 + slant ** 2;
  const targets: ShiftTarget[] = [];
  ways.forEach((way, index) => {
    const read = way.value / m - play;
    const apart = read - nominal;
    const variance = way.variance / (m * m) + loose;
    const isWide = way.variance > (widest * m) ** 2;
    if (isWide || isRack) {
      if (Math.abs(apart) > reach + 5 * Math.sqrt(variance)) return;
      targets.push({
        way: index,
        log: way.log - Math.log(m),
        value: apart,
        variance,
        noise: way.variance / (m * m),
        slope: m,
      });
      return;
    }
    if (Math.abs(apart) > reach) return;
    const transverse = Math.atan(Math.tan(label.pressureAngle) / Math.cos(helix.angle));
    const cosine = (nominal * Math.cos(transverse)) / read;
    if (cosine >= 0.9999) return;
    const working = Math.acos(cosine);
    const factor = sum / (2 * Math.tan(label.pressureAngle));
    const slope = (nominal * Math.cos(transverse)) / Math.sin(working) / factor;
    targets.push({
      way: index,
      log: way.log - Math.log(slope * m),
      value: (involute(working) - involute(transverse)) * factor,
      variance: variance / slope ** 2,
      noise: way.variance / (slope * m) ** 2,
      slope: slope * m,
    });
  });
  return targets;
}

/** Whether a distance lies within what shifts can do from the standard one of two counts. */
export function isNearStandard(
  way: DistanceWay,
  label: PitchLabel,
  kinds: readonly [Kind, Kind],
  teeth: readonly [number, number],
  helix: PairHelix,
): boolean {
  const signs = findSigns(...kinds);
  if (!signs) return true;
  const sum = signs[0] * teeth[0] + signs[1] * teeth[1];
  return Math.abs(way.value / label.module - sum / (2 * Math.cos(helix.angle))) <= reach + 0.1;
}

/** The distance of a pair with that sum of shifts and the usual play, mm; undefined where flanks can't meet. */
export function expectDistance(
  label: PitchLabel,
  kinds: readonly [Kind, Kind],
  teeth: readonly [number, number],
  shifts: number,
  helix: PairHelix,
): number | undefined {
  const signs = findSigns(...kinds);
  if (!signs) return undefined;
  if (kinds.includes('rack')) {
    const z = teeth[kinds[0] === 'rack' ? 1 : 0];
    return label.module * (z / (2 * Math.cos(helix.angle)) + shifts + distancePlay.mean);
  }
  const sum = signs[0] * teeth[0] + signs[1] * teeth[1];
  if (sum <= 0) return undefined;
  const nominal = sum / (2 * Math.cos(helix.angle));
  const transverse = Math.atan(Math.tan(label.pressureAngle) / Math.cos(helix.angle));
  const inv = involute(transverse) + (2 * shifts * Math.tan(label.pressureAngle)) / sum;
  if (!(inv > 1e-6)) return undefined;
  const play = (kinds.includes('internal') ? -1 : 1) * distancePlay.mean;
  return label.module * ((nominal * Math.cos(transverse)) / Math.cos(inverseInvolute(inv)) + play);
}

/** Modules: no two shifts of small machines sum to more. */
const reach = 2.2;
/** Modules: a distance known no better than that is no longer bent by what it is solved for. */
const widest = 0.4;
