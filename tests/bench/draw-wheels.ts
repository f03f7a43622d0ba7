import { slipRates, zeroSlipSpread } from '../../gear-library/slips.ts';
import { jawHabits } from '../../gear-library/tooth-variation.ts';
import { involute } from '../../src/involute/involute-function.ts';
import type { Random } from '../../src/numeric/random.ts';
import type { Reading, WheelEvidence } from '../../src/readings/wheel-evidence.ts';
import { slipReading } from './slip-reading.ts';
import { findLand, openWorld, type World } from './wheel-worlds.ts';

/** A wheel drawn at random: what it truly is. Lengths mm, angles rad. */
export interface DrawnWheel {
  readonly system: string;
  readonly size: number;
  readonly module: number;
  readonly pressureAngle: number;
  readonly teeth: number;
  readonly addendum: number;
  readonly rootDepth: number;
  readonly shift: number;
  /** modules on the radius */
  readonly tipLoss: number;
  /** modules of arc */
  readonly thinning: number;
  /** relative */
  readonly scale: number;
  readonly tipLandKept: number;
  readonly zero: number;
}

const blank: WheelEvidence = {
  id: 'w',
  kind: 'external',
  damage: [],
  readings: [],
  kit: {},
  machine: {},
  mates: [],
};

/** Draws a wheel from the product's own prior. */
export function drawWheel(random: Random): DrawnWheel {
  return drawFrom(openWorld(), random);
}

/** Draws a wheel from a world. */
export function drawFrom(world: World, random: Random): DrawnWheel {
  const kinds = world.toothings.flatMap((toothing) => toothing.sizes.map((size) => ({ toothing, size })));
  const weights = kinds.map(({ size }) => size.weight);
  const counts = Array.from({ length: 100 }, (_, z) => world.countChance(z + 1));
  for (;;) {
    const teeth = 1 + random.index(counts);
    const { toothing, size } = kinds[random.index(weights)];
    const { pressureAngle, addendum } = toothing;
    const module = size.module * Math.exp(size.spread * random.normal());
    const ways = world.listKinds(toothing, teeth);
    for (let round = 0; round < (world.keepsSize ? 10_000 : 1); round++) {
      const tooth = ways[random.index(ways.map((way) => way.weight))].draw(random);
      const tip = teeth + 2 * (addendum + tooth.shift - tooth.tipLoss);
      // A pointed tooth can't be made: its draw is taken again.
      if (findLand(teeth, pressureAngle, tooth.shift, tip) <= 0) continue;
      return {
        ...tooth,
        system: size.system,
        size: size.system === 'free' ? module : size.size,
        module,
        pressureAngle,
        teeth,
        addendum,
        rootDepth: toothing.dedendum + toothing.extraDedendum / module,
        zero: 0.02 * random.normal(),
      };
    }
  }
}

/** What the geometry gives for one reading of a drawn wheel, without any error, mm. */
export function trueReading(wheel: DrawnWheel, reading: Reading): number {
  const { module: m, teeth: z, shift: x, pressureAngle: a } = wheel;
  const grown = m * (1 + wheel.scale);
  if (reading.of === 'outside') {
    const tip = z + 2 * (wheel.addendum + x - wheel.tipLoss);
    if (z % 2 === 0) return grown * tip;
    const tau = wheel.tipLandKept * findLand(z, a, x, tip);
    if (reading.jaws === 'rocked') return grown * tip * Math.cos(Math.PI / (2 * z) - tau);
    if (reading.jaws === 'settled') return ((grown * tip) / 2) * (1 + Math.cos(Math.PI / z - tau));
    return grown * tip;
  }
  if (reading.of === 'root') {
    return grown * (z - 2 * (wheel.rootDepth - x)) * (z % 2 === 0 ? 1 : Math.cos(Math.PI / (2 * z)));
  }
  if (reading.of === 'span') {
    const k = reading.teeth ?? 0;
    return (
      grown *
      (Math.cos(a) * (Math.PI * (k - 0.5) + z * involute(a)) +
        2 * x * Math.sin(a) -
        wheel.thinning * Math.cos(a))
    );
  }
  throw new Error(`no drawn reading of ${reading.of}`);
}

/** The span over the most teeth that still touches below the tips, and one tooth less. */
export function spansOf(wheel: DrawnWheel): [number, number] {
  const { teeth: z, pressureAngle: a, shift: x } = wheel;
  let widest = 2;
  for (let k = 2; k < z / 2; k++) {
    const span = Math.cos(a) * (Math.PI * (k - 0.5) + z * involute(a)) + 2 * x * Math.sin(a);
    if (Math.hypot(z * Math.cos(a), span) < z + 2 * (wheel.addendum + x - wheel.tipLoss) - 0.1) widest = k;
  }
  return [Math.max(2, widest - 1), Math.max(3, widest)];
}

export type ReadingSet =
  | 'outside'
  | 'outside+root'
  | 'outside+span'
  | 'two spans'
  | 'outside+two spans'
  | 'all four';

/** Measures a drawn wheel with the default uncertainties of gear-library, odd counts as a caliper reads them. */
export function measureWheel(
  wheel: DrawnWheel,
  set: ReadingSet,
  random: Random,
  withSlips: boolean,
): WheelEvidence {
  const happens = (chance: number): boolean => withSlips && random.uniform() < chance;
  const [near, wide] = spansOf(wheel);
  const miscount = happens(slipRates['count-off-by-one'].chance) ? (random.uniform() < 0.5 ? -1 : 1) : 0;
  const readings: Reading[] = [{ of: 'teeth', count: wheel.teeth + miscount }];
  const jaws =
    wheel.teeth % 2 === 0 ? undefined : jawHabits[random.index(jawHabits.map((habit) => habit.weight))].jaws;
  const zero =
    wheel.zero + (happens(slipRates['zero-not-set'].chance) ? zeroSlipSpread.uMm * random.normal() : 0);
  const take = (reading: Reading, method: number, bias: number): void => {
    const mm = trueReading(wheel, reading) + bias + zero + Math.hypot(0.015, method) * random.normal();
    const isDiameter = reading.of === 'outside' || reading.of === 'root';
    readings.push({ ...reading, mm: withSlips ? slipReading(mm, isDiameter, random) : mm } as Reading);
  };
  // Half of the people say how the jaws lay.
  const outside: Reading = { of: 'outside', jaws };
  if (set.includes('outside') || set === 'all four') {
    take(outside, 0.02, 0);
    if (random.uniform() < 0.5) {
      const last = readings[readings.length - 1];
      readings[readings.length - 1] = { ...last, jaws: undefined } as Reading;
    }
  }
  if (set.includes('root') || set === 'all four') take({ of: 'root' }, 0.05, 0.02);
  if (set === 'outside+span') take({ of: 'span', teeth: wide }, 0.015, 0);
  if (set.includes('two spans') || set === 'all four') {
    take({ of: 'span', teeth: near }, 0.015, 0);
    take({ of: 'span', teeth: wide }, 0.015, 0);
  }
  return { ...blank, readings, kit: {} };
}
