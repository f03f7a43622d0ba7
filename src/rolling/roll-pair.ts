import { rollingLimits } from '../../gear-library/rolling-limits.ts';
import { Fail } from '../fail.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { type Facing, faceWheels, findReach } from './find-stop.ts';
import { type Cycle, rollAt } from './roll-at.ts';
import type { RolledWheel } from './rolled-wheel.ts';
import type { RolledAt, RollingProof, RollingReason } from './rolling-proof.ts';
import { type ToothShape, traceToothShape } from './tooth-shape.ts';

export interface RollingOptions {
  /** At how many distances from mean − 2u to mean + 2u the pair is rolled; odd, 9 where left out */
  readonly distances?: number;
  /** Whether to look for `freeFrom` and `smoothFrom` beyond the mean; true where left out */
  readonly seeksDistance?: boolean;
}

/**
 * How two wheels run at a distance of their shafts (mm, with its standard uncertainty u), proven by rolling their
 * outlines against each other through every relative position: one pitch where all teeth of each wheel are alike
 * (every pitch is then the same), else every meeting of teeth, lcm(z1, z2) of them. Missing teeth and runout make them
 * differ; a driver with tooth 0 on the line of centers faces the driven wheel's tooth 0 half a pitch ahead of it.
 *
 * Driver and driven may each be external, one of them internal or a rack. Angles are rad, of a rack travel in mm;
 * driven angles count in the way that the driven wheel is driven. A rack rolls as if it went on for ever, and has no
 * runout. Backlash and transmission error are mm at the driven wheel's working circle, a z2/(z1 ± z2); along a rack.
 *
 * `jams`: at no distance within ±2u is there a free path through the cycle, the driven wheel staying in step with the
 * driver's teeth. In step, each tooth's bounds change without a break or fall away, so a path exists where no interval
 * is empty. `rough` and `turns` are judged at the mean distance, or where the pair jams there, at the nearest distance
 * in the range at which it is free; that it jams at the mean is a reason of its own. The spread over the range is in
 * `range`: a measured distance often reaches into jamming, and that alone doesn't make a pair rough.
 *
 * `freeFrom` and `smoothFrom` are looked for where teeth draw apart: at larger distances, for an internal pair at
 * smaller ones.
 *
 * Wheels are rolled in the transverse section: helices whose base angles differ by more than the library's limit
 * can't lie along each other, which is a jam with the reason `helix`; what a smaller difference takes off the backlash
 * across the face is left out.
 *
 * Never throws for an expected outcome. Throws Fail: as `traceOutline` where a wheel has no outline (`pointed-tooth`,
 * `pointed-rack`, `bad-geometry`, with the spec's field); `bad-value` for a distance or an uncertainty that is none;
 * `bad-geometry` for two internal wheels, two racks, a rack in an internal wheel, or an internal wheel whose mate has
 * as many teeth.
 */
export function rollPair(
  driver: RolledWheel,
  driven: RolledWheel,
  distance: { readonly mm: number; readonly u: number },
  options: RollingOptions = {},
): RollingProof {
  checkDistance(distance);
  checkKinds(driver.spec, driven.spec);
  const chordError = chordModules * Math.min(driver.spec.module, driven.spec.module);
  const facing = faceWheels(traceToothShape(driver, chordError), traceToothShape(driven, chordError));
  const cycle = planCycle(driver, driven, chordError);
  const roll = (mm: number): RolledAt =>
    rollAt(
      {
        facing,
        distance: mm,
        driverTeeth: markTeeth(driver),
        drivenTeeth: markTeeth(driven),
        driverOffset: findOffset(driver),
        drivenOffset: findOffset(driven),
      },
      cycle,
    );

  // 1. The distances that the measured one may be, the mean in their middle.
  const range = listDistances(distance, options.distances ?? 9).map(roll);
  const mean = range[(range.length - 1) / 2];
  const judged = findNearestFree(range);

  // 2. The verdict and its reasons.
  const limits = findLimits(driver.spec, driven.spec);
  const reasons: RollingReason[] = [];
  const helix = findHelixGap(facing.driver, facing.driven);
  const isTwisted = helix > rollingLimits.helix.most;
  if (isTwisted) {
    reasons.push({ kind: 'helix', value: helix, limit: rollingLimits.helix.most, unit: 'rad' });
  } else if (!judged) {
    reasons.push({ kind: 'jams', value: mean.backlashLeast, limit: 0, unit: 'mm' });
  } else {
    if (!mean.isFree) {
      reasons.push({ kind: 'jams-at-mean', value: mean.backlashLeast, limit: 0, unit: 'mm' });
    }
    reasons.push(...listFaults(judged, limits));
  }

  // 3. From where it would be free, and run smoothly.
  const beyond =
    isTwisted || options.seeksDistance === false
      ? { freeFrom: undefined, smoothFrom: undefined }
      : seekDistances(mean, Math.min(driver.spec.module, driven.spec.module), facing, roll, limits);

  return {
    verdict: isTwisted || !judged ? 'jams' : reasons.length > 0 ? 'rough' : 'turns',
    reasons,
    mean,
    range,
    ...beyond,
    cycle: { of: cycle.meetings === 1 ? 'one-pitch' : 'all-meetings', meetings: cycle.meetings },
  };
}

/** Modules of the finer wheel: two outlines of 0.05 µm each at module 0.5, where backlash is held to 2 µm. */
const chordModules = 1e-4;

function checkDistance({ mm, u }: { readonly mm: number; readonly u: number }): void {
  if (!(mm > 0 && Number.isFinite(mm))) {
    throw new Fail(
      'bad-value',
      'centerDistance',
      `a center distance of ${mm} mm is none`,
      'Give the distance between the shafts, above 0 mm.',
      { centerDistance: mm },
    );
  }
  if (!(u >= 0 && 2 * u < mm)) {
    throw new Fail(
      'bad-value',
      'u',
      `an uncertainty of ${u} mm leaves nothing of a distance of ${mm} mm`,
      'Give an uncertainty of 0 or more, below half the distance.',
      { u, centerDistance: mm },
    );
  }
}

function checkKinds(driver: GearSpec, driven: GearSpec): void {
  if (driver.kind !== 'external' && driven.kind !== 'external') {
    throw new Fail(
      'bad-geometry',
      'kind',
      driver.kind !== driven.kind
        ? 'an internal wheel and a rack do not mesh'
        : driver.kind === 'rack'
          ? 'two racks do not mesh'
          : 'two internal wheels do not mesh',
      'One wheel of a pair is external.',
      { kinds: [driver.kind, driven.kind] },
    );
  }
  const internal = [driver, driven].find((one) => one.kind === 'internal');
  const other = internal === driver ? driven : driver;
  if (internal && internal.teeth <= other.teeth) {
    throw new Fail(
      'bad-geometry',
      'teeth',
      'an internal wheel needs more teeth than its pinion',
      'Give the internal wheel more teeth, or the pinion fewer.',
      { teeth: [driver.teeth, driven.teeth] },
    );
  }
}

/** One pitch for like teeth; else every meeting, with fewer steps in each where there are very many. */
function planCycle(driver: RolledWheel, driven: RolledWheel, chordError: number): Cycle {
  const areAlike = [driver, driven].every((one) => !markTeeth(one) && findOffset(one) === 0);
  const meetings = areAlike ? 1 : leastCommonMultiple(driver.spec.teeth, driven.spec.teeth);
  return { meetings, stepsPerPitch: areAlike ? 64 : meetings > manyMeetings ? 12 : 24, tolerance: 4 * chordError };
}

/** Most pairs of small machines stay below. */
const manyMeetings = 4000;

function leastCommonMultiple(one: number, two: number): number {
  let a = one;
  let b = two;
  while (b > 0) [a, b] = [b, a % b];
  return (one / a) * two;
}

function markTeeth({ spec, missing }: RolledWheel): readonly boolean[] | undefined {
  if (!missing || missing.length === 0) return undefined;
  const there = new Array<boolean>(spec.teeth).fill(true);
  for (const tooth of missing) there[((tooth % spec.teeth) + spec.teeth) % spec.teeth] = false;
  return there;
}

function findOffset({ spec, runout }: RolledWheel): number {
  return spec.kind === 'rack' ? 0 : (runout ?? 0) / 2;
}

function listDistances({ mm, u }: { readonly mm: number; readonly u: number }, wanted: number): number[] {
  if (u === 0) return [mm];
  const half = Math.max(1, Math.floor(wanted / 2));
  return Array.from({ length: 2 * half + 1 }, (_, k) => mm + (2 * u * (k - half)) / half);
}

/** The free distance nearest to the mean, the mean itself if it is free; of two as near, the wider backlash. */
function findNearestFree(range: readonly RolledAt[]): RolledAt | undefined {
  const middle = (range.length - 1) / 2;
  for (let off = 0; off <= middle; off++) {
    const free = [range[middle - off], range[middle + off]].filter((one) => one.isFree);
    free.sort((one, two) => two.backlashLeast - one.backlashLeast);
    if (free.length > 0) return free[0];
  }
  return undefined;
}

interface Limits {
  readonly contactRatio: number;
  readonly transmissionError: number;
  readonly backlash: number;
}

function findLimits(driver: GearSpec, driven: GearSpec): Limits {
  const pitchOf = (spec: GearSpec): number => (Math.PI * spec.module) / Math.cos(spec.helixAngle);
  return {
    contactRatio: rollingLimits.contactRatio.least,
    transmissionError: rollingLimits.transmissionError.mostPitches * Math.min(pitchOf(driver), pitchOf(driven)),
    backlash: rollingLimits.backlash.leastModules * Math.min(driver.module, driven.module),
  };
}

function listFaults(rolled: RolledAt, limits: Limits): RollingReason[] {
  const { contactRatio, transmissionError, backlashLeast } = rolled;
  const faults: RollingReason[] = [];
  if (contactRatio < limits.contactRatio) {
    faults.push({ kind: 'contact-ratio', value: contactRatio, limit: limits.contactRatio, unit: '' });
  }
  if (transmissionError > limits.transmissionError) {
    faults.push({
      kind: 'transmission-error',
      value: transmissionError,
      limit: limits.transmissionError,
      unit: 'mm',
    });
  }
  if (backlashLeast < limits.backlash) {
    faults.push({ kind: 'backlash', value: backlashLeast, limit: limits.backlash, unit: 'mm' });
  }
  return faults;
}

/** Between the base helices: of two external wheels they are of opposite hands, of an internal pair alike. */
function findHelixGap(driver: ToothShape, driven: ToothShape): number {
  const sameHand = driver.kind === 'internal' || driven.kind === 'internal' ? 1 : -1;
  return Math.abs(driver.baseHelixAngle - sameHand * driven.baseHelixAngle);
}

/**
 * The first distance on the way out at which the pair is free, and the first at which it runs smoothly: by steps, then
 * closed in between the last that isn't and the first that is. A stretch shorter than a step can be missed.
 */
function seekDistances(
  mean: RolledAt,
  finer: number,
  facing: Facing,
  roll: (mm: number) => RolledAt,
  limits: Limits,
): { freeFrom: number | undefined; smoothFrom: number | undefined } {
  const step = stepModules * finer * (facing.toward === 1 ? -1 : 1);
  const exact = exactModules * finer;
  const freedom = (one: RolledAt): number => (one.isFree ? Math.max(one.backlashLeast, 0) : one.backlashLeast);
  const smoothness = (one: RolledAt): number => findMargin(one, limits, finer);
  const { driver, driven } = facing;
  // Nearer than this a tip stands in the mate's root, and nothing is free (internal pairs: no such bound is used).
  const floor =
    facing.toward === 1 ? 0 : Math.max(driver.tip + driven.root, driver.root + driven.tip) - 0.01 * finer;
  let before = mean.centerDistance < floor ? roll(floor) : mean;
  let freeFrom = mean.isFree ? mean.centerDistance : undefined;
  let smoothFrom = smoothness(mean) >= 0 ? mean.centerDistance : undefined;
  while (smoothFrom === undefined) {
    const mm = before.centerDistance + step;
    if (!(mm > 0) || findReach(facing, mm) === 0) break;
    const rolled = roll(mm);
    if (freeFrom === undefined && rolled.isFree) freeFrom = closeIn(freedom, before, rolled, roll, exact);
    if (smoothness(rolled) >= 0) smoothFrom = closeIn(smoothness, before, rolled, roll, exact);
    // Teeth that no longer touch on their flanks will not again further out.
    if (rolled.isFree && rolled.contactRatio < limits.contactRatio) break;
    before = rolled;
  }
  return { freeFrom, smoothFrom };
}

/** By how much the pair is within its limits, mm; below 0 where it is not. */
function findMargin(one: RolledAt, limits: Limits, finer: number): number {
  return Math.min(
    one.isFree ? Number.POSITIVE_INFINITY : one.backlashLeast,
    (one.contactRatio - limits.contactRatio) * finer,
    limits.transmissionError - one.transmissionError,
    one.backlashLeast - limits.backlash,
  );
}

/**
 * Where a margin passes 0, by straight lines between the two sides, an end that stays twice counted half (the Illinois
 * rule); always a distance at which it was found to be 0 or above.
 */
function closeIn(
  marginOf: (one: RolledAt) => number,
  failing: RolledAt,
  holding: RolledAt,
  roll: (mm: number) => RolledAt,
  exact: number,
): number {
  let bad = failing.centerDistance;
  let good = holding.centerDistance;
  let badMargin = Math.max(marginOf(failing), -leastSlope * Math.abs(good - bad));
  let goodMargin = marginOf(holding);
  for (let round = 0; round < 30 && Math.abs(good - bad) > exact; round++) {
    const part = Math.min(0.95, Math.max(0.05, badMargin / (badMargin - goodMargin)));
    // A little past the crossing, so that the bracket closes from both sides.
    const middle = roll(bad + part * (good - bad) + (Math.sign(good - bad) * exact) / 3);
    const margin = marginOf(middle);
    if (margin >= 0) {
      good = middle.centerDistance;
      goodMargin = margin;
      badMargin /= 2;
    } else {
      bad = middle.centerDistance;
      badMargin = margin;
      goodMargin /= 2;
    }
  }
  return good;
}

/** A margin can drop all at once, where a tip meets the root; beyond this slope it is taken for such a drop. */
const leastSlope = 4;
const stepModules = 0.1;
/** 0.5 µm at module 0.5 */
const exactModules = 1e-3;
