import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { startRandom } from '../../src/numeric/random.ts';
import type { Fraction } from '../../src/trains/fraction.ts';
import { parseRatio } from '../../src/trains/parse-ratio.ts';
import { type CostedChoice, searchFront } from '../../src/trains/search-front.ts';
import { type PostChoice, searchPosts } from '../../src/trains/search-posts.ts';
import { finishSearch } from './finish-search.ts';
import { compareLists, compareMisses } from './try-all-trains.ts';

interface Tried extends Fraction {
  readonly picks: readonly number[];
  readonly drivers: readonly number[];
  readonly driven: readonly number[];
  readonly newWheels: number;
  readonly teeth: number;
  readonly costs: readonly number[];
}

/** Every train that the posts allow, by counting through them. */
function tryAllPosts(
  posts: readonly (readonly (PostChoice & { costs?: readonly number[] })[])[],
  wanted: Fraction,
  tolerance: number,
  criteria: readonly ('sum' | 'greatest')[] = [],
): Tried[] {
  let picks: number[][] = [[]];
  for (const choices of posts) picks = picks.flatMap((some) => choices.map((_, k) => [...some, k]));
  const trains: Tried[] = [];
  for (const one of picks) {
    const chosen = one.map((pick, post) => posts[post][pick]);
    const takes = chosen.flatMap((choice) => choice.takes ?? []);
    if (new Set(takes).size < takes.length) continue;
    const drivers = chosen.map(({ driver }) => driver);
    const driven = chosen.map((choice) => choice.driven);
    const num = driven.reduce((product, count) => product * BigInt(count), 1n);
    const den = drivers.reduce((product, count) => product * BigInt(count), 1n);
    const off = Number(num * wanted.den - den * wanted.num) / Number(den * wanted.num);
    if (Math.abs(off) > tolerance) continue;
    const costs = criteria.map((criterion, c) => {
      const all = chosen.map((choice) => choice.costs?.[c] ?? 0);
      return criterion === 'sum' ? all.reduce((sum, cost) => sum + cost, 0) : Math.max(...all);
    });
    const newWheels = new Set(chosen.flatMap((choice) => choice.newWheels)).size;
    const teeth = [...drivers, ...driven].reduce((sum, count) => sum + count, 0);
    trains.push({ num, den, picks: one, drivers, driven, newWheels, teeth, costs });
  }
  return trains;
}

const choices = fc.record({
  driver: fc.integer({ min: 8, max: 24 }),
  driven: fc.integer({ min: 8, max: 24 }),
  newWheels: fc.uniqueArray(fc.constantFrom('a', 'b', 'c', 'd', 'e'), { maxLength: 2 }),
  takes: fc.uniqueArray(fc.constantFrom('p', 'q', 'r'), { maxLength: 1 }),
  costs: fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 3 })),
});
const allPosts = fc.array(fc.array(choices, { minLength: 1, maxLength: 6 }), { minLength: 1, maxLength: 4 });
const wanteds = fc
  .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 12 }))
  .map(([num, den]): Fraction => ({ num: BigInt(num), den: BigInt(den) }));
const tolerances = fc.constantFrom(0.05, 0.5, 0.9);

describe('with the shafts where they are', () => {
  test('trying every train gives the same list, in the same order', () => {
    fc.assert(
      fc.property(allPosts, wanteds, tolerances, (posts, wanted, tolerance) => {
        const answer = finishSearch(searchPosts({ wanted, posts, top: 7, tolerance }));
        const tried = tryAllPosts(posts, wanted, tolerance).sort(
          (a, b) =>
            compareMisses(a, b, wanted) ||
            a.newWheels - b.newWheels ||
            a.teeth - b.teeth ||
            compareLists(a.drivers, b.drivers) ||
            compareLists(a.driven, b.driven) ||
            compareLists(a.picks, b.picks),
        );
        expect(answer.proven).toBe(true);
        expect(answer.trains.map((train) => train.choices)).toEqual(
          tried.slice(0, 7).map(({ picks }) => picks.map((pick, post) => posts[post][pick])),
        );
      }),
      { numRuns: 150, seed: 6 },
    );
  });

  test('a post with one choice is a pair that stays; a post without any leaves no train', () => {
    const stays = { driver: 12, driven: 48, newWheels: [] };
    const free = [20, 25, 30].map((driven) => ({ driver: 10, driven, newWheels: [`new ${driven}`] }));
    const question = { wanted: parseRatio('10'), posts: [[stays], free], top: 1 };
    expect(finishSearch(searchPosts(question)).trains[0]).toMatchObject({
      choices: [stays, free[1]],
      ratio: { num: 10, den: 1 },
      errorRelative: 0,
      newWheels: 1,
    });
    expect(finishSearch(searchPosts({ ...question, posts: [[stays], []] }))).toMatchObject({
      proven: true,
      trains: [],
    });
  });

  test('eight posts whose products are beyond 2^53 keep exact order', () => {
    const posts = Array.from({ length: 8 }, (_, post) =>
      [0, 1, 2].map((k) => ({ driver: 1800 + 7 * post + k, driven: 1900 + 5 * post - k, newWheels: [] })),
    );
    const wanted = parseRatio('1.5');
    const tried = tryAllPosts(posts, wanted, 1).sort(
      (a, b) => compareMisses(a, b, wanted) || a.teeth - b.teeth || compareLists(a.drivers, b.drivers),
    );
    const { trains } = finishSearch(searchPosts({ wanted, posts, top: 5 }));
    expect(trains.map((train) => train.choices)).toEqual(
      tried.slice(0, 5).map(({ picks }) => picks.map((pick, post) => posts[post][pick])),
    );
  });

  test('60 stock wheels of three modules on three center distances: proven, and few of the trains visited', () => {
    // Invented stock: 20 counts in each of modules 0.5, 0.8 and 1; pairs that come within 0.4 mm of the distance.
    const counts = [10, 12, 14, 15, 16, 18, 20, 22, 24, 25, 28, 30, 32, 36, 40, 45, 48, 50, 56, 60];
    const posts = [15, 20.3, 26].map((distance) =>
      [0.5, 0.8, 1].flatMap((module) =>
        counts.flatMap((driver) =>
          counts
            .filter((driven) => Math.abs((module * (driver + driven)) / 2 - distance) < 0.4)
            .map((driven) => ({
              driver,
              driven,
              module,
              newWheels: [`${module} ${driver}`, `${module} ${driven}`],
            })),
        ),
      ),
    );
    const wanted = parseRatio('7.31');
    const { proven, trains, visited, space } = finishSearch(searchPosts({ wanted, posts, top: 10 }));
    const tried = tryAllPosts(posts, wanted, 1).sort(
      (a, b) =>
        compareMisses(a, b, wanted) ||
        a.newWheels - b.newWheels ||
        a.teeth - b.teeth ||
        compareLists(a.drivers, b.drivers) ||
        compareLists(a.driven, b.driven) ||
        compareLists(a.picks, b.picks),
    );
    expect(proven).toBe(true);
    expect(space).toBeGreaterThan(10_000);
    expect(trains.map((train) => train.choices)).toEqual(
      tried.slice(0, 10).map(({ picks }) => picks.map((pick, post) => posts[post][pick])),
    );
    expect(visited).toBeLessThan(space / 4);
  });
});

describe('the front of trade-offs', () => {
  test('holds what no train beats, and nothing else', () => {
    const criteria = ['sum', 'greatest'] as const;
    fc.assert(
      fc.property(allPosts, wanteds, tolerances, (posts, wanted, tolerance) => {
        const { proven, trains } = finishSearch(searchFront({ wanted, posts, tolerance, criteria }));
        const tried = tryAllPosts(posts, wanted, tolerance, criteria);
        const isNoWorse = (a: Tried, b: Tried): boolean =>
          compareMisses(a, b, wanted) <= 0 && a.costs.every((cost, c) => cost <= b.costs[c]);
        const unbeaten = tried.filter((one) => !tried.some((a) => isNoWorse(a, one) && !isNoWorse(one, a)));
        const kept = unbeaten
          .filter((one) =>
            unbeaten.every(
              (a) =>
                a === one ||
                !isNoWorse(a, one) ||
                one.teeth < a.teeth ||
                (one.teeth === a.teeth && compareLists(one.picks, a.picks) < 0),
            ),
          )
          .sort((a, b) => compareMisses(a, b, wanted) || compareLists(a.costs, b.costs));
        expect(proven).toBe(true);
        expect(trains.map((train) => [train.costs, train.choices])).toEqual(
          kept.map(({ costs, picks }) => [costs, picks.map((pick, post) => posts[post][pick])]),
        );
      }),
      { numRuns: 150, seed: 7 },
    );
  });

  test('of 3.4 million trains it is small, and the same however the lists are ordered', () => {
    const random = startRandom(11);
    const count = (): number => 12 + Math.floor(60 * random.uniform());
    const posts = [0, 1, 2].map(() =>
      Array.from(
        { length: 150 },
        (): CostedChoice => ({
          driver: count(),
          driven: count(),
          newWheels: [],
          costs: [Math.floor(3 * random.uniform()), Math.floor(10 * random.uniform())],
        }),
      ),
    );
    const criteria = ['sum', 'greatest'] as const;
    const wanted = parseRatio('4.77');
    const one = finishSearch(searchFront({ wanted, posts, tolerance: 0.001, criteria }));
    const turned = posts.map((list) => [...list].reverse());
    const other = finishSearch(searchFront({ wanted, posts: turned, tolerance: 0.001, criteria }));
    expect(one.space).toBe(150 ** 3);
    expect(one.trains.length).toBeGreaterThan(3);
    expect(one.trains.length).toBeLessThan(60);
    const tell = (answer: typeof one): unknown => answer.trains.map(({ costs, ratio }) => [costs, ratio]);
    expect(tell(other)).toEqual(tell(one));
  });

  test('can be stopped', () => {
    const posts = [[{ driver: 10, driven: 20, newWheels: [], costs: [1] }]];
    const search = searchFront({ wanted: parseRatio('2'), posts, tolerance: 0.1, criteria: ['sum'] });
    search.next();
    const { done, value } = search.next('stop');
    expect([done, value]).toMatchObject([true, { proven: false, trains: [] }]);
  });
});
