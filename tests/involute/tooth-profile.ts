import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';

/**
 * A traced outline as a thing to feel against: how far a point lies outside the metal, along the arc about the
 * wheel's axis. Built from the outline's points alone, so nothing here knows an involute.
 */
export interface ToothProfile {
  readonly points: Float64Array;
  readonly perTooth: number;
  /** Arc, mm, from the flank to a point outside the metal; negative inside; Infinity beyond the tips. */
  readonly gapAt: (x: number, y: number) => number;
  readonly tip: number;
  readonly root: number;
}

export function readProfile(spec: GearSpec, chordError: number): ToothProfile {
  const { points, perTooth } = traceOutline(spec, chordError);
  const pitch = (2 * Math.PI) / spec.teeth;
  // The half tooth from its middle (tip) to the middle of the space (root): its angle at each radius.
  const count = perTooth / 2 + 1;
  const radius: number[] = [];
  const angle: number[] = [];
  for (let k = 0; k < count; k++) {
    // Points run from the middle of a space to the middle of tooth 0, which stands on +x.
    radius.push(Math.hypot(points[2 * k], points[2 * k + 1]));
    angle.push(Math.abs(Math.atan2(points[2 * k + 1], points[2 * k])));
  }
  const root = radius[0];
  const tip = radius[count - 1];
  const outward = tip > root ? 1 : -1;
  const gapAt = (x: number, y: number): number => {
    const r = Math.hypot(x, y);
    if (outward * (r - tip) >= 0) return Number.POSITIVE_INFINITY;
    if (outward * (r - root) <= 0) return Number.NEGATIVE_INFINITY;
    let low = 0;
    let high = count - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (outward * (radius[middle] - r) < 0) low = middle;
      else high = middle;
    }
    const t = (r - radius[low]) / (radius[high] - radius[low]);
    const half = angle[low] + t * (angle[high] - angle[low]);
    const from = Math.atan2(y, x);
    return r * (Math.abs(from - pitch * Math.round(from / pitch)) - half);
  };
  return { points, perTooth, gapAt, tip, root };
}

/** Two profiles on parallel axes: the first about (0, 0), the second about (distance, 0), both turned, rad. */
export interface Placing {
  readonly distance: number;
  readonly turn1: number;
  readonly turn2: number;
}

/** The least gap between two profiles, mm; negative is the depth of overlap. Points of each are felt on the other. */
export function findLeastGap(first: ToothProfile, second: ToothProfile, at: Placing): number {
  return Math.min(
    feel(first, second, at.distance, at.turn1, at.turn2),
    feel(second, first, -at.distance, at.turn2, at.turn1),
  );
}

function feel(
  felt: ToothProfile,
  probe: ToothProfile,
  distance: number,
  feltTurn: number,
  probeTurn: number,
): number {
  const cp = Math.cos(probeTurn);
  const sp = Math.sin(probeTurn);
  const cf = Math.cos(feltTurn);
  const sf = Math.sin(feltTurn);
  // Which points of the probe can be within the felt wheel's teeth at all.
  const reach = felt.tip > felt.root ? felt.tip : Number.POSITIVE_INFINITY;
  const within = felt.tip > felt.root ? 0 : felt.tip;
  let least = Number.POSITIVE_INFINITY;
  const { points } = probe;
  for (let k = 0; k < points.length; k += 2) {
    const x = points[k] * cp - points[k + 1] * sp + distance;
    const y = points[k] * sp + points[k + 1] * cp;
    const r = Math.hypot(x, y);
    if (r > reach || r < within) continue;
    const gap = felt.gapAt(x * cf + y * sf, y * cf - x * sf);
    if (gap < least) least = gap;
  }
  return least;
}

/**
 * How far the first wheel can be turned while the second stands, from where it stands free: the two turns at which
 * the outlines touch, rad.
 */
export function findPlay(first: ToothProfile, second: ToothProfile, at: Placing): readonly [number, number] {
  const one = keepNear(first, second, at.distance, at.turn1);
  const two = keepNear(second, first, -at.distance, at.turn2);
  const stop = (direction: number): number => {
    let low = 0;
    let high = 0.5 / first.tip;
    const isFree = (turn: number): boolean =>
      findLeastGap(one, two, { ...at, turn1: at.turn1 + direction * turn }) > 0;
    if (!isFree(0)) throw new Error('not free at the start');
    if (isFree(high)) throw new Error('play has no end');
    for (let round = 0; round < 22; round++) {
      const middle = (low + high) / 2;
      if (isFree(middle)) low = middle;
      else high = middle;
    }
    return direction * low;
  };
  return [stop(-1), stop(1)];
}

/** A profile with only those points that can meet the mate's teeth while it turns by a little. */
export function keepNear(
  profile: ToothProfile,
  mate: ToothProfile,
  mateAt: number,
  turn: number,
): ToothProfile {
  const { points } = profile;
  const kept: number[] = [];
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const low = Math.min(mate.tip, mate.root) - 0.6;
  const high = Math.max(mate.tip, mate.root) + 0.6;
  for (let k = 0; k < points.length; k += 2) {
    const x = points[k] * c - points[k + 1] * s;
    const y = points[k] * s + points[k + 1] * c;
    const r = Math.hypot(x - mateAt, y);
    if (r > low && r < high) kept.push(points[k], points[k + 1]);
  }
  return { ...profile, points: Float64Array.from(kept) };
}
