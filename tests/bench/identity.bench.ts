import { pitchSizes } from '../../gear-library/pitch-series.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { identifyWheel } from '../../src/readings/identify-wheel.ts';
import type { Damage, WheelEvidence } from '../../src/readings/wheel-evidence.ts';
import { type DrawnWheel, drawNarrowWheel, drawWheel, measureWheel, type ReadingSet } from './draw-wheels.ts';
import { weighByQuadrature } from './weigh-by-quadrature.ts';

const sets: readonly ReadingSet[] = ['outside', 'outside+root', 'outside+span', 'two spans', 'all four'];

/** Cases a reading set, and of those, how many the (slow) quadrature is run on: `bench -- identity 5000 200`. */
export function run(brief: boolean, args: readonly string[]): void {
  const cases = brief ? 4 : Number(args[0] ?? 5000);
  const paired = brief ? 0 : Number(args[1] ?? 60);
  console.log(
    `identity: ${cases} wheels a set drawn from the product's prior, z 7–100, default uncertainties, slips at their rates`,
  );
  for (const set of sets) report(set, cases, paired, (random) => drawWheel(random), []);
  console.log('a second, narrower generator: modules 0.3–1 and 32, 48, 64 DP, 20° and 14.5°, little wear');
  for (const set of ['outside+root', 'all four'] as const) report(set, cases, paired, drawNarrowWheel, []);
  const worn: Damage[] = [{ kind: 'worn' }];
  console.log('worn wheels, said to be worn');
  report('all four', cases, 0, (random) => drawWheel(random, worn), worn);
  reportSlips(brief ? 6 : Math.min(1000, cases));
  reportSpeed(brief ? 5 : 60);
}

function report(
  set: ReadingSet,
  cases: number,
  paired: number,
  draw: (random: ReturnType<typeof startRandom>) => DrawnWheel,
  damage: readonly Damage[],
): void {
  const random = startRandom(20261125);
  const bins = Array.from({ length: 10 }, () => ({ count: 0, stated: 0, right: 0 }));
  let right = 0;
  let rule = 0;
  let certain = 0;
  let certainWrong = 0;
  let ceiling = 0;
  let mine = 0;
  let differ = 0;
  let checksum = 0;
  for (let i = 0; i < cases; i++) {
    const wheel = draw(random);
    const evidence = { ...measureWheel(wheel, set, random, true), damage };
    const identity = identifyWheel(evidence);
    const top = identity.pitch[0];
    const name = top ? (top.system === 'free' ? 'free' : `${top.system} ${top.size}`) : 'none';
    const truth = nameOf(wheel);
    const isRight = name === truth;
    if (isRight) right++;
    if (plainRule(evidence) === truth) rule++;
    if (identity.verdict === 'certain') {
      certain++;
      if (!isRight) certainWrong++;
    }
    const bin = bins[Math.min(9, Math.floor((top?.probability ?? 0) * 10))];
    bin.count++;
    bin.stated += top?.probability ?? 0;
    if (isRight) bin.right++;
    checksum += top?.probability ?? 0;
    if (i < paired) {
      const exact = [...weighByQuadrature(evidence)].reduce((best, entry) =>
        entry[1] > best[1] ? entry : best,
      );
      if (exact[0] === truth) ceiling++;
      if (isRight) mine++;
      if ((exact[0] === truth) !== isRight) differ++;
    }
  }
  const percent = (part: number, of: number): string => `${((100 * part) / of).toFixed(1)} %`;
  console.log(
    `  ${set}: right ${percent(right, cases)}, plain rule ${set === 'two spans' ? 'n/a' : percent(rule, cases)}, certain ${certain} of which wrong ${certainWrong}, checksum ${checksum.toFixed(6)}`,
  );
  if (paired > 0) {
    const error = (100 * Math.sqrt(differ)) / paired;
    console.log(
      `    on ${paired} of them: product ${percent(mine, paired)}, quadrature ${percent(ceiling, paired)}, paired standard error ${error.toFixed(2)} points`,
    );
  }
  console.log(
    `    stated/true by tenths: ${bins
      .map((bin, k) =>
        bin.count === 0
          ? ''
          : `${k * 10}%+ (${bin.count}) ${(bin.stated / bin.count).toFixed(3)}/${(bin.right / bin.count).toFixed(3)}`,
      )
      .filter((text) => text !== '')
      .join(', ')}`,
  );
}

function nameOf(wheel: DrawnWheel): string {
  return wheel.system === 'free' ? 'free' : `${wheel.system} ${wheel.size}`;
}

/** m = OD/(z + 2), snapped to the nearest size of the full series. */
function plainRule(evidence: WheelEvidence): string {
  const teeth = evidence.readings.find((reading) => reading.of === 'teeth');
  const outside = evidence.readings.find((reading) => reading.of === 'outside');
  if (!teeth || !outside || !('mm' in outside) || typeof outside.mm !== 'number' || !('count' in teeth))
    return '';
  const module = outside.mm / ((teeth.count ?? 0) + 2);
  const nearest = pitchSizes.reduce((best, size) =>
    Math.abs(Math.log(size.module / module)) < Math.abs(Math.log(best.module / module)) ? size : best,
  );
  return `${nearest.system} ${nearest.size}`;
}

/** One slip of 6 deviations or more among outside, root and two spans. */
function reportSlips(draws: number): void {
  const random = startRandom(606);
  let right = 0;
  let first = 0;
  for (let i = 0; i < draws; i++) {
    const wheel = drawWheel(random);
    const evidence = measureWheel(wheel, 'all four', random, false);
    const at = 1 + random.index([1, 1, 1, 1]);
    const size = (6 + 14 * random.uniform()) * (at === 2 ? 0.055 : 0.03) * (random.uniform() < 0.5 ? -1 : 1);
    const readings = evidence.readings.map((reading, k) =>
      k === at && 'mm' in reading ? { ...reading, mm: Number(reading.mm) + size } : reading,
    );
    const identity = identifyWheel({ ...evidence, readings } as WheelEvidence);
    const top = identity.pitch[0];
    if (top && (top.system === 'free' ? 'free' : `${top.system} ${top.size}`) === nameOf(wheel)) right++;
    if (identity.suspect[0]?.reading === at) first++;
  }
  console.log(
    `  one slip of 6 to 20 deviations among four, ${draws} draws: right size ${((100 * right) / draws).toFixed(1)} %, slip first suspect ${((100 * first) / draws).toFixed(1)} %`,
  );
}

function reportSpeed(count: number): void {
  const random = startRandom(5);
  const counted = Array.from({ length: count }, () =>
    measureWheel(drawWheel(random), 'all four', random, true),
  );
  const uncertain = counted.map((evidence) => ({
    ...evidence,
    readings: evidence.readings.map((reading) =>
      reading.of === 'teeth' && 'count' in reading && reading.count !== undefined
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
