import { lostCount, sharedPitch } from '../../gear-library/mesh-priors.ts';
import { methods } from '../../gear-library/reading-uncertainty.ts';
import { distancePlay } from '../../gear-library/tooth-variation.ts';
import type { JointDrive, JointWheel } from '../../src/drive/joint-identity.ts';
import type { Join } from '../../src/drive/mesh-tree.ts';
import { inverseInvolute, involute } from '../../src/involute/involute-function.ts';
import type { Random } from '../../src/numeric/random.ts';
import { measureLength } from '../../src/readings/measured-length.ts';
import type { Reading, WheelEvidence } from '../../src/readings/wheel-evidence.ts';
import { type DrawnWheel, drawFrom } from './draw-wheels.ts';
import { slipReading } from './slip-reading.ts';
import { openWorld, type World } from './wheel-worlds.ts';

/** A wheel that runs against a drawn one: mostly of the same system, size and angle, else drawn afresh. */
export function drawMate(world: World, wheel: DrawnWheel, random: Random): DrawnWheel {
  if (random.uniform() >= sharedPitch.chance) return drawFrom(world, random);
  const alike: World = {
    ...world,
    toothings: world.toothings
      .filter((toothing) => toothing.pressureAngle === wheel.pressureAngle)
      .map((toothing) => ({
        ...toothing,
        sizes: toothing.sizes
          .filter(
            (size) => size.system === wheel.system && (size.system === 'free' || size.size === wheel.size),
          )
          // Of a free module the mate has the very same one, not another of its cell.
          .map((size) => ({ ...size, size: wheel.size, module: wheel.module, spread: 0 })),
      }))
      .filter((toothing) => toothing.sizes.length > 0),
  };
  return drawFrom(alike, random);
}

/** The distance that a drawn pair's posts have, mm: without backlash by its shifts, opened by a little play. */
export function drawDistance(a: DrawnWheel, b: DrawnWheel, random: Random): number {
  const play = a.module * (distancePlay.mean + distancePlay.spread * random.normal());
  const sum = a.teeth + b.teeth;
  if (Math.abs(a.module / b.module - 1) > 1e-9 || a.pressureAngle !== b.pressureAngle) {
    // Mixed pitches: whatever the reference circles leave.
    return (a.module * a.teeth + b.module * b.teeth) / 2 + a.module * a.shift + b.module * b.shift + play;
  }
  const alpha = a.pressureAngle;
  const inv = involute(alpha) + (2 * (a.shift + b.shift) * Math.tan(alpha)) / sum;
  const working = inverseInvolute(Math.max(1e-6, inv));
  return (a.module * sum * Math.cos(alpha)) / (2 * Math.cos(working)) + play;
}

/** The distance as read over two posts with the usual uncertainty, and a slip at its rate. */
export function readDistance(mm: number, random: Random, withSlips: boolean): Reading & { mm: number } {
  const read =
    mm + 0.02 * random.normal() + Math.hypot(0.015, methods['center-distance'].uMm) * random.normal();
  return { of: 'center-distance', mate: 'b', mm: withSlips ? slipReading(read, false, random) : read };
}

/** A drive of wheels that run against each other in the order given, with the distances between neighbors. */
export function chainDrive(
  wheels: readonly WheelEvidence[],
  distances: readonly (Reading | undefined)[],
  lost: readonly string[] = [],
): JointDrive {
  return {
    machine: {},
    wanted: undefined,
    wheels: wheels.map(
      (evidence): JointWheel => ({
        evidence,
        isLost: lost.includes(evidence.id),
        notes: [],
        answers: { noCrumbs: false, hasPost: false, hasRows: false, hasSpeed: false, isIdler: false },
      }),
    ),
    joins: wheels.slice(1).map((wheel, i): Join => {
      const reading = distances[i];
      const before = wheels[i];
      const length =
        reading?.of === 'center-distance' && typeof reading.mm === 'number'
          ? measureLength(before, reading, before.readings.length, reading.mm, undefined)
          : undefined;
      return {
        wheels: [before.id, wheel.id],
        distances: length ? [{ length, wheel: undefined }] : [],
      };
    }),
  };
}

/** A wheel drawn to stand between two others of one label, its count as a lost wheel's may be. */
export function drawLost(like: DrawnWheel, random: Random): DrawnWheel {
  const world = openWorld();
  const { least, greatest } = lostCount;
  const teeth = Math.round(least * (greatest / least) ** random.uniform());
  return drawMate({ ...world, countChance: (z) => (z === Math.min(teeth, 100) ? 1 : 0) }, like, random);
}
