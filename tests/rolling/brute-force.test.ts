import { describe, expect, test } from 'vitest';
import { rollingLimits } from '../../gear-library/rolling-limits.ts';
import { Fail } from '../../src/fail.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { type Random, startRandom } from '../../src/numeric/random.ts';
import { rollPair } from '../../src/rolling/roll-pair.ts';
import type { RollingProof } from '../../src/rolling/rolling-proof.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';
import { cutWheel, findFlankPitches, findFreeAngles } from './roll-polygons.ts';

const seed = 20261126;
const pairs = 64;
/** mm; the bound at module 0.5 */
const allowed = 0.002;

interface Drawn {
  readonly driver: GearSpec;
  readonly driven: GearSpec;
  readonly distance: number;
}

/** Half of one module, half of two: near ones (0.4 and 64 to the inch), far ones (0.5 and 48), other angles. */
function drawPair(random: Random, isSame: boolean): Drawn {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random.uniform() * list.length)];
  const between = (low: number, high: number): number => low + (high - low) * random.uniform();
  const [one, two, angle1, angle2] = isSame
    ? [0.5, 0.5, 20, 20]
    : pick([
        [0.4, 25.4 / 64, 20, 20],
        [25.4 / 64, 0.4, 20, 20],
        [0.5, 25.4 / 48, 20, 20],
        [25.4 / 48, 0.5, 20, 20],
        [0.5, 0.5, 20, 14.5],
        [0.5, 25.4 / 52, 14.5, 14.5],
        [25.4 / 50, 0.5, 20, 20],
      ] as const);
  const draw = (module: number, angle: number, least: number, most: number): GearSpec =>
    makeSpec({
      module,
      pressureAngle: rad(angle),
      teeth: Math.round(between(least, most)),
      profileShift: pick([0, 0, between(0, 0.4)]),
      thinning: between(0, 0.04),
      dedendum: pick([1.25, 1.35]),
      rootRadius: pick([0.2, 0.3]),
      addendum: pick([1, 1, 0.8]),
    });
  const driver = draw(one, angle1, 9, 30);
  const driven = draw(two, angle2, 12, 40);
  const shifts = driver.profileShift * one + driven.profileShift * two;
  const middle = (one * driver.teeth + two * driven.teeth) / 2 + 0.9 * shifts;
  return { driver, driven, distance: middle + between(-0.06, 0.2) };
}

interface Rolled {
  readonly verdict: RollingProof['verdict'];
  readonly isNearLimit: boolean;
  readonly worst: number;
}

/** The polygons' own verdict, from 24 positions in one pitch, beside how far the product strays from them. */
function rollByPolygons({ driver, driven, distance }: Drawn, proof: RollingProof): Rolled {
  const one = cutWheel(driver);
  const two = cutWheel(driven);
  const radius = (distance * two.teeth) / (one.teeth + two.teeth);
  const { curve } = proof.mean;
  const steps = curve.driverAngle.length - 1;
  const finer = Math.min(driver.module, driven.module);
  let least = Number.POSITIVE_INFINITY;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  let worst = 0;
  let jams = false;
  for (let k = 0; k < steps; k += 2) {
    const free = findFreeAngles(one, two, distance, curve.driverAngle[k]);
    if (!free) {
      jams = true;
      continue;
    }
    const [low, high] = free;
    least = Math.min(least, (high - low) * radius);
    lowest = Math.min(lowest, low * radius);
    highest = Math.max(highest, low * radius);
    // Also where the wheel jams elsewhere in the pitch.
    worst = Math.max(worst, Math.abs(low - curve.low[k]) * radius, Math.abs(high - curve.high[k]) * radius);
  }
  const { contactRatio, transmissionError, backlash } = rollingLimits;
  const ripple = highest - lowest;
  const most = transmissionError.mostPitches * Math.PI * finer;
  const ratio = jams ? 0 : findFlankPitches(one, two, distance, 0.002 * finer);
  const isRough = ratio < contactRatio.least || ripple > most || least < backlash.leastModules * finer;
  const { mean } = proof;
  return {
    verdict: jams ? 'jams' : isRough ? 'rough' : 'turns',
    worst,
    isNearLimit:
      Math.abs(mean.backlashLeast) < allowed ||
      (!jams && Math.abs(mean.backlashLeast - backlash.leastModules * finer) < allowed) ||
      (!jams && Math.abs(mean.transmissionError - most) < allowed) ||
      // Polygons tell the contact ratio to a few steps of their 40 a pitch.
      (!jams && Math.abs(mean.contactRatio - contactRatio.least) < 0.08),
  };
}

describe('against polygons that a stepped cutter leaves, rolled by bisection on their overlap', () => {
  test(`${pairs} random pairs (seed ${seed}): the same verdict, and both bounds within 2 µm`, () => {
    const random = startRandom(seed);
    const counts = { turns: 0, rough: 0, jams: 0, 'left out': 0 };
    let worst = 0;
    for (let k = 0; k < pairs; ) {
      const drawn = drawPair(random, k % 2 === 0);
      let proof: RollingProof;
      try {
        proof = rollPair(
          { spec: drawn.driver },
          { spec: drawn.driven },
          { mm: drawn.distance, u: 0 },
          { seeksDistance: false },
        );
      } catch (error) {
        if (error instanceof Fail) continue;
        throw error;
      }
      k++;
      const label = `pair ${k}: ${JSON.stringify(drawn)}`;
      const polygons = rollByPolygons(drawn, proof);
      worst = Math.max(worst, polygons.worst);
      expect(polygons.worst, label).toBeLessThan(allowed);
      if (polygons.isNearLimit) {
        counts['left out']++;
        continue;
      }
      expect(proof.verdict, label).toBe(polygons.verdict);
      counts[proof.verdict]++;
    }
    console.log(`worst bound ${(worst * 1000).toFixed(2)} µm,`, counts);
    // Every verdict is met often, and few pairs are left out.
    expect(counts.turns).toBeGreaterThan(8);
    expect(counts.rough).toBeGreaterThan(8);
    expect(counts.jams).toBeGreaterThan(8);
    expect(counts['left out']).toBeLessThan(pairs / 5);
  });
});
