import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { crossProducts } from '../../src/trains/cross-products.ts';
import { aimAt } from '../../src/trains/fraction.ts';
import { keepBest } from '../../src/trains/keep-best.ts';
import { parseRatio } from '../../src/trains/parse-ratio.ts';
import { searchFree } from '../../src/trains/search-free.ts';
import { type FoundTrain, searchTrains } from '../../src/trains/search-trains.ts';
import type { Candidate, TrainQuestion } from '../../src/trains/train-question.ts';
import { finishSearch, listRange } from './finish-search.ts';
import { gcd, listMultisets, tryAllTrains } from './try-all-trains.ts';

function ask(
  ratio: string,
  pairs: number,
  counts: readonly number[],
  more: Partial<TrainQuestion> = {},
): TrainQuestion {
  return { wanted: parseRatio(ratio), pairs, counts, top: 20, ...more };
}

function sides(trains: readonly { drivers: readonly number[]; driven: readonly number[] }[]): number[][][] {
  return trains.map(({ drivers, driven }) => [[...drivers], [...driven].sort((a, b) => a - b)]);
}

const ratios = fc.oneof(
  fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 })).map(([a, b]) => `${a}/${b}`),
  fc.double({ min: 0.05, max: 30, noNaN: true }).map((value) => value.toFixed(6)),
);
const smallQuestions = fc
  .record({
    ratio: ratios.filter((text) => Number(text) !== 0),
    pairs: fc.integer({ min: 1, max: 3 }),
    counts: fc.uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 7 }),
    top: fc.constantFrom(1, 3, 20),
    tolerance: fc.constantFrom(undefined, undefined, 0.02, 0.3),
    isReverted: fc.boolean(),
    isHunting: fc.boolean(),
    allowsIdlers: fc.boolean(),
  })
  .map(
    ({ ratio, counts, tolerance, ...rest }): TrainQuestion => ({
      wanted: parseRatio(ratio),
      counts: counts.sort((a, b) => a - b),
      ...(tolerance === undefined ? {} : { tolerance }),
      ...rest,
    }),
  );

describe('trying every train gives the same list, in the same order', () => {
  test('for any small question', () => {
    fc.assert(
      fc.property(smallQuestions, (question) => {
        const { proven, trains } = finishSearch(searchTrains(question));
        expect(proven).toBe(true);
        expect(sides(trains)).toEqual(sides(tryAllTrains(question)));
      }),
      { numRuns: 120, seed: 4 },
    );
  });

  test('for two pairs of 12 to 24 teeth and ratios a/b up to 12', () => {
    for (let a = 1; a <= 12; a++) {
      for (let b = 1; b <= 12; b++) {
        if (gcd(a, b) > 1 || (a + b) % 3 !== 0) continue;
        const question = ask(`${a}/${b}`, 2, listRange(12, 24));
        const { trains } = finishSearch(searchTrains(question));
        expect(sides(trains), `${a}/${b}`).toEqual(sides(tryAllTrains(question)));
      }
    }
  });

  test('where products are a list times a list, taken in short runs', () => {
    fc.assert(
      fc.property(smallQuestions, fc.integer({ min: 20, max: 400 }), (small, mostInRun) => {
        const question = { ...small, isReverted: false, pairs: Math.max(2, small.pairs) };
        expect(sides(searchCrossed(question, mostInRun))).toEqual(sides(tryAllTrains(question)));
      }),
      { numRuns: 120, seed: 5 },
    );
  });

  test('where products are beyond 2^53', () => {
    const question = ask('1.0001', 6, [1861, 1867, 1871, 1873], { top: 10 });
    const { proven, trains } = finishSearch(searchTrains(question));
    expect(proven).toBe(true);
    expect(sides(trains)).toEqual(sides(tryAllTrains(question)));
    expect(sides(searchCrossed(question, 30))).toEqual(sides(tryAllTrains(question)));
  });
});

function searchCrossed(question: TrainQuestion, mostInRun: number): readonly Candidate[] {
  const wanted = aimAt(question.wanted);
  const best = keepBest<Candidate>(wanted, question.top, question.tolerance);
  const products = crossProducts(question.counts, question.pairs);
  let searched = 0;
  for (const stride of searchFree(question, wanted, best, products, mostInRun)) searched = stride.searched;
  expect(searched).toBe(1);
  return best.list();
}

describe('published trains are found or beaten', () => {
  test("Sandgren's gear train, proven", () => {
    // Sandgren, Nonlinear integer and discrete programming in mechanical design, 1990; GEAR in the GAMS model library:
    // four gears of 12 to 60 teeth, 1/6.931; best known squared error 2.700857e-12 with 16, 19 over 43, 49.
    const { proven, trains } = finishSearch(searchTrains(ask('1/6.931', 2, listRange(12, 60))));
    expect(proven).toBe(true);
    expect(trains[0]).toMatchObject({ drivers: [43, 49], driven: [16, 19], ratio: { num: 304, den: 2107 } });
    expect((1 / 6.931 - 304 / 2107) ** 2).toBeCloseTo(2.700857e-12, 18);
    expect(trains[0].errorRelative).toBeCloseTo((304 / 2107) * 6.931 - 1, 12);
  });

  test('12.5 has 266,006 exact trains of three pairs of 12 to 120 teeth before any cancel', () => {
    // The count is the project's own statement; counted here without the search.
    const ways = new Map<number, number>();
    for (const [a, b, c] of listMultisets(listRange(12, 120), 3)) {
      ways.set(a * b * c, (ways.get(a * b * c) ?? 0) + 1);
    }
    let exact = 0;
    for (const [product, count] of ways) exact += count * (ways.get(12.5 * product) ?? 0);
    expect(exact).toBe(266_006);
    const { trains, proven, space } = finishSearch(searchTrains(ask('12.5', 3, listRange(12, 120))));
    expect([proven, space, trains.length]).toEqual([true, 221_815 ** 2, 20]);
    for (const { errorRelative, drivers, driven } of trains) {
      expect(errorRelative).toBe(0);
      expect(driven.some((count) => drivers.includes(count))).toBe(false);
    }
  });

  test.each<[string, string, number, readonly number[], readonly (readonly [number, number])[]]>([
    // SJTU machine design slides, reverted compound train, example 2: 16/96 and 28/84.
    [
      'reverted 18',
      '18',
      2,
      listRange(16, 96),
      [
        [96, 16],
        [84, 28],
      ],
    ],
    // Shigley, examples 13-3 and 13-4 (value from memory): 30 as 88/16 squared, 30.25, or exactly as 96/16 and 80/16.
    [
      'compound 30',
      '30',
      2,
      listRange(16, 96),
      [
        [96, 16],
        [80, 16],
      ],
    ],
    // F. D. Jones, Turning and Boring: a lead of 3 mm from a screw constant of 6 threads an inch, 90 to 127.
    ['lathe, metric lead on an inch screw', '127/90', 1, listRange(20, 127), [[127, 90]]],
    // Hobby-machinist, cutting metric threads on an imperial lathe: 80/63 and 47/37 for 1.27.
    ['lathe, 1.27 without 127 teeth', '1.27', 1, listRange(20, 80), [[80, 63]]],
    // mathGUIde documentation: the moon's quarters, 18/8 and 15/8.
    [
      'moon',
      '4.218655714285714',
      2,
      listRange(8, 32),
      [
        [18, 8],
        [15, 8],
      ],
    ],
    // B. Gosper on the math-fun list, trains for a long-lived clock: Mercury's year with five pairs of up to 358 teeth;
    // here four of up to 120.
    [
      'orrery, Mercury',
      '87.96925718',
      4,
      listRange(12, 120),
      [
        [293, 12],
        [152, 107],
        [358, 295],
        [101, 67],
        [61, 44],
      ],
    ],
  ])('%s', (_, ratio, pairs, counts, published) => {
    const { proven, trains } = finishSearch(searchTrains(ask(ratio, pairs, counts, { top: 1 })));
    const found = published.reduce((product, [driven, driver]) => (product * driven) / driver, 1);
    expect(proven).toBe(true);
    expect(Math.abs(trains[0].errorRelative)).toBeLessThanOrEqual(
      Math.abs(found / Number(evaluate(ratio)) - 1) + 1e-15,
    );
  });

  test.each<[string, string, number, readonly number[], number]>([
    // B. Gosper on the math-fun list, trains for a long-lived clock, wheels of 12 to 400 teeth. The year of 365.2563554
    // days: 293/12, 152/107, 358/295, 269/31 come to 365.256355463807. Saturn: seven pairs come to 10755.6986519239.
    ['the year, four pairs of 12 to 400', '365.2563554', 4, listRange(12, 400), 365.256355463807],
    ['Saturn, five pairs of 12 to 120', '10755.69864', 5, listRange(12, 120), 10755.6986519239],
  ])('%s: beaten by the best so far, long before the end', (_, ratio, pairs, counts, published) => {
    const search = searchTrains(ask(ratio, pairs, counts, { top: 1 }));
    const goal = Math.abs(published / Number(ratio) - 1);
    let next = search.next();
    const isBeaten = (): boolean => {
      const [lead] = next.done ? next.value.trains : next.value.best().trains;
      return lead !== undefined && Math.abs(lead.errorRelative) < goal;
    };
    while (!next.done && next.value.searched < 0.1 && !isBeaten()) next = search.next();
    expect(isBeaten()).toBe(true);
    const stopped = search.next('stop');
    expect(stopped.done && stopped.value.proven).toBe(false);
  });

  test('the reverted 18 of the slides is one of the exact ones', () => {
    const question = ask('18', 2, listRange(12, 120), { isReverted: true, top: 100 });
    const { trains } = finishSearch(searchTrains(question));
    expect(sides(trains.filter(({ errorRelative }) => errorRelative === 0))).toContainEqual([
      [16, 28],
      [84, 96],
    ]);
  });
});

function evaluate(ratio: string): number {
  const [num, den = '1'] = ratio.split('/');
  return Number(num) / Number(den);
}

describe('what is asked of a train holds for each that is found', () => {
  const check = (question: TrainQuestion, holds: (train: FoundTrain) => boolean): void => {
    const { trains } = finishSearch(searchTrains(question));
    expect(trains.length).toBe(question.top);
    for (const train of trains) {
      expect(holds(train), JSON.stringify(train)).toBe(true);
      const { num, den } = train.ratio;
      const product = (counts: readonly number[]): number => counts.reduce((all, count) => all * count, 1);
      expect(num * product(train.drivers)).toBe(den * product(train.driven));
    }
  };

  test('reverted: each driver and its mate add up to the same', () => {
    check(ask('7.3', 2, listRange(12, 90), { isReverted: true }), ({ drivers, driven }) =>
      drivers.every((count, k) => count + driven[k] === drivers[0] + driven[0]),
    );
  });

  test('hunting: no driver shares a factor with its mate', () => {
    check(ask('12.5', 3, listRange(12, 90), { isHunting: true }), ({ drivers, driven }) =>
      drivers.every((count, k) => gcd(count, driven[k]) === 1),
    );
  });

  test('idlers: a ratio of 1 is had from one count throughout', () => {
    const { trains } = finishSearch(
      searchTrains(ask('1', 3, listRange(12, 60), { allowsIdlers: true, top: 2 })),
    );
    expect(trains.map(({ drivers, driven }) => [drivers, driven])).toEqual([
      [
        [12, 12, 12],
        [12, 12, 12],
      ],
      [
        [13, 13, 13],
        [13, 13, 13],
      ],
    ]);
  });

  test('a ratio turned over has its trains turned over', () => {
    const [there] = finishSearch(searchTrains(ask('6.931', 2, listRange(12, 60), { top: 1 }))).trains;
    const [back] = finishSearch(searchTrains(ask('1:6.931', 2, listRange(12, 60), { top: 1 }))).trains;
    expect([there.drivers, there.driven]).toEqual([back.driven, back.drivers]);
    expect((1 + there.errorRelative) * (1 + back.errorRelative)).toBeCloseTo(1, 14);
  });

  test('no tolerance at all lets exact trains in, and nothing else', () => {
    const exact = finishSearch(searchTrains(ask('12.5', 2, listRange(12, 60), { tolerance: 0 })));
    expect(exact.trains.length).toBeGreaterThan(0);
    expect(exact.trains.every(({ errorRelative }) => errorRelative === 0)).toBe(true);
    // 23 drives 25 is off by 4e-16, which no double tells from nothing.
    const near = ask('1.0869565217391308', 1, [23, 25], { tolerance: 0 });
    expect(finishSearch(searchTrains(near)).trains).toEqual([]);
  });

  test('a ratio out of reach gives the farthest there is', () => {
    const { trains, proven } = finishSearch(searchTrains(ask('5000', 2, listRange(12, 120), { top: 1 })));
    expect([proven, trains[0].drivers, trains[0].driven]).toEqual([true, [12, 12], [120, 120]]);
  });
});

describe('a large search', () => {
  const huge = ask('3.14159265', 8, listRange(12, 120));

  test('says its size before it starts, and can be stopped with the best so far', () => {
    const search = searchTrains(huge);
    const first = search.next();
    if (first.done) throw new Error('it ended at once');
    expect(first.value.space).toBeGreaterThan(1e15);
    expect(first.value.work).toBeGreaterThan(1e9);
    expect(first.value.visited).toBe(0);
    const stopped = search.next('stop');
    expect(stopped.done && stopped.value).toMatchObject({ proven: false, trains: [], searched: 0 });
  });

  test('counts what it visits: less than a hundred-thousandth of the space for three pairs, under a recorded bound', () => {
    const three = finishSearch(searchTrains(ask('12.5', 3, listRange(12, 120))));
    const pi = finishSearch(searchTrains(ask('3.14159265358979', 3, listRange(12, 120))));
    const sandgren = finishSearch(searchTrains(ask('1/6.931', 2, listRange(12, 60))));
    expect(three.visited).toBeLessThan(400_000);
    expect(pi.visited).toBeLessThan(400_000);
    expect(sandgren.visited).toBeLessThan(3000);
  });
});
