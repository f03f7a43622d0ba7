import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { rollPair } from '../../src/rolling/roll-pair.ts';
import { makeSpec } from '../involute/make-spec.ts';
import { type CutWheel, cutWheel, findFreeAngles } from '../rolling/roll-polygons.ts';

const seed = 4;

interface Pair {
  readonly one: GearSpec;
  readonly two: GearSpec;
  readonly mm: number;
}

/**
 * What a proof costs, beside the method it is tested by: polygons of a stepped cutter, rolled by bisection on their
 * overlap (as many positions, cutting not counted). Time is never asserted.
 */
export async function run(brief: boolean): Promise<void> {
  const rounds = brief ? 3 : 60;
  const random = startRandom(seed);
  const draw = (two: number): Pair => {
    const z1 = 10 + Math.floor(random.uniform() * 20);
    const z2 = 15 + Math.floor(random.uniform() * 45);
    const thinning = 0.03;
    return {
      one: makeSpec({ module: 0.5, teeth: z1, thinning, rootRadius: 0.3 }),
      two: makeSpec({ module: two, teeth: z2, thinning, rootRadius: 0.3 }),
      mm: (0.5 * z1 + two * z2) / 2 + 0.1 * random.uniform(),
    };
  };
  const same = Array.from({ length: rounds }, () => draw(0.5));
  const near = Array.from({ length: rounds }, () => draw(0.505));
  const far = Array.from({ length: rounds }, () => draw(25.4 / 48));
  console.log(
    `rolling: ${rounds} pairs each, module 0.5, 10–29 and 15–59 teeth, thinned 0.03 mm, up to 0.1 mm off (seed ${seed})`,
  );
  for (const [name, pairs] of [
    ['one module', same],
    ['0.505 in 0.5', near],
    ['48 to the inch in 0.5', far],
  ] as const) {
    const counts = { turns: 0, rough: 0, jams: 0 };
    const once = measure(pairs, ({ one, two, mm }) => {
      const { verdict, mean } = rollPair({ spec: one }, { spec: two }, { mm, u: 0 });
      counts[verdict]++;
      return mean.backlashLeast;
    });
    console.log(`  ${name}, at one distance: ${once} (${JSON.stringify(counts)})`);
    const range = measure(
      pairs,
      ({ one, two, mm }) => rollPair({ spec: one }, { spec: two }, { mm, u: 0.03 }).mean.backlashLeast,
    );
    console.log(`  ${name}, over its uncertainty, 9 distances: ${range}`);
  }
  const few = same.slice(0, brief ? 1 : 8);
  const cut = new Map<Pair, readonly [CutWheel, CutWheel]>(
    few.map((pair) => [pair, [cutWheel(pair.one), cutWheel(pair.two)]]),
  );
  const polygons = measure(few, (pair) => {
    const [one, two] = cut.get(pair) ?? [cutWheel(pair.one), cutWheel(pair.two)];
    const radius = (pair.mm * two.teeth) / (one.teeth + two.teeth);
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k < 64; k++) {
      const free = findFreeAngles(one, two, pair.mm, (2 * Math.PI * k) / 64 / one.teeth);
      least = Math.min(least, free ? (free[1] - free[0]) * radius : 0);
    }
    return least;
  });
  console.log(`  by overlap of polygons, one module, one distance, ${few.length} pairs: ${polygons}`);
  for (const [z1, z2, missing, runout] of [
    [14, 30, [3], 0],
    [14, 31, [], 0.04],
    [37, 101, [], 0.04],
  ] as const) {
    const wheel = (teeth: number): GearSpec => makeSpec({ module: 0.5, teeth, thinning: 0.03 });
    let meetings = 0;
    const cycle = measure(new Array<number>(brief ? 1 : 7).fill((z1 + z2) / 4 + 0.05), (mm) => {
      const proof = rollPair(
        { spec: wheel(z1), missing, runout },
        { spec: wheel(z2), runout: runout / 2 },
        { mm, u: 0 },
        { seeksDistance: false },
      );
      meetings = proof.cycle.meetings;
      return proof.mean.backlashLeast;
    });
    const what = missing.length > 0 ? 'a tooth missing' : 'runout of both';
    console.log(`  ${z1}/${z2}, ${what}, ${meetings} meetings, one distance: ${cycle}`);
  }
}

/** Median and spread over all inputs but the first fifth, which warm up, and the sum of what came out. */
function measure<T>(inputs: readonly T[], work: (one: T) => number): string {
  const times: number[] = [];
  let sum = 0;
  for (const one of inputs) {
    const start = performance.now();
    const value = work(one);
    times.push(performance.now() - start);
    sum += value;
  }
  const warm = times.slice(Math.floor(inputs.length / 5)).sort((a, b) => a - b);
  const at = (part: number): string => warm[Math.floor(part * (warm.length - 1))].toFixed(1);
  return `median ${at(0.5)} ms (least ${at(0)}, a tenth ${at(0.1)} to ${at(0.9)}, most ${at(1)}), checksum ${sum.toFixed(5)} mm`;
}
