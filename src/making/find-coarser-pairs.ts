import { pitchSizes } from '../../gear-library/pitch-series.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { involute } from '../involute/involute-function.ts';
import type { DesignMate } from './part-design.ts';
import { rollWithMate } from './roll-with-mates.ts';

/** Two wheels of a coarser module for the same shafts. */
export interface CoarserPair {
  readonly mate: string;
  readonly moduleMm: number;
  readonly teeth: number;
  readonly mateTeeth: number;
  /** Of each wheel: what takes up the rest of the distance */
  readonly profileShift: number;
  /** Mate's teeth over the part's, against what they were; positive: larger */
  readonly ratioErrorPercent: number;
}

/**
 * Pairs of straight wheels, both external, of a listed module at least so coarse, that run at the same distance, each
 * proven by rolling: the nearest ratio first, then the finest module. Every count whose sum fits the distance within
 * the shifts allowed is tried. Empty where there is none, and for internal wheels and racks.
 *
 * The shift of each is half of (z1 + z2)(inv α_w − inv α)/(2 tan α), cos α_w = m (z1 + z2) cos α/(2 a) (ISO 21771).
 */
export function findCoarserPairs(
  spec: GearSpec,
  mate: DesignMate,
  distance: number,
  leastModule: number,
): CoarserPair[] {
  if (spec.kind !== 'external' || mate.wheel.spec.kind !== 'external') return [];
  const ratio = mate.wheel.spec.teeth / spec.teeth;
  const found: CoarserPair[] = [];
  for (const { system, module } of pitchSizes) {
    if (system !== 'module' || module < leastModule - 1e-9) continue;
    for (const total of [Math.floor((2 * distance) / module), Math.ceil((2 * distance) / module)]) {
      const profileShift = findShift(module, total, distance, pressureAngle);
      if (profileShift === undefined || Math.abs(profileShift) > mostShift) continue;
      const teeth = Math.round(total / (1 + ratio));
      const mateTeeth = total - teeth;
      if (Math.min(teeth, mateTeeth) < leastTeeth) continue;
      const ratioErrorPercent = (100 * (mateTeeth / teeth - ratio)) / ratio;
      if (Math.abs(ratioErrorPercent) > mostError) continue;
      const pair = { mate: mate.id, moduleMm: module, teeth, mateTeeth, profileShift, ratioErrorPercent };
      if (!found.some((one) => one.teeth === teeth && one.moduleMm === module)) found.push(pair);
    }
  }
  return found
    .sort((a, b) => Math.abs(a.ratioErrorPercent) - Math.abs(b.ratioErrorPercent) || a.moduleMm - b.moduleMm)
    .filter((pair) => runs(pair, mate, distance))
    .slice(0, mostPairs);
}

const pressureAngle = (20 * Math.PI) / 180;
/** Beyond half a module either way teeth get pointed or thin. */
const mostShift = 0.5;
/** Fewer are undercut deeply at 20 degrees. */
const leastTeeth = 10;
/** A ratio further off than this is another machine, percent. */
const mostError = 5;
const mostPairs = 3;

function findShift(module: number, total: number, distance: number, angle: number): number | undefined {
  const cosine = (module * total * Math.cos(angle)) / (2 * distance);
  if (!(cosine < 1)) return undefined;
  const working = Math.acos(cosine);
  return (total * (involute(working) - involute(angle))) / (4 * Math.tan(angle));
}

/** The play that such a pair is cut with, in modules: without any, a pair at its own distance jams. */
const play = 0.045;

function runs(pair: CoarserPair, mate: DesignMate, distance: number): boolean {
  const make = (teeth: number): GearSpec => ({
    kind: 'external',
    teeth,
    module: pair.moduleMm,
    pressureAngle,
    helixAngle: 0,
    profileShift: pair.profileShift,
    addendum: 1,
    dedendum: 1.25,
    rootRadius: 0.25,
    thinning: play * pair.moduleMm,
    tipDiameter: null,
  });
  const proof = rollWithMate(make(pair.teeth), {
    ...mate,
    wheel: { spec: make(pair.mateTeeth) },
    center: { mm: distance, u: 0 },
  });
  return proof?.verdict === 'turns';
}
