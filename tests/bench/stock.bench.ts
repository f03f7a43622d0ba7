import { parseParts } from '../../src/job/parse-parts.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { rollPair } from '../../src/rolling/roll-pair.ts';
import { matchStock, type StockMatch } from '../../src/stock/match-stock.ts';
import type { Need, Roll } from '../../src/stock/need.ts';
import { indexParts, type StockIndex } from '../../src/stock/stock-index.ts';
import { makeSpec } from '../involute/make-spec.ts';

/**
 * A drawer of so many parts read from CSV, and one wheel matched against it: without rolling, held against a plain pass
 * over all parts that compares teeth and size alone; and with the proofs. Time is never asserted.
 */
export async function run(brief: boolean): Promise<void> {
  const rows = brief ? 2000 : 100_000;
  const rounds = brief ? 1 : 7;
  console.log(`stock: ${rows} rows of an invented drawer (seed 7), ${rounds} rounds each`);
  for (const share of [1, 0.1]) {
    const text = draw(rows * share, 7);
    let count = 0;
    const load = measure(rounds, () => {
      count = parseParts(text).parts.length;
    });
    console.log(`  load ${rows * share} rows: ${load}; ${count} parts`);
  }
  const { parts } = parseParts(draw(rows, 7));
  let index: StockIndex | undefined;
  const indexing = measure(rounds, () => {
    index = indexParts(parts);
  });
  if (!index) throw new Error('no index');
  console.log(`  index: ${indexing}; ${index.length} rows, one a part and possible size`);
  const stock = index;
  let matched: StockMatch | undefined;
  const matching = measure(rounds, () => {
    matched = runToEnd(makeNeed(), stock, never);
  });
  let same = 0;
  const plain = measure(rounds, () => {
    same = parts.filter(({ teeth, sizes }) => teeth === 60 && Math.abs(sizes[0].module - 0.5) < 1e-9).length;
  });
  console.log(`  match by numbers, mate known: ${matching}; checksum ${JSON.stringify(matched?.found)}`);
  console.log(`  plain pass, teeth and size alone: ${plain}; ${same} parts`);
  const proving = measure(brief ? 1 : 3, () => {
    matched = runToEnd(makeNeed(), stock, roll);
  });
  console.log(
    `  match with its proofs: ${proving}; ${matched?.rolled} toothings rolled of ${matched?.worthRolling}`,
  );
}

const roll: Roll = (driver, driven, at) =>
  rollPair(driver, driven, at, { distances: 3, seeksDistance: false });

/** A proof that costs nothing, so that the rest can be timed. */
const never: Roll = () => proof;
const proof: ReturnType<Roll> = {
  verdict: 'turns',
  reasons: [],
  mean: {
    centerDistance: 19.05,
    isFree: true,
    workingPressureAngle: undefined,
    contactRatio: 1.5,
    backlashLeast: 0.05,
    backlashGreatest: 0.05,
    tightestAt: 0,
    transmissionError: 0,
    interference: [],
    curve: { driverAngle: new Float64Array(0), low: new Float64Array(0), high: new Float64Array(0) },
  },
  range: [],
  freeFrom: undefined,
  smoothFrom: undefined,
  cycle: { of: 'one-pitch', meetings: 1 },
};

function runToEnd(need: Need, index: StockIndex, by: Roll): StockMatch {
  const search = matchStock(need, index, by);
  let step = search.next();
  while (!step.done) step = search.next();
  return step.value;
}

function makeNeed(): Need {
  return {
    wheelId: 'w',
    spec: makeSpec({ teeth: 60, module: 0.5 }),
    isSure: true,
    mates: [
      {
        id: 'p',
        wheel: { spec: makeSpec({ teeth: 16, module: 0.5 }) },
        isDriver: true,
        centerDistance: 19.05,
        uncertainty: 0.02,
        isMeasured: true,
      },
    ],
    shaft: 3,
    bore: undefined,
    faceWidth: 4,
    overallLength: undefined,
    isJoined: false,
    notes: [],
    speedWith: (count) => ({ changePercent: (60 / count - 1) * 100, errorPercent: null, isWithin: null }),
  };
}

/** Sizes as drawers have them; a third of the rows with the outside alone, a tenth with decimal commas and units. */
function draw(rows: number, seed: number): string {
  const { uniform } = startRandom(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(uniform() * list.length)];
  const lines = ['teeth;size;OD;bore;width;material;where kept;price'];
  for (let k = 0; k < rows; k++) {
    const teeth = 8 + Math.floor(uniform() * 90);
    const [size, module] = pick([
      ['0.5', 0.5],
      ['0.4', 0.4],
      ['0.3', 0.3],
      ['0,6', 0.6],
      ['0.8', 0.8],
      ['1', 1],
      ['48 DP', 25.4 / 48],
      ['64 DP', 25.4 / 64],
      ['32 DP', 25.4 / 32],
    ] as const);
    const outside = (module * (teeth + 2) + 0.05 * (uniform() - 0.7)).toFixed(2);
    const bore = pick(['1', '1.5', '2', '2,3', '3', '4 mm', '1/8 in', '5', '']);
    const kind = uniform();
    lines.push(
      `${teeth};${kind < 0.33 ? '' : size};${kind < 0.66 ? outside : ''};${bore};${2 + Math.floor(uniform() * 8)};${pick(['POM', 'brass', 'steel', ''])};tin ${Math.floor(uniform() * 300)};${(uniform() * 5).toFixed(2)}`,
    );
  }
  return lines.join('\n');
}

/** Wall time, and the processor time that it took (all threads), which a busy machine does not stretch. */
function measure(rounds: number, work: () => void): string {
  const times: number[] = [];
  const before = process.cpuUsage();
  for (let k = 0; k < rounds; k++) {
    const start = performance.now();
    work();
    times.push(performance.now() - start);
  }
  const used = process.cpuUsage(before);
  const cpu = (used.user + used.system) / 1000 / rounds;
  times.sort((a, b) => a - b);
  const [least, median, most] = [times[0], times[times.length >> 1], times[times.length - 1]];
  return `median ${median.toFixed(1)} ms (${least.toFixed(1)} to ${most.toFixed(1)}), processor ${cpu.toFixed(1)} ms`;
}
