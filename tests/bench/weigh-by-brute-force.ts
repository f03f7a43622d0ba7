import { instruments, methods } from '../../gear-library/reading-uncertainty.ts';
import { askewSpread, slipRates, wrongSpread, zeroSlipSpread } from '../../gear-library/slips.ts';
import { jawHabits } from '../../gear-library/tooth-variation.ts';
import { listRepairs } from '../../src/evidence/list-repairs.ts';
import type { Random } from '../../src/numeric/random.ts';
import type { LengthReading, TeethReading, WheelEvidence } from '../../src/readings/wheel-evidence.ts';
import { type DrawnWheel, trueReading } from './draw-wheels.ts';
import { findLand, type Toothing, type World, type WorldSize } from './wheel-worlds.ts';

/** Exact odds of each size by name, and the standard error that a finite number of draws leaves on the leading one. */
export interface BruteForce {
  readonly chances: ReadonlyMap<string, number>;
  readonly lead: string;
  readonly error: number;
}

// Draws for each count and toothing: a first look, then batches, in rounds for as long as the first two are close.
const look = 768;
const batch = 768;
const batches = 8;
const mostRounds = 6;
// A size whose odds at readings widened 2.5 times, many times its true odds, lie below this part of the best is left
// out.
const leftOut = 3e-4;
const widening = 2.5;

/**
 * The odds that follow from the readings in a world, by brute force: wheels of every count and toothing are drawn
 * from the world, each is given every size, its readings are taken from the drawn geometry, and the chance of what
 * was read is averaged. Nothing is linearized, no unknown is integrated in closed form, every reading slips on its
 * own, and no code is shared with the weigher. How many teeth a span went over is taken as given.
 *
 * Rare kinds of shift and wear are drawn as often as common ones and weighted back (importance sampling).
 */
export function weighByBruteForce(evidence: WheelEvidence, world: World, random: Random): BruteForce {
  const readings = evidence.readings.filter((one): one is LengthReading => 'mm' in one);
  const exact = readings.map((reading) => chanceOf(reading, 1));
  const wide = readings.map((reading) => chanceOf(reading, widening));
  const looked: { kind: Kind; size: WorldSize; bound: number }[] = [];
  let best = 0;
  for (const kind of listKinds(evidence, world)) {
    const cloud = drawCloud(kind, world, readings, random, look);
    const ranges = rangesOf(cloud, readings.length);
    for (const size of kind.toothing.sizes) {
      const prior = kind.weight * size.weight;
      if (prior * boundChance(ranges, size, wide) <= leftOut * best) continue;
      const bound = prior * averageChance(cloud, size, wide);
      if (bound <= leftOut * best) continue;
      looked.push({ kind, size, bound });
      best = Math.max(best, prior * averageChance(cloud, size, exact));
    }
  }
  const alive = new Map<Kind, WorldSize[]>();
  for (const { kind, size, bound } of looked) {
    if (bound > leftOut * best) alive.set(kind, [...(alive.get(kind) ?? []), size]);
  }
  const sums: Map<string, number>[] = [];
  for (let round = 0; ; round++) {
    for (let b = 0; b < batches; b++) sums.push(sumBatch(alive, world, readings, exact, random));
    const answer = concludeFrom(sums);
    const [first, second = 0] = [...answer.chances.values()].sort((a, b) => b - a);
    if (round + 1 >= mostRounds || first - second > 4 * answer.error) return answer;
  }
}

export function nameSize(system: string, size: number): string {
  return system === 'free' ? 'free' : `${system} ${size}`;
}

/** A count and a toothing, with the chance of both in the light of what was counted. */
interface Kind {
  readonly teeth: number;
  readonly toothing: Toothing;
  readonly weight: number;
}

function listKinds(evidence: WheelEvidence, world: World): Kind[] {
  const counted = evidence.readings.find((one): one is TeethReading => one.of === 'teeth')?.count;
  if (counted === undefined) throw new Error('brute force needs a counted wheel');
  const off = slipRates['count-off-by-one'].chance;
  return [0, -1, 1]
    .flatMap((step) => {
      const teeth = counted + step;
      const weight = world.countChance(teeth) * (step === 0 ? 1 - off : off / 2);
      return weight > 0 ? world.toothings.map((toothing) => ({ teeth, toothing, weight })) : [];
    })
    .sort((a, b) => b.weight * mostOf(b.toothing) - a.weight * mostOf(a.toothing));
}

/** The chance of a toothing's commonest size. */
function mostOf({ sizes }: Toothing): number {
  return Math.max(...sizes.map((size) => size.weight));
}

/** Drawn wheels: reading i of wheel j on a module m is m · slope + rest. */
interface Cloud {
  readonly count: number;
  readonly slopes: Float64Array;
  readonly rests: Float64Array;
  /** Where a free cell's module lies, standard normal. */
  readonly cell: Float64Array;
  /** Summing to 1, or to less where pointed teeth cost the whole draw. */
  readonly weights: Float64Array;
  readonly slipped: Uint8Array;
}

// One wheel in twelve is measured with a zero that was not set.
const zeroSlips = 12;

function drawCloud(
  { teeth, toothing }: Kind,
  world: World,
  readings: readonly LengthReading[],
  random: Random,
  count: number,
): Cloud {
  const n = readings.length;
  const cloud: Cloud = {
    count,
    slopes: new Float64Array(count * n),
    rests: new Float64Array(count * n),
    cell: new Float64Array(count),
    weights: new Float64Array(count),
    slipped: new Uint8Array(count),
  };
  const { pressureAngle, addendum } = toothing;
  const chance = slipRates['zero-not-set'].chance;
  const ways = world.listKinds(toothing, teeth);
  const outsides = jawHabits.map(({ jaws }): LengthReading => ({ of: 'outside', jaws }));
  const unsaid = readings.map((one) => one.of === 'outside' && one.jaws === undefined && teeth % 2 === 1);
  let total = 0;
  for (let j = 0; j < count; j++) {
    const way = ways[j % ways.length];
    const tooth = way.draw(random);
    const weight = ways.length * way.weight;
    const tip = teeth + 2 * (addendum + tooth.shift - tooth.tipLoss);
    cloud.cell[j] = random.normal();
    let zero = 0.02 * random.normal();
    const slips = random.uniform() < 1 / zeroSlips;
    if (slips) zero += zeroSlipSpread.uMm * random.normal();
    const habit = Math.floor(jawHabits.length * random.uniform());
    if (findLand(teeth, pressureAngle, tooth.shift, tip) <= 0) continue;
    total += weight;
    cloud.slipped[j] = slips ? 1 : 0;
    cloud.weights[j] = weight * zeroSlips * (slips ? chance : (1 - chance) / (zeroSlips - 1));
    const wheel: DrawnWheel = {
      shift: tooth.shift,
      tipLoss: tooth.tipLoss,
      thinning: tooth.thinning,
      scale: tooth.scale,
      tipLandKept: tooth.tipLandKept,
      system: '',
      size: 1,
      module: 1,
      pressureAngle,
      teeth,
      addendum,
      rootDepth: toothing.dedendum,
      zero: 0,
    };
    for (let i = 0; i < n; i++) {
      const reading = unsaid[i] ? outsides[habit] : readings[i];
      if (unsaid[i]) cloud.weights[j] *= jawHabits.length * jawHabits[habit].weight;
      const slope = trueReading(wheel, reading);
      const deeper = reading.of === 'root' ? toothing.extraDedendum : 0;
      const rest =
        deeper === 0 ? 0 : trueReading({ ...wheel, rootDepth: wheel.rootDepth + deeper }, reading) - slope;
      cloud.slopes[j * n + i] = slope;
      cloud.rests[j * n + i] = rest + zero + methods[reading.of as keyof typeof methods].biasMm;
    }
  }
  // Where a pointed tooth is drawn again, the rest make up for it; else the size is as much less likely.
  const whole = world.keepsSize ? total : count;
  for (let j = 0; j < count; j++) cloud.weights[j] /= whole;
  return cloud;
}

/** The chance of what was read where the true reading is μ; the highest over an interval of μ. */
interface ReadingChance {
  at(mu: number): number;
  highest(low: number, high: number): number;
}

function chanceOf(reading: LengthReading, widen: number): ReadingChance {
  const read = Number(reading.mm);
  const isDiameter = reading.of === 'outside' || reading.of === 'root';
  const repairs = listRepairs(
    read,
    {
      'inch-for-mm': slipRates['inch-for-mm'].chance,
      'radius-for-diameter': slipRates['radius-for-diameter'].chance,
      'swapped-digits': slipRates['swapped-digits'].chance,
      'lost-decimal': slipRates['lost-decimal'].chance,
    },
    isDiameter,
  );
  const wrong = slipRates.wrong.chance;
  const askew = slipRates.askew.chance;
  const sound =
    1 -
    wrong -
    askew -
    slipRates['inch-for-mm'].chance -
    slipRates['swapped-digits'].chance -
    slipRates['lost-decimal'].chance -
    (isDiameter ? slipRates['radius-for-diameter'].chance : 0);
  const sigma = Math.hypot(instruments['digital-0.01'].uMm, methods[reading.of as keyof typeof methods].uMm);
  const unit = 1 / (sigma * Math.sqrt(2 * Math.PI));
  const fall = -0.5 / (widen * sigma) ** 2;
  const reach = 7 * widen * sigma;
  const values = Float64Array.from(repairs, (one) => one.value);
  const chances = Float64Array.from(repairs, (one) => Math.exp(one.logChance) * unit);
  const within = (low: number, high: number): number => {
    const far = read < low ? low - read : read > high ? read - high : 0;
    const spread = Math.max(wrongSpread.least, wrongSpread.part * high);
    let sum = ((wrong * unit * sigma) / spread) * Math.exp((-0.5 * far * far) / (spread * spread));
    sum += ((askew * unit * sigma) / askewSpread.uMm) * Math.exp(-0.5 * (far / askewSpread.uMm) ** 2);
    if (far < reach) sum += sound * unit * Math.exp(fall * far * far);
    for (let k = 0; k < values.length; k++) {
      const value = values[k];
      const apart = value < low ? low - value : value > high ? value - high : 0;
      if (apart < reach) sum += chances[k] * Math.exp(fall * apart * apart);
    }
    return sum;
  };
  return { at: (mu) => within(mu, mu), highest: within };
}

function averageChance(cloud: Cloud, size: WorldSize, chances: readonly ReadingChance[]): number {
  const n = chances.length;
  let sum = 0;
  for (let j = 0; j < cloud.count; j++) {
    let product = cloud.weights[j];
    if (product === 0) continue;
    const module = size.spread === 0 ? size.module : size.module * Math.exp(size.spread * cloud.cell[j]);
    for (let i = 0; i < n; i++) {
      product *= chances[i].at(module * cloud.slopes[j * n + i] + cloud.rests[j * n + i]);
      if (product < 1e-14) break;
    }
    sum += product;
  }
  return sum;
}

/** Least and greatest slope and rest of each reading, wheels measured with a zero that was set. */
function rangesOf(cloud: Cloud, n: number): Float64Array {
  const ranges = new Float64Array(4 * n);
  for (let i = 0; i < n; i++) {
    ranges.set([Infinity, -Infinity, Infinity, -Infinity], 4 * i);
    for (let j = 0; j < cloud.count; j++) {
      if (cloud.weights[j] === 0 || cloud.slipped[j] === 1) continue;
      const slope = cloud.slopes[j * n + i];
      const rest = cloud.rests[j * n + i];
      ranges[4 * i] = Math.min(ranges[4 * i], slope);
      ranges[4 * i + 1] = Math.max(ranges[4 * i + 1], slope);
      ranges[4 * i + 2] = Math.min(ranges[4 * i + 2], rest);
      ranges[4 * i + 3] = Math.max(ranges[4 * i + 3], rest);
    }
  }
  return ranges;
}

/** More than any wheel of the size can give, with the zero set or not. */
function boundChance(ranges: Float64Array, size: WorldSize, chances: readonly ReadingChance[]): number {
  let set = 1;
  let unset = slipRates['zero-not-set'].chance;
  const cell = Math.exp(4 * size.spread);
  const slack = 3.5 * zeroSlipSpread.uMm;
  for (let i = 0; i < chances.length; i++) {
    const low = (size.module / cell) * ranges[4 * i] + ranges[4 * i + 2];
    const high = size.module * cell * ranges[4 * i + 1] + ranges[4 * i + 3];
    set *= chances[i].highest(low, high);
    unset *= chances[i].highest(low - slack, high + slack);
  }
  return set + unset;
}

function sumBatch(
  alive: ReadonlyMap<Kind, readonly WorldSize[]>,
  world: World,
  readings: readonly LengthReading[],
  chances: readonly ReadingChance[],
  random: Random,
): Map<string, number> {
  const sums = new Map<string, number>();
  for (const [kind, sizes] of alive) {
    const cloud = drawCloud(kind, world, readings, random, batch);
    for (const size of sizes) {
      const name = nameSize(size.system, size.size);
      const share = kind.weight * size.weight * averageChance(cloud, size, chances);
      sums.set(name, (sums.get(name) ?? 0) + share);
    }
  }
  return sums;
}

/** Odds from all batches, and the leading size's error by leaving out one batch at a time (jackknife). */
function concludeFrom(sums: readonly ReadonlyMap<string, number>[]): BruteForce {
  const all = new Map<string, number>();
  for (const sum of sums) for (const [name, share] of sum) all.set(name, (all.get(name) ?? 0) + share);
  const totals = sums.map((sum) => [...sum.values()].reduce((a, b) => a + b, 0));
  const total = totals.reduce((a, b) => a + b, 0);
  const [lead, greatest] = [...all].reduce((best, one) => (one[1] > best[1] ? one : best));
  const without = sums.map((sum, b) => (greatest - (sum.get(lead) ?? 0)) / (total - totals[b]));
  const mean = without.reduce((a, b) => a + b, 0) / sums.length;
  const squares = without.reduce((a, b) => a + (b - mean) ** 2, 0);
  return {
    chances: new Map([...all].map(([name, share]) => [name, share / total])),
    lead,
    error: Math.sqrt((squares * (sums.length - 1)) / sums.length),
  };
}
