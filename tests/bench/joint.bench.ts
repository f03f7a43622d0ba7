import { openJoint } from '../../src/drive/joint-identity.ts';
import { type Random, startRandom } from '../../src/numeric/random.ts';
import type { Identity } from '../../src/readings/conclude-identity.ts';
import { identifyWheel } from '../../src/readings/identify-wheel.ts';
import { chainDrive, drawDistance, drawLost, drawMate, readDistance } from './draw-pairs.ts';
import { type DrawnWheel, drawFrom, measureWheel, type ReadingSet } from './draw-wheels.ts';
import { nameSize } from './weigh-by-brute-force.ts';
import { openWorld } from './wheel-worlds.ts';

/**
 * Pairs drawn from the product's prior, the broken wheel read by little and its mate by more: how often the first
 * size is right alone, with the mate, with the mate and the distance. Then wheels lost between two neighbors.
 * `bench -- joint 1000 200`: pairs a set, lost wheels; one part alone with 0 for the other.
 */
export function run(brief: boolean, args: readonly string[]): void {
  const pairs = brief ? 3 : Number(args[0] ?? 600);
  const lost = brief ? 2 : Number(args[1] ?? 200);
  console.log(
    `joint: ${pairs} pairs a set, both wheels from the product's prior with one label (99 in 100), z 7–100, default uncertainties, slips at their rates`,
  );
  for (const [title, set, mateSet] of [
    ['broken wheel: outside; mate: outside and root', 'outside', 'outside+root'],
    ['broken wheel: outside and root; mate: all four', 'outside+root', 'all four'],
    ['broken wheel: count alone; mate: all four', undefined, 'all four'],
  ] as const) {
    if (pairs > 0) reportPairs(title, set, mateSet, pairs);
  }
  if (lost > 0) reportLost(lost);
  reportSpeed(brief ? 2 : 24);
}

interface Tally {
  right: number;
  certain: number;
  wrong: number;
  log: number;
  readonly bins: { count: number; stated: number; right: number }[];
}

const blankTally = (): Tally => ({
  right: 0,
  certain: 0,
  wrong: 0,
  log: 0,
  bins: Array.from({ length: 5 }, () => ({ count: 0, stated: 0, right: 0 })),
});

const binOf = (stated: number): number =>
  stated < 0.5 ? 0 : stated < 0.8 ? 1 : stated < 0.95 ? 2 : stated < 0.99 ? 3 : 4;
const binNames = ['under 50 %', '50–80 %', '80–95 %', '95–99 %', '99 % and more'];

function countIn(
  tally: Tally,
  stated: number,
  isRight: boolean,
  chanceOfTruth: number,
  verdict: string,
): void {
  if (isRight) tally.right++;
  if (verdict === 'certain') {
    tally.certain++;
    if (!isRight) tally.wrong++;
  }
  tally.log -= Math.log2(Math.max(1e-4, chanceOfTruth));
  const bin = tally.bins[binOf(stated)];
  bin.count++;
  bin.stated += stated;
  if (isRight) bin.right++;
}

function tell(name: string, tally: Tally, cases: number): void {
  const bins = tally.bins.flatMap(({ count, stated, right }, k) =>
    count === 0
      ? []
      : [
          `${binNames[k]} (${count}) ${((100 * stated) / count).toFixed(1)}/${((100 * right) / count).toFixed(1)}`,
        ],
  );
  console.log(
    `    ${name}: right ${((100 * tally.right) / cases).toFixed(1)} %, certain ${tally.certain} of which wrong ${tally.wrong}, ${(tally.log / cases).toFixed(3)} bits short of the truth; stated/true: ${bins.join(', ')}`,
  );
}

function reportPairs(title: string, set: ReadingSet | undefined, mateSet: ReadingSet, cases: number): void {
  const random = startRandom(20261126);
  const world = openWorld();
  const tallies = [blankTally(), blankTally(), blankTally()];
  let checksum = 0;
  for (let i = 0; i < cases; i++) {
    const wheel = drawFrom(world, random);
    const mate = drawMate(world, wheel, random);
    const measured = measureWheel(wheel, set ?? 'outside', random, true);
    const a = {
      ...measured,
      id: 'a',
      readings: set === undefined ? measured.readings.slice(0, 1) : measured.readings,
    };
    const b = { ...measureWheel(mate, mateSet, random, true), id: 'b' };
    const distance = readDistance(drawDistance(wheel, mate, random), random, true);
    const answers: Identity[] = [
      identifyWheel(a),
      openJoint(chainDrive([a, b], [undefined]))('a'),
      openJoint(chainDrive([a, b], [distance]))('a'),
    ];
    answers.forEach((answer, k) => {
      const { stated, isRight, chance } = judgeSize(answer, wheel);
      countIn(tallies[k], stated, isRight, chance, answer.verdict);
      checksum += stated;
    });
  }
  console.log(`  ${title} (${cases}), checksum ${checksum.toFixed(6)}`);
  tell('alone', tallies[0], cases);
  tell('with the mate', tallies[1], cases);
  tell('with the mate and the distance', tallies[2], cases);
}

function judgeSize(
  answer: Identity,
  wheel: DrawnWheel,
): { stated: number; isRight: boolean; chance: number } {
  const truth = nameSize(wheel.system, wheel.size);
  const [lead] = answer.pitch;
  const own = answer.pitch.find((one) => nameSize(one.system, one.size) === truth);
  return {
    stated: lead?.probability ?? 0,
    isRight: lead !== undefined && nameSize(lead.system, lead.size) === truth,
    chance: own?.probability ?? 0,
  };
}

/** Size and count of a wheel that is lost between two measured neighbors, with one distance and with both. */
function reportLost(cases: number): void {
  const random = startRandom(77);
  const world = openWorld();
  const tallies = [blankTally(), blankTally()];
  let checksum = 0;
  for (let i = 0; i < cases; i++) {
    const left = drawFrom(world, random);
    const gone = drawLost(left, random);
    const right = drawMate(world, gone, random);
    const a = { ...measureWheel(left, 'all four', random, true), id: 'a' };
    const c = { ...measureWheel(right, 'all four', random, true), id: 'c' };
    const b = { ...a, id: 'b', state: 'lost' as const, readings: [] };
    const one = readDistance(drawDistance(left, gone, random), random, true);
    const two = readDistance(drawDistance(gone, right, random), random, true);
    [undefined, two].forEach((second, k) => {
      const answer = openJoint(chainDrive([a, b, c], [one, second], ['b']))('b');
      const isIt = (candidate: Identity['candidates'][number]): boolean =>
        candidate.teeth === gone.teeth &&
        nameSize(candidate.system, candidate.size) === nameSize(gone.system, gone.size);
      const sums = new Map<string, number>();
      for (const candidate of answer.candidates) {
        const key = `${nameSize(candidate.system, candidate.size)} ${candidate.teeth}`;
        sums.set(key, (sums.get(key) ?? 0) + candidate.probability);
      }
      const [lead] = [...sums].sort((x, y) => y[1] - x[1]);
      const truth = `${nameSize(gone.system, gone.size)} ${gone.teeth}`;
      const chance = answer.candidates
        .filter(isIt)
        .reduce((sum, candidate) => sum + candidate.probability, 0);
      countIn(tallies[k], lead?.[1] ?? 0, lead?.[0] === truth, chance, answer.verdict);
      checksum += lead?.[1] ?? 0;
    });
  }
  console.log(
    `  a wheel lost between two neighbors with all four readings (${cases}), its size and count, checksum ${checksum.toFixed(6)}`,
  );
  tell('one distance', tallies[0], cases);
  tell('both distances', tallies[1], cases);
}

function reportSpeed(count: number): void {
  const random = startRandom(9);
  const world = openWorld();
  const drives = Array.from({ length: count }, () => drawDrive(world, random));
  // The machine's own pace, so that milliseconds can be read across machines.
  const start = performance.now();
  let sum = 0;
  for (let k = 0; k < 1e6; k++) sum += Math.exp(-k * 1e-6);
  const pace = performance.now() - start;
  console.log(`  beside a million exponentials ${pace.toFixed(1)} ms (${sum.toFixed(0)})`);
  for (const [name, work] of [
    ['one wheel alone', (drive: (typeof drives)[number]) => identifyWheel(drive.a)],
    ['the same with its mate and the distance', (drive) => openJoint(drive.pair)('a')],
    ['a wheel lost between two', (drive) => openJoint(drive.lost)('b')],
  ] as const satisfies readonly (readonly [string, (drive: (typeof drives)[number]) => unknown])[]) {
    for (const drive of drives) work(drive);
    const times = drives
      .map((drive) => {
        const start = performance.now();
        work(drive);
        return performance.now() - start;
      })
      .sort((a, b) => a - b);
    const at = (part: number): string => times[Math.floor(part * (times.length - 1))].toFixed(1);
    console.log(`  ${name}, all gains: median ${at(0.5)} ms, 95th percentile ${at(0.95)} ms`);
  }
}

function drawDrive(world: ReturnType<typeof openWorld>, random: Random) {
  const left = drawFrom(world, random);
  const gone = drawLost(left, random);
  const right = drawMate(world, gone, random);
  const a = { ...measureWheel(left, 'outside+root', random, true), id: 'a' };
  const c = { ...measureWheel(right, 'all four', random, true), id: 'c' };
  const b = { ...a, id: 'b', state: 'lost' as const, readings: [] };
  const distance = readDistance(drawDistance(left, right, random), random, true);
  const one = readDistance(drawDistance(left, gone, random), random, true);
  const two = readDistance(drawDistance(gone, right, random), random, true);
  return { a, pair: chainDrive([a, c], [distance]), lost: chainDrive([a, b, c], [one, two], ['b']) };
}
