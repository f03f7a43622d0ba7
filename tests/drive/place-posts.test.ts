import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DriveModel } from '../../src/drive/drive-model.ts';
import { placePosts } from '../../src/drive/place-posts.ts';
import { makeDrive, makePlanetary } from './make-drive.ts';

type Edge = readonly [string, string, number];

function layOut(edges: readonly Edge[], uMm = 0.05): ReturnType<typeof placePosts> {
  const ids = new Set<string>();
  for (const [a, b] of edges) ids.add(a).add(b);
  return placePosts(
    makeDrive(
      [...ids].map((id) => ({ id, teeth: 20 })),
      edges.map(([driver, driven, mm]) => ({ driver, driven, center: { mm, uMm } })),
    ),
  );
}

function distanceOf(laid: ReturnType<typeof placePosts>, a: string, b: string): number {
  const [p, q] = [a, b].map((id) => laid.posts.find((post) => post.id === id));
  return p && q ? Math.hypot(p.x - q.x, p.y - q.y) : Number.NaN;
}

describe('posts stand where the distances put them', () => {
  test('a right triangle of 3, 4 and 5, exactly, nothing guessed', () => {
    const laid = layOut([
      ['a', 'b', 40],
      ['a', 'c', 30],
      ['b', 'c', 50],
    ]);
    expect(laid.troubles).toEqual([]);
    expect(laid.posts).toEqual([
      { id: 'a', x: 0, y: 0, isGuessed: false },
      { id: 'b', x: 40, y: 0, isGuessed: false },
      { id: 'c', x: expect.closeTo(0, 9), y: expect.closeTo(30, 9), isGuessed: false },
    ]);
  });

  test('a chain is laid in line, and says that its angle is guessed', () => {
    const laid = layOut([
      ['a', 'b', 20],
      ['b', 'c', 15],
      ['c', 'd', 10],
    ]);
    expect(laid.posts.map(({ x, isGuessed }) => [Math.round(x * 1e6) / 1e6, isGuessed])).toEqual([
      [0, false],
      [20, false],
      [35, true],
      [45, true],
    ]);
  });

  test('a fourth post with three distances is on the side where all three hold', () => {
    const spots = { a: [0, 0], b: [40, 0], c: [10, 30], d: [25, -20] } as const;
    const apart = (one: keyof typeof spots, other: keyof typeof spots): Edge => [
      one,
      other,
      Math.hypot(spots[one][0] - spots[other][0], spots[one][1] - spots[other][1]),
    ];
    const laid = layOut([
      apart('a', 'b'),
      apart('a', 'c'),
      apart('b', 'c'),
      apart('a', 'd'),
      apart('b', 'd'),
      apart('c', 'd'),
    ]);
    const d = laid.posts.find(({ id }) => id === 'd');
    expect(d).toMatchObject({ x: expect.closeTo(25, 6), y: expect.closeTo(-20, 6), isGuessed: false });
  });

  test('one distance longer than the other two together is said, with the three posts', () => {
    const laid = layOut([
      ['a', 'b', 40],
      ['a', 'c', 15],
      ['b', 'c', 20],
    ]);
    expect(laid.troubles).toHaveLength(1);
    expect(laid.troubles[0]).toMatchObject({ kind: 'contradiction' });
    expect([...laid.troubles[0].about].sort()).toEqual(['a', 'b', 'c']);
    expect(laid.troubles[0].message).toContain('40 mm from "a" to "b" is more than');
  });

  test('four in a ring are bent until all four distances hold', () => {
    const laid = layOut([
      ['a', 'b', 30],
      ['b', 'c', 30],
      ['c', 'd', 30],
      ['d', 'a', 30],
    ]);
    expect(laid.troubles).toEqual([]);
    for (const [a, b] of ['ab', 'bc', 'cd', 'da']) expect(distanceOf(laid, a, b)).toBeCloseTo(30, 1);
  });

  test('two meshes between the same two shafts must ask for one distance', () => {
    const pair = (second: number): DriveModel =>
      makeDrive(
        [
          { id: 'a1', teeth: 20, shaft: 'a' },
          { id: 'b1', teeth: 40, shaft: 'b' },
          { id: 'a2', teeth: 30, shaft: 'a' },
          { id: 'b2', teeth: 30, shaft: 'b' },
        ],
        [
          { driver: 'a1', driven: 'b1', center: { mm: 15, uMm: 0.05 } },
          { driver: 'a2', driven: 'b2', center: { mm: second, uMm: 0.05 } },
        ],
      );
    expect(placePosts(pair(15.1)).troubles).toEqual([]);
    expect(placePosts(pair(15.5)).troubles[0]).toMatchObject({
      kind: 'contradiction',
      about: ['a2', 'b2', 'a1', 'b1'],
    });
  });

  test('loose wheels of one pin stand on one post; sun, ring and arm share theirs', () => {
    const pin = makeDrive(
      [
        { id: 'a', teeth: 20, post: 'pin' },
        { id: 'b', teeth: 30, post: 'pin' },
        { id: 'c', teeth: 40 },
      ],
      [{ driver: 'a', driven: 'c', center: { mm: 15, uMm: 0.05 } }],
    );
    expect(placePosts(pin).posts.map(({ id }) => id)).toEqual(['pin', 'c']);
    const set = makePlanetary(16, 16, 48, { fixed: ['ring'] });
    expect(placePosts(set).posts.map(({ id }) => id)).toEqual(['arm', 'planet']);
  });
});

test('posts drawn at random and measured to one another stand where they were, but for turning and mirroring', () => {
  const spot = fc.tuple(fc.integer({ min: -80, max: 80 }), fc.integer({ min: -80, max: 80 }));
  fc.assert(
    fc.property(fc.array(spot, { minLength: 3, maxLength: 6 }), (spots) => {
      const far = (i: number, j: number): number =>
        Math.hypot(spots[i][0] - spots[j][0], spots[i][1] - spots[j][1]);
      const pairs = spots.flatMap((_, i) => spots.slice(0, i).map((__, j): [number, number] => [j, i]));
      fc.pre(pairs.every(([i, j]) => far(i, j) > 3));
      const laid = layOut(pairs.map(([i, j]) => [`p${i}`, `p${j}`, far(i, j)]));
      expect(laid.troubles).toEqual([]);
      for (const [i, j] of pairs) expect(distanceOf(laid, `p${i}`, `p${j}`)).toBeCloseTo(far(i, j), 1);
    }),
    { seed: 21, numRuns: 100 },
  );
});
