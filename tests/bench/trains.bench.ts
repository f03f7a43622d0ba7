import { parseRatio } from '../../src/trains/parse-ratio.ts';
import { searchFront } from '../../src/trains/search-front.ts';
import { searchPosts } from '../../src/trains/search-posts.ts';
import { searchTrains } from '../../src/trains/search-trains.ts';
import type { TrainQuestion } from '../../src/trains/train-question.ts';

/**
 * What a search for trains takes, and what it visits, against the size of its space: beside plain enumeration where that
 * ends, with the exponent by which both grow. Time is never asserted; the first place is, against enumeration.
 */
export async function run(brief: boolean): Promise<void> {
  const rounds = brief ? 1 : 9;
  console.log(`trains: best twenty, proven; median of ${rounds} rounds, warm`);
  measure("Sandgren's problem, 12 to 60", rounds, ask('1/6.931', 2, 12, 60));
  for (const ratio of ['12.5', '3.14159265358979']) {
    const points: Point[] = [];
    for (let pairs = 1; pairs <= (brief ? 3 : 4); pairs++) {
      points.push(measure(`ratio ${ratio}, ${pairs} of 12 to 120`, rounds, ask(ratio, pairs, 12, 120)));
    }
    tellGrowth(points.slice(1));
  }
  measure('reverted, ratio 12.5, 2 of 12 to 120', rounds, { ...ask('12.5', 2, 12, 120), isReverted: true });
  measure('reverted, ratio 12.5, 3 of 12 to 120', rounds, { ...ask('12.5', 3, 12, 120), isReverted: true });
  measure('hunting, ratio 12.5, 3 of 12 to 120', rounds, { ...ask('12.5', 3, 12, 120), isHunting: true });
  if (!brief) measure('ratio 3.14159265358979, 5 of 12 to 120', 1, ask('3.14159265358979', 5, 12, 120));
  for (const [pairs, to] of brief
    ? [[2, 40]]
    : ([
        [2, 40],
        [2, 80],
        [2, 120],
        [3, 24],
        [3, 30],
      ] as const)) {
    compareWithEnumeration(ask('3.14159265358979', pairs, 12, to));
  }
  measurePosts(rounds);
}

interface Point {
  readonly space: number;
  readonly visited: number;
  readonly time: number;
}

function ask(ratio: string, pairs: number, from: number, to: number): TrainQuestion {
  const counts = Array.from({ length: to - from + 1 }, (_, k) => from + k);
  return { wanted: parseRatio(ratio), pairs, counts, top: 20 };
}

function finish<Answer>(search: Generator<unknown, Answer, 'stop' | undefined>): Answer {
  let next = search.next();
  while (!next.done) next = search.next();
  return next.value;
}

function measure(name: string, rounds: number, question: TrainQuestion): Point {
  const { times, answer } = time(rounds, () => finish(searchTrains(question)));
  if (!answer.proven) throw new Error(`${name} was not proven`);
  const { visited, space } = answer;
  const checksum = answer.trains.flatMap(({ drivers, driven }) => [...drivers, ...driven]).reduce(add, 0);
  console.log(
    `  ${name}: ${tell(times)}, visited ${visited} of ${space.toExponential(2)}, checksum ${checksum}`,
  );
  return { space, visited, time: times[times.length >> 1] };
}

/** Every pair of product lists in turn: what the search is held against. */
function compareWithEnumeration(question: TrainQuestion): void {
  const { counts, pairs, wanted } = question;
  const value = Number(wanted.num) / Number(wanted.den);
  const sides = listMultisets(counts, pairs);
  const products = Float64Array.from(sides, (side) => side.reduce((product, count) => product * count, 1));
  const start = performance.now();
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < products.length; i++) {
    for (let j = 0; j < products.length; j++) {
      const part = products[j] / products[i] / value;
      const miss = part > 1 ? part : 1 / part;
      if (miss < least && !sides[i].some((count) => sides[j].includes(count))) least = miss;
    }
  }
  const plain = performance.now() - start;
  const { times, answer } = time(3, () => finish(searchTrains(question)));
  const error = answer.trains[0].errorRelative;
  const found = Math.max(1 + error, 1 / (1 + error));
  if (Math.abs(found - least) > 1e-14) throw new Error(`enumeration found ${least}, the search ${found}`);
  console.log(
    `  ${pairs} of 12 to ${counts[counts.length - 1]}: enumeration ${plain.toFixed(1)} ms for ${sides.length ** 2}, first place alone; the search ${tell(times)}, visited ${answer.visited}`,
  );
}

/** Visited and time as powers of the space, from the first point to the last. */
function tellGrowth(points: readonly Point[]): void {
  const [first, last] = [points[0], points[points.length - 1]];
  const slope = (of: (point: Point) => number): string =>
    (Math.log(of(last) / of(first)) / Math.log(last.space / first.space)).toFixed(2);
  console.log(
    `    grows as space to the power ${slope(({ visited }) => visited)} visited, ${slope((point) => point.time)} in time; enumeration to the power 1`,
  );
}

/** Three fixed distances, 60 invented stock wheels in three modules, shifts that bridge 0.4 mm and then 1.5 mm. */
function measurePosts(rounds: number): void {
  const counts = [10, 12, 14, 15, 16, 18, 20, 22, 24, 25, 28, 30, 32, 36, 40, 45, 48, 50, 56, 60];
  for (const bridged of [0.4, 1.5]) {
    const posts = [15, 20.3, 26].map((distance) =>
      [0.5, 0.8, 1].flatMap((module) =>
        counts.flatMap((driver) =>
          counts
            .filter((driven) => Math.abs((module * (driver + driven)) / 2 - distance) < bridged)
            .map((driven) => ({
              driver,
              driven,
              newWheels: [`${module}/${driver}`, `${module}/${driven}`],
              costs: [2, Math.abs((module * (driver + driven)) / 2 - distance), module],
            })),
        ),
      ),
    );
    const wanted = parseRatio('7.31');
    const sizes = posts.map(({ length }) => length).join(' × ');
    const best = time(rounds, () => finish(searchPosts({ wanted, posts, top: 20 })));
    const sum = best.answer.trains.map(({ teeth }) => teeth).reduce(add, 0);
    console.log(
      `  three fixed distances, ${sizes} pairs: ${tell(best.times)}, visited ${best.answer.visited} of ${best.answer.space}, proven ${best.answer.proven}, checksum ${sum}`,
    );
    const criteria = ['sum', 'greatest', 'sum'] as const;
    const front = time(rounds, () => finish(searchFront({ wanted, posts, tolerance: 0.01, criteria })));
    console.log(
      `    its front of error and three costs within 1 %: ${tell(front.times)}, ${front.answer.trains.length} trains, visited ${front.answer.visited}`,
    );
  }
}

function time<Answer>(rounds: number, work: () => Answer): { times: number[]; answer: Answer } {
  const begin = performance.now();
  let answer = work();
  // Short work is warm only after some rounds.
  for (let round = 0; round < 20 && performance.now() - begin < warmUp; round++) answer = work();
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    answer = work();
    times.push(performance.now() - start);
  }
  return { times: times.sort((a, b) => a - b), answer };
}

const warmUp = 100;

function tell(times: readonly number[]): string {
  const at = (part: number): string => times[Math.floor(part * (times.length - 1))].toFixed(1);
  return `median ${at(0.5)} ms (${at(0)} to ${at(1)})`;
}

function add(a: number, b: number): number {
  return a + b;
}

function listMultisets(counts: readonly number[], size: number): number[][] {
  if (size === 0) return [[]];
  return counts.flatMap((count, k) =>
    listMultisets(counts.slice(k), size - 1).map((others) => [count, ...others]),
  );
}
