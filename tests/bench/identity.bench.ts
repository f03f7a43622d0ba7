import { pitchSizes } from '../../gear-library/pitch-series.ts';
import { type Random, startRandom } from '../../src/numeric/random.ts';
import type { Identity } from '../../src/readings/conclude-identity.ts';
import { identifyWheel } from '../../src/readings/identify-wheel.ts';
import type {
  LengthReading,
  Reading,
  TeethReading,
  WheelEvidence,
} from '../../src/readings/wheel-evidence.ts';
import { damages, drawDamaged } from './draw-damaged.ts';
import { type DrawnWheel, drawFrom, measureWheel, type ReadingSet } from './draw-wheels.ts';
import { nameSize, weighByBruteForce } from './weigh-by-brute-force.ts';
import { openNarrowWorld, openWorld, type World } from './wheel-worlds.ts';

const sets: readonly ReadingSet[] = ['outside', 'outside+root', 'outside+span', 'two spans', 'all four'];

/**
 * Wheels a reading set, on how many of them brute force is run, and one part of the bench alone (prior, narrow,
 * damaged, slips, speed), and another seed: `bench -- identity 5000 500`, `bench -- identity 1000 0 slips 7`.
 */
export function run(brief: boolean, args: readonly string[]): void {
  const cases = brief ? 4 : Number(args[0] ?? 5000);
  const paired = brief ? 1 : Number(args[1] ?? 500);
  const part = args[2] ?? 'all';
  const seed = Number(args[3] ?? usualSeed);
  const wants = (name: string): boolean => part === 'all' || part === name;
  const world = openWorld();
  const narrow = openNarrowWorld();
  console.log(`identity: ${cases} wheels a set, z 7–100, default uncertainties, slips at their rates`);
  if (wants('prior')) {
    const certain = { count: 0, wrong: 0 };
    console.log("drawn from the product's prior");
    for (const set of sets)
      report(set, cases, paired, world, (random) => draw(world, set, random), certain, seed);
    console.log(`  called certain in all: ${certain.count}, of which wrong ${certain.wrong}`);
  }
  if (wants('narrow')) {
    const certain = { count: 0, wrong: 0 };
    console.log('a second, narrower generator: modules 0.3–1 and 32, 48, 64 DP, 20° and 14.5°, little wear');
    for (const set of ['outside+root', 'all four'] as const)
      report(set, cases, paired, narrow, (random) => draw(narrow, set, random), certain, seed);
  }
  if (wants('damaged')) {
    const certain = { count: 0, wrong: 0 };
    const few = Math.ceil(cases / 5);
    console.log('damaged wheels from the prior, the damage stated');
    for (const damage of damages) {
      for (const set of ['outside+root', 'all four'] as const)
        report(`${damage}: ${set}`, few, 0, world, (random) => drawDamaged(damage, set, random), certain);
    }
    console.log(`  called certain in all: ${certain.count}, of which wrong ${certain.wrong}`);
  }
  if (wants('slips')) {
    const slips = brief ? 6 : Math.min(1000, cases);
    const pairs = brief ? 0 : Math.min(slips, paired);
    console.log('one slip of 6 to 20 deviations among outside, root and two spans, all else sound');
    reportSlips("from the product's prior", world, slips, pairs, seed);
    reportSlips('from the narrower generator', narrow, slips, pairs, seed);
  }
  if (wants('speed')) reportSpeed(brief ? 5 : 200);
}

const usualSeed = 20261125;

interface Case {
  readonly wheel: DrawnWheel;
  readonly evidence: WheelEvidence;
}

function draw(world: World, set: ReadingSet, random: Random): Case {
  const wheel = drawFrom(world, random);
  return { wheel, evidence: measureWheel(wheel, set, random, true) };
}

function report(
  title: string,
  cases: number,
  paired: number,
  world: World,
  drawCase: (random: Random) => Case,
  certain: { count: number; wrong: number },
  seed = usualSeed,
): void {
  const random = startRandom(seed);
  const ownRandom = startRandom(1);
  const bins = Array.from({ length: 10 }, () => ({ count: 0, stated: 0, right: 0 }));
  const pairs = { product: 0, ceiling: 0, square: 0, apart: 0, error: 0, loss: 0, lossSquare: 0 };
  let right = 0;
  let rule = 0;
  let checksum = 0;
  let certainHere = 0;
  let wrongHere = 0;
  for (let i = 0; i < cases; i++) {
    const { wheel, evidence } = drawCase(random);
    const identity = identifyWheel(evidence);
    const stated = identity.pitch[0]?.probability ?? 0;
    const truth = nameSize(wheel.system, wheel.size);
    const isRight = nameLead(identity) === truth;
    if (isRight) right++;
    if (plainRule(evidence) === truth) rule++;
    if (identity.verdict === 'certain') {
      certainHere++;
      if (!isRight) wrongHere++;
    }
    const bin = bins[Math.min(9, Math.floor(stated * 10))];
    bin.count++;
    bin.stated += stated;
    if (isRight) bin.right++;
    checksum += stated;
    if (i < paired) {
      const exact = weighByBruteForce(evidence, world, ownRandom);
      const difference = (isRight ? 1 : 0) - (exact.lead === truth ? 1 : 0);
      if (exact.lead === truth) pairs.ceiling++;
      pairs.product += isRight ? 1 : 0;
      pairs.square += difference ** 2;
      pairs.apart += Math.abs(stated - (exact.chances.get(nameLead(identity)) ?? 0));
      pairs.error += exact.error;
      const loss = (exact.chances.get(exact.lead) ?? 0) - (exact.chances.get(nameLead(identity)) ?? 0);
      pairs.loss += loss;
      pairs.lossSquare += loss ** 2;
    }
  }
  certain.count += certainHere;
  certain.wrong += wrongHere;
  const hasRule = title.includes('outside') || title.includes('all four');
  console.log(
    `  ${title} (${cases}): right ${percent(right, cases)}, plain rule ${hasRule ? percent(rule, cases) : 'n/a'}, certain ${certainHere} of which wrong ${wrongHere}, checksum ${checksum.toFixed(6)}`,
  );
  if (paired > 0) {
    const mean = (pairs.product - pairs.ceiling) / paired;
    const error = Math.sqrt(Math.max(0, pairs.square / paired - mean ** 2) / paired);
    console.log(
      `    on ${paired} of them: product ${percent(pairs.product, paired)}, brute force ${percent(pairs.ceiling, paired)}, difference ${(100 * mean).toFixed(2)} ± ${(100 * error).toFixed(2)} points (paired standard error); stated probabilities ${(pairs.apart / paired).toFixed(4)} apart on average, of which draws of brute force ${(pairs.error / paired).toFixed(4)}`,
    );
    const loss = pairs.loss / paired;
    const spread = Math.sqrt(Math.max(0, pairs.lossSquare / paired - loss ** 2) / paired);
    // Of the odds that brute force gives, so chance in which wheel was drawn falls out.
    console.log(
      `    right less often than brute force by ${(100 * loss).toFixed(3)} ± ${(100 * spread).toFixed(3)} points, in its own odds`,
    );
  }
  const tenths = bins.flatMap(({ count, stated, right: came }, k) =>
    count === 0 ? [] : [`${k * 10}%+ (${count}) ${(stated / count).toFixed(3)}/${(came / count).toFixed(3)}`],
  );
  console.log(`    stated/true by tenths: ${tenths.join(', ')}`);
}

function percent(part: number, of: number): string {
  return `${((100 * part) / of).toFixed(1)} %`;
}

function nameLead(identity: Identity): string {
  const [lead] = identity.pitch;
  return lead ? nameSize(lead.system, lead.size) : 'none';
}

/** m = OD/(z + 2), snapped to the nearest size of the full series. */
function plainRule(evidence: WheelEvidence): string {
  const teeth = evidence.readings.find((one): one is TeethReading => one.of === 'teeth');
  const outside = evidence.readings.find((one): one is LengthReading => one.of === 'outside');
  const count = teeth?.count ?? (teeth?.left ?? 0) + (teeth?.missing?.[1] ?? 0);
  if (count === 0 || outside === undefined) return '';
  const module = Number(outside.mm) / (count + 2);
  const nearest = pitchSizes.reduce((best, size) =>
    Math.abs(Math.log(size.module / module)) < Math.abs(Math.log(best.module / module)) ? size : best,
  );
  return nameSize(nearest.system, nearest.size);
}

function reportSlips(title: string, world: World, draws: number, paired: number, seed: number): void {
  const random = startRandom(seed);
  const ownRandom = startRandom(2);
  let right = 0;
  let first = 0;
  let sound = 0;
  let rightOfPaired = 0;
  let ceiling = 0;
  for (let i = 0; i < draws; i++) {
    const wheel = drawFrom(world, random);
    const truth = nameSize(wheel.system, wheel.size);
    const evidence = measureWheel(wheel, 'all four', random, false);
    const at = 1 + random.index([1, 1, 1, 1]);
    const size = (6 + 14 * random.uniform()) * (at === 2 ? 0.055 : 0.03) * (random.uniform() < 0.5 ? -1 : 1);
    const readings = evidence.readings.map((reading, k) =>
      k === at && 'mm' in reading ? ({ ...reading, mm: Number(reading.mm) + size } as Reading) : reading,
    );
    const slipped = { ...evidence, readings };
    const identity = identifyWheel(slipped);
    if (nameLead(identity) === truth) right++;
    if (identity.suspect[0]?.reading === at) first++;
    if (nameLead(identifyWheel(evidence)) === truth) sound++;
    if (i >= paired) continue;
    if (nameLead(identity) === truth) rightOfPaired++;
    if (weighByBruteForce(slipped, world, ownRandom).lead === truth) ceiling++;
  }
  console.log(
    `  ${title} (${draws}): right size ${percent(right, draws)}, slip first suspect ${percent(first, draws)}; the same readings without the slip: right size ${percent(sound, draws)}`,
  );
  if (paired > 0) {
    console.log(
      `    on ${paired} of them: product ${percent(rightOfPaired, paired)}, brute force ${percent(ceiling, paired)}`,
    );
  }
}

function reportSpeed(count: number): void {
  const random = startRandom(5);
  const world = openWorld();
  const counted = Array.from({ length: count }, () => draw(world, 'all four', random).evidence);
  const uncertain = counted.map((evidence) => ({
    ...evidence,
    readings: evidence.readings.map((reading) =>
      reading.of === 'teeth' && reading.count !== undefined
        ? { of: 'teeth' as const, left: reading.count - 4, missing: [3, 4, 5] }
        : reading,
    ),
  }));
  // The machine's own pace, so that milliseconds can be read across machines.
  const pace = timeOf(() => {
    let sum = 0;
    for (let k = 0; k < 1e6; k++) sum += Math.exp(-k * 1e-6);
    return sum;
  });
  for (const [name, list] of [
    ['teeth counted', counted],
    ['count uncertain (three)', uncertain],
  ] as const) {
    for (const evidence of list) identifyWheel(evidence);
    const times = list.map((evidence) => timeOf(() => identifyWheel(evidence))).sort((a, b) => a - b);
    const at = (part: number): string => times[Math.floor(part * (times.length - 1))].toFixed(1);
    console.log(
      `  one identity with all gains, ${name}: median ${at(0.5)} ms, 95th percentile ${at(0.95)} ms, beside a million exponentials ${pace.toFixed(1)} ms`,
    );
  }
}

function timeOf(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}
