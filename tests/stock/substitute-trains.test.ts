import { describe, expect, test } from 'vitest';
import type { DriveModel, DriveWheel } from '../../src/drive/drive-model.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { toNumber } from '../../src/numeric/rational.ts';
import { rollPair } from '../../src/rolling/roll-pair.ts';
import { listPairChoices } from '../../src/stock/list-pair-choices.ts';
import type { WheelPool } from '../../src/stock/list-wheel-groups.ts';
import type { Roll } from '../../src/stock/need.ts';
import { type NoPlan, type PostsPlan, planPosts } from '../../src/stock/plan-posts.ts';
import { type SubstituteTrains, searchSubstituteTrains } from '../../src/stock/search-substitute-trains.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';

const roll: Roll = (driver, driven, at) =>
  rollPair(driver, driven, at, { distances: 3, seeksDistance: false });

function wheel(id: string, shaft: string, teeth: number, given: Partial<DriveWheel> = {}): DriveWheel {
  return {
    id,
    name: undefined,
    kind: 'external',
    shaft,
    part: undefined,
    post: undefined,
    teeth,
    diameterMm: undefined,
    pitchMm: undefined,
    spec: makeSpec({ teeth, module: 0.5 }),
    knownFrom: 'spec',
    worm: undefined,
    tipWearMm: 0,
    missing: [],
    runoutMm: 0,
    isLost: false,
    notes: [],
    ...given,
  };
}

/** Two pairs, 16/60 and 20/50, and a belt from 10 to 20 mm behind them: 3.75 × 2.5 × 2 = 18.75. */
function makeModel(given: Partial<DriveModel> = {}): DriveModel {
  const mesh = (driver: string, driven: string, mm: number): DriveModel['meshes'][number] => ({
    kind: 'teeth',
    driver,
    driven,
    center: { mm, uMm: 0.02 },
    carrier: undefined,
    isCrossed: false,
    slipPercent: 0,
  });
  return {
    wheels: [
      wheel('a', 'motor', 16),
      wheel('b', 'middle', 60),
      wheel('c', 'middle', 20),
      wheel('d', 'drum', 50),
      wheel('e', 'drum', 10, { kind: 'pulley', diameterMm: 10, teeth: undefined, spec: undefined }),
      wheel('f', 'reel', 20, { kind: 'pulley', diameterMm: 20, teeth: undefined, spec: undefined }),
    ],
    meshes: [mesh('a', 'b', 19.05), mesh('c', 'd', 17.55), { ...mesh('e', 'f', 40), kind: 'belt' }],
    fixed: [],
    motor: undefined,
    wanted: {
      from: 'motor',
      to: 'reel',
      ratio: 18.75,
      travelMmPerTurn: undefined,
      tolerancePercent: 1,
      direction: undefined,
    },
    notes: [],
    ...given,
  };
}

function plan(
  model: DriveModel,
  change: readonly string[],
  broken: readonly string[] = [],
): PostsPlan | NoPlan {
  return planPosts(model, new Set(change), ({ id, spec }, mayChange) => ({
    wheelId: id,
    present: broken.includes(id) ? undefined : spec,
    mayChange,
  }));
}

function planned(model: DriveModel, change: readonly string[], broken: readonly string[] = []): PostsPlan {
  const found = plan(model, change, broken);
  if ('why' in found) throw new Error(found.why);
  return found;
}

function solve(posts: PostsPlan, pool: WheelPool): SubstituteTrains {
  const search = searchSubstituteTrains(posts, pool, roll);
  let step = search.next();
  while (!step.done) step = search.next();
  return step.value;
}

const pool: WheelPool = {
  parts: [],
  made: { teeth: [12, 70], modules: [0.5], pressureAngles: [rad(20)], leastModule: 0.7 },
};

describe('the posts of a drive', () => {
  test('what belts and fixed meshes do is left out of the ratio that the changing meshes must have', () => {
    // 18.75 in all, the belt makes 2 of it.
    expect(toNumber(planned(makeModel(), ['a', 'b', 'c', 'd']).wanted)).toBeCloseTo(9.375, 12);
    // With c and d as they are, 2.5 of that is done.
    expect(toNumber(planned(makeModel(), ['b']).wanted)).toBeCloseTo(3.75, 12);
  });

  test('where nothing is wanted, the ratio is what the drive had', () => {
    const posts = planned(makeModel({ wanted: undefined }), ['b']);
    expect(posts.isWanted).toBe(false);
    expect(toNumber(posts.wanted)).toBeCloseTo(60 / 16, 12);
  });

  test('a mesh that is written against the power is turned round', () => {
    const model = makeModel();
    const [first, second, belt] = model.meshes;
    const turned = { ...model, meshes: [{ ...first, driver: 'b', driven: 'a' }, second, belt] };
    const [post] = planned(turned, ['a', 'b']).posts;
    expect([post.driver.wheelId, post.driven.wheelId]).toEqual(['a', 'b']);
  });

  test('an idler stays, and what turns nothing wanted is left aside', () => {
    const model = makeModel();
    const idle = {
      ...model,
      wheels: [...model.wheels, wheel('i', 'idler', 30), wheel('x', 'counter', 40)],
      meshes: [
        { ...model.meshes[0], driven: 'i' },
        { ...model.meshes[0], driver: 'i' },
        ...model.meshes.slice(1),
        { ...model.meshes[0], driver: 'd', driven: 'x' },
      ],
    };
    const posts = planned(idle, ['a', 'i', 'b', 'x']);
    expect(posts.posts.map(({ driver, driven }) => `${driver.wheelId}-${driven.wheelId}`)).toEqual([
      'a-i',
      'i-b',
    ]);
    expect(posts.posts[0].driven.mayChange).toBe(false);
    expect(posts.notes.join()).toContain('"i" runs with two wheels at once');
  });

  test('a distance that was not measured is asked for', () => {
    const model = makeModel();
    const bare = { ...model, meshes: model.meshes.map((one) => ({ ...one, center: undefined })) };
    expect(plan(bare, ['b'])).toMatchObject({ why: expect.stringContaining('was not measured') });
    expect(plan(model, [])).toMatchObject({ why: expect.stringContaining('no wheel that may change') });
  });
});

describe('substitute trains', () => {
  test('brute force over all pairs of choices finds nothing nearer, and the front is beaten by none', () => {
    const posts = planned(makeModel(), ['a', 'b', 'c', 'd'], ['b']);
    const found = solve(posts, pool);
    expect(found.isProven).toBe(true);
    const lists = posts.posts.map((question) => listPairChoices(question, pool));
    const wanted = toNumber(posts.wanted);
    let least = Number.POSITIVE_INFINITY;
    const all: number[][] = [];
    for (const one of lists[0]) {
      for (const other of lists[1]) {
        const ratio =
          (one.driven.spec.teeth * other.driven.spec.teeth) /
          (one.driver.spec.teeth * other.driver.spec.teeth);
        const error = Math.abs(Math.log(ratio / wanted));
        least = Math.min(least, error);
        if (Math.abs(ratio / wanted - 1) > posts.tolerance) continue;
        all.push([
          error,
          one.newParts + other.newParts,
          Math.max(one.fineness, other.fineness),
          Math.round(one.backlash * 20) / 20 + Math.round(other.backlash * 20) / 20,
        ]);
      }
    }
    expect(lists[0].length * lists[1].length).toBe(found.space);
    expect(found.space).toBeGreaterThan(10_000);
    expect(
      Math.min(...found.trains.map(({ errorRelative }) => Math.abs(Math.log1p(errorRelative)))),
    ).toBeCloseTo(least, 12);
    for (const train of found.trains.filter(({ isOnFront }) => isOnFront)) {
      const own = [
        Math.abs(Math.log1p(train.errorRelative)),
        train.newParts,
        train.fineness,
        train.pairs.reduce((sum, { choice }) => sum + Math.round(choice.backlash * 20) / 20, 0),
      ];
      const isBeaten = all.some(
        (other) =>
          other.every((cost, k) => cost <= own[k] + 1e-12) && other.some((cost, k) => cost < own[k] - 1e-9),
      );
      expect(isBeaten).toBe(false);
    }
    // The wheel that was lost, made again, is one new part and the ratio exactly.
    expect(found.trains[0].errorRelative).toBe(0);
    expect(found.trains[0].newParts).toBe(1);
    expect(found.trains[0].verdict).toBe('turns');
  });

  test('posts that no wheels meet leave no train, and say which', () => {
    const model = makeModel();
    const far = { ...model, meshes: model.meshes.map((one) => ({ ...one, center: { mm: 400, uMm: 0.02 } })) };
    const found = solve(planned(far, ['a', 'b']), pool);
    expect(found.trains).toEqual([]);
    expect(found.choices).toEqual([0]);
    expect(found.isProven).toBe(true);
  });

  test('whoever stops it gets what there is, not proven', () => {
    const search = searchSubstituteTrains(planned(makeModel(), ['a', 'b', 'c', 'd']), pool, roll);
    let step = search.next();
    while (!step.done) step = search.next('stop');
    expect(step.value.isProven).toBe(false);
    expect(step.value.space).toBeGreaterThan(1000);
  });

  test('a single piece in the drawer is not put in twice', () => {
    const spec: GearSpec = makeSpec({ teeth: 60, module: 0.5 });
    const part = {
      id: 'own:2',
      from: 'own' as const,
      name: '',
      teeth: 60,
      sizes: [{ system: 'module' as const, size: 0.5, module: 0.5 }],
      isGuess: false,
      moduleUncertainty: 0,
      pressureAngle: rad(20),
      isAngleAssumed: false,
      profileShift: 0,
      tipDiameter: null,
      bore: null,
      faceWidth: null,
      material: '',
      kept: '',
      price: '',
      count: 1,
      notes: '',
    };
    const model = makeModel();
    const twins = {
      ...model,
      wheels: model.wheels.map((one) =>
        one.id === 'c' ? wheel('c', 'middle', 16) : one.id === 'd' ? wheel('d', 'drum', 60) : one,
      ),
      meshes: model.meshes.map((one) =>
        one.driver === 'c' ? { ...one, center: { mm: 19.05, uMm: 0.02 } } : one,
      ),
    };
    const posts = planned(twins, ['b', 'd'], ['b', 'd']);
    const only: WheelPool = { parts: [{ part, size: part.sizes[0], spec }], made: undefined };
    expect(solve(posts, only).trains).toEqual([]);
    const two: WheelPool = {
      parts: [{ part: { ...part, count: 2 }, size: part.sizes[0], spec }],
      made: undefined,
    };
    expect(solve(posts, two).trains).toHaveLength(1);
  });
});
