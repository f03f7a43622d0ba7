import { expect, test } from 'vitest';
import { drawPair, type Job, type PairDrawing } from '../src/index.ts';

type Fields = NonNullable<NonNullable<Job['wheels']>[number]['spec']>;

const jobOf = (
  driver: { readonly kind: 'external' | 'internal' | 'rack'; readonly spec: Fields },
  driven: { readonly kind: 'external' | 'internal' | 'rack'; readonly spec: Fields },
  centerMm: number,
): Job => ({
  format: 'sparetooth-job',
  version: 1,
  wheels: [
    { id: 'a', ...driver },
    { id: 'b', ...driven },
  ],
  meshes: [{ kind: 'teeth', driver: 'a', driven: 'b', centerMm, uMm: 0.01 }],
});

/** An outline on its place in the picture. */
function placed(side: PairDrawing['driver']): [number, number][] {
  const [c, s] = [Math.cos(side.turned), Math.sin(side.turned)];
  return Array.from({ length: side.outline.length / 2 }, (_, k) => {
    const [u, v] = [side.outline[2 * k] + side.moved, side.outline[2 * k + 1]];
    return [u * c - v * s + side.x, u * s + v * c];
  });
}

/** Crossings of a ray to the right: an odd count is inside. */
function isInside(
  [x, y]: readonly [number, number],
  outline: readonly (readonly [number, number])[],
): boolean {
  let inside = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [[xi, yi], [xj, yj]] = [outline[i], outline[j]];
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
}

/** Points of either outline within the other's metal; a ring's metal is outside its outline. */
function countOverlaps(pair: PairDrawing, rings: readonly ('a' | 'b')[]): number {
  const sides = [pair.driver, pair.driven].map((side) => ({ side, points: placed(side) }));
  let count = 0;
  for (const [one, two] of [
    [sides[0], sides[1]],
    [sides[1], sides[0]],
  ]) {
    const isRing = rings.includes(two.side.wheelId as 'a' | 'b');
    for (const point of one.points) if (isInside(point, two.points) !== isRing) count++;
  }
  return count;
}

const module = (teeth: number, more: Fields = {}): Fields => ({
  teeth,
  moduleMm: 0.5,
  thinningMm: 0.03,
  ...more,
});

// Half a pitch or a sign that is wrong by any of these would put teeth into teeth.
test.each([
  [
    'two gears',
    jobOf({ kind: 'external', spec: module(14) }, { kind: 'external', spec: module(31) }, 11.25),
    [],
  ],
  [
    'a gear in a ring',
    jobOf({ kind: 'external', spec: module(14) }, { kind: 'internal', spec: module(45) }, 7.75),
    ['b'],
  ],
  [
    'a ring round a gear',
    jobOf({ kind: 'internal', spec: module(45) }, { kind: 'external', spec: module(14) }, 7.75),
    ['a'],
  ],
  [
    'a bar that is pushed',
    jobOf({ kind: 'external', spec: module(17) }, { kind: 'rack', spec: module(30) }, 4.25),
    [],
  ],
  [
    'a bar that pushes',
    jobOf({ kind: 'rack', spec: module(30) }, { kind: 'external', spec: module(17) }, 4.25),
    [],
  ],
] as const)('%s that turn are drawn free of each other at their tightest', (_, job, rings) => {
  const pair = drawPair(job, { wheelId: 'b', mateId: 'a' }, 0.0005);
  if (!pair) throw new Error('not rolled');
  expect(pair.binds).toBeUndefined();
  expect(pair.figures.backlashLeast).toBeGreaterThan(0.02);
  expect(countOverlaps(pair, rings)).toBe(0);
});

test('a pair that binds is drawn with its outlines overlapping where it says so', () => {
  // 0.5 against 48 DP, 14 and 30 teeth, at the mean of both nominal distances: the issue's own case.
  const inch = 25.4 / 48;
  const job = jobOf(
    { kind: 'external', spec: module(14) },
    { kind: 'external', spec: module(30, { moduleMm: inch }) },
    (0.5 * 14 + inch * 30) / 2,
  );
  const pair = drawPair(job, { wheelId: 'b', mateId: 'a' }, 0.0005);
  expect(pair?.binds).toBeDefined();
  if (!pair?.binds) return;
  expect(countOverlaps(pair, [])).toBeGreaterThan(0);
  const nearest = Math.min(
    ...[pair.driver, pair.driven].map((side) =>
      Math.min(
        ...placed(side).map(([x, y]) => Math.hypot(x - (pair.binds?.x ?? 0), y - (pair.binds?.y ?? 0))),
      ),
    ),
  );
  expect(nearest).toBeLessThan(0.1);
  expect(pair.freeFromMm).toBeGreaterThan(pair.centerMm);
  expect(Math.min(...pair.play.high.map((high, k) => high - pair.play.low[k]))).toBeLessThan(0);
});

test('the picture of a substitute is of the substitute, the rest as it stands', () => {
  const job = jobOf({ kind: 'external', spec: module(14) }, { kind: 'external', spec: module(30) }, 11.1);
  const pair = drawPair(job, { wheelId: 'b', mateId: 'a', spec: module(31) }, 0.002);
  expect(pair?.driven.outline.length).not.toBe(
    drawPair(job, { wheelId: 'b', mateId: 'a' }, 0.002)?.driven.outline.length,
  );
  expect(drawPair({ ...job, meshes: [] }, { wheelId: 'b', mateId: 'a' }, 0.002)).toBeUndefined();
});
