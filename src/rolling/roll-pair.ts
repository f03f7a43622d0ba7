import { rollingLimits } from '../../gear-library/rolling-limits.ts';
import { Fail } from '../fail.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { type Facing, faceWheels, findReach } from './find-stop.ts';
import { findRollingLimits, findSmoothness, listRoughness, type RollingLimits } from './judge-rolled.ts';
import { type Cycle, rollAt } from './roll-at.ts';
import type { RolledWheel } from './rolled-wheel.ts';
import type { RolledAt, RollingProof, RollingReason } from './rolling-proof.ts';
import { seekDistance } from './seek-distance.ts';
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
  const limits = findRollingLimits(driver.spec, driven.spec);
  const prepare = (chordError: number, coarser: number) => {
    const facing = faceWheels(traceToothShape(driver, chordError), traceToothShape(driven, chordError));
    const cycle = planCycle(driver, driven, chordError, coarser);
    const driverTeeth = markTeeth(driver);
    const drivenTeeth = markTeeth(driven);
    const driverOffset = findOffset(driver);
    const drivenOffset = findOffset(driven);
    const roll = remember(
      (mm: number): RolledAt =>
        rollAt({ facing, distance: mm, driverTeeth, drivenTeeth, driverOffset, drivenOffset }, cycle),
    );
    return { facing, cycle, roll };
  };
  const { facing, cycle, roll } = prepare(chordModules * limits.finerModule, 1);

  // 1. The distances that the measured one may be, the mean in their middle.
  const range = listDistances(distance, options.distances ?? 9).map(roll);
  const mean = range[(range.length - 1) / 2];
  const judged = findNearestFree(range);

  // 2. The verdict and its reasons.
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
    reasons.push(...listRoughness(judged, limits));
  }

  // 3. From where it would be free, and run smoothly.
  const beyond =
    isTwisted || options.seeksDistance === false
      ? { freeFrom: undefined, smoothFrom: undefined }
      : seekBeyond(mean, limits, facing, roll, prepare(sketchModules * limits.finerModule, 4).roll);

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
/** To look for a distance: a fifth of the points, and a fourth of the steps. */
const sketchModules = 2.5e-3;

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
function planCycle(driver: RolledWheel, driven: RolledWheel, chordError: number, coarser: number): Cycle {
  const areAlike = [driver, driven].every((one) => !markTeeth(one) && findOffset(one) === 0);
  const meetings = areAlike ? 1 : leastCommonMultiple(driver.spec.teeth, driven.spec.teeth);
  const steps = areAlike ? 64 : meetings > manyMeetings ? 12 : 24;
  return { meetings, stepsPerPitch: steps / coarser, tolerance: 4 * chordError };
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

/** Between the base helices: of two external wheels they are of opposite hands, of an internal pair alike. */
function findHelixGap(driver: ToothShape, driven: ToothShape): number {
  const sameHand = driver.kind === 'internal' || driven.kind === 'internal' ? 1 : -1;
  return Math.abs(driver.baseHelixAngle - sameHand * driven.baseHelixAngle);
}

/** From where on the pair is free, and from where on it runs smoothly, as far as the teeth still reach each other. */
function seekBeyond(
  mean: RolledAt,
  limits: RollingLimits,
  facing: Facing,
  roll: (mm: number) => RolledAt,
  sketch: (mm: number) => RolledAt,
): { freeFrom: number | undefined; smoothFrom: number | undefined } {
  const step = stepModules * limits.finerModule * (facing.toward === 1 ? -1 : 1);
  const { driver, driven } = facing;
  // Nearer than this a tip stands in the mate's root, and nothing is free (internal pairs: no such bound is used).
  const floor =
    facing.toward === 1 ? 0 : Math.max(driver.tip + driven.root, driver.root + driven.tip) + step * 0.001;
  const from = Math.max(mean.centerDistance, floor);
  const exact = (mm: number): RolledAt => (mm === mean.centerDistance ? mean : roll(mm));
  const freedom = (one: RolledAt): number =>
    one.isFree ? Math.max(0, one.backlashLeast) : one.backlashLeast;
  const smoothness = (one: RolledAt): number => findSmoothness(one, limits);
  const hasParted = (mm: number): boolean => !(mm > 0) || findReach(facing, mm) === 0;
  const freeFrom = seekDistance(
    (mm) => freedom(exact(mm)),
    (mm) => freedom(sketch(mm)),
    from,
    step,
    hasParted,
  );
  if (freeFrom === undefined) return { freeFrom, smoothFrom: undefined };
  const smoothFrom = seekDistance(
    (mm) => smoothness(exact(mm)),
    (mm) => smoothness(sketch(mm)),
    freeFrom,
    step,
    // Flanks that no longer touch for a whole pitch will not again further out.
    (mm) => hasParted(mm) || sketch(mm).contactRatio < limits.contactRatio,
  );
  return { freeFrom, smoothFrom };
}

/** A tenth of a module: a pair has no stretch of distances so short in which alone it is free. */
const stepModules = 0.1;

/** The last answers again for the same distance. */
function remember<T>(work: (mm: number) => T): (mm: number) => T {
  const known = new Map<number, T>();
  return (mm) => {
    const found = known.get(mm) ?? work(mm);
    known.set(mm, found);
    return found;
  };
}
