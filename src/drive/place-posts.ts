import { bendRings, missOf, type Spot, spotOf } from './bend-rings.ts';
import type { DriveModel } from './drive-model.ts';
import type { DriveTrouble } from './drive-report.ts';
import { listDistances, type PostDistance } from './list-distances.ts';
import { allowance, tellRings } from './tell-rings.ts';

export interface PlacedPost {
  readonly id: string;
  /** mm, the first post at the origin, the second on the +x axis, the first triangle's third above it */
  readonly x: number;
  readonly y: number;
  /** Nothing measured says in which direction it lies (or how far) */
  readonly isGuessed: boolean;
}

/**
 * Where the posts of a drive stand, seen from above, from the distances between them.
 *
 * A post with two distances to placed ones is where the circles meet: of the two points the one a third distance
 * fits, else the one freer of other posts. A post with one distance is set on in line, where there is room. Distances
 * that can't all be true (one longer than the others of its ring together) are a trouble, and the posts are drawn as
 * near to them as can be.
 */
export function placePosts(model: DriveModel): {
  readonly posts: readonly PlacedPost[];
  readonly distances: readonly PostDistance[];
  readonly postOfShaft: ReadonlyMap<string, string>;
  readonly troubles: readonly DriveTrouble[];
} {
  const { posts, distances, troubles, postOfShaft } = listDistances(model);
  const at = new Map<string, Reach[]>();
  for (const distance of distances) {
    const [one, other] = distance.ends;
    at.set(one, [...(at.get(one) ?? []), { to: other, distance }]);
    at.set(other, [...(at.get(other) ?? []), { to: one, distance }]);
  }
  const placed = new Map<string, Spot>();
  const order = [...posts].sort((a, b) => (at.get(b)?.length ?? 0) - (at.get(a)?.length ?? 0));
  for (const start of [posts[0], ...order]) {
    if (start === undefined || placed.has(start)) continue;
    placed.set(start, { x: placed.size === 0 ? 0 : findRightEnd(placed), y: 0, isGuessed: placed.size > 0 });
    spread(start, at, placed);
  }
  // Rings that close over guessed directions are bent until their distances hold.
  const isOff = distances.some((one) => missOf(one, placed) > allowance(one));
  if (isOff) bendRings(distances, placed);
  const wrong = distances.filter((one) => !one.isGuessed && missOf(one, placed) > allowance(one));
  return {
    posts: posts.map((id) => ({ id, ...spotOf(placed, id) })),
    distances,
    postOfShaft,
    troubles: [...troubles, ...tellRings(wrong, distances)],
  };
}

interface Reach {
  readonly to: string;
  readonly distance: PostDistance;
}

/** Places all that distances join to a post, the surest first. */
function spread(start: string, at: ReadonlyMap<string, readonly Reach[]>, placed: Map<string, Spot>): void {
  const own = new Set([start]);
  const edge = new Map<string, Reach[]>();
  const enter = (post: string): void => {
    own.add(post);
    edge.delete(post);
    for (const { to, distance } of at.get(post) ?? []) {
      if (!placed.has(to)) edge.set(to, [...(edge.get(to) ?? []), { to: post, distance }]);
    }
  };
  enter(start);
  while (edge.size > 0) {
    let next: [string, readonly Reach[]] | undefined;
    for (const one of edge) {
      // Two circles settle a post; more than two change nothing about when.
      if (!next || Math.min(one[1].length, 2) > Math.min(next[1].length, 2)) next = one;
    }
    if (!next) break;
    const [post, reaches] = next;
    const spot =
      own.size === 1
        ? besideFirst(spotOf(placed, start), reaches[0])
        : reaches.length >= 2
          ? whereCirclesMeet(reaches, placed, own)
          : setOn(reaches[0], at, placed);
    placed.set(post, spot);
    enter(post);
  }
}

function besideFirst(first: Spot, { distance }: Reach): Spot {
  return { x: first.x + distance.mm, y: first.y, isGuessed: first.isGuessed || distance.isGuessed };
}

/** The point at both distances; where the circles don't meet, the nearest on the line of centers. */
function whereCirclesMeet(
  reaches: readonly Reach[],
  placed: ReadonlyMap<string, Spot>,
  own: ReadonlySet<string>,
): Spot {
  const [one, other, ...more] = [...reaches].sort(
    (a, b) => Number(a.distance.isGuessed) - Number(b.distance.isGuessed),
  );
  const [p, q] = [spotOf(placed, one.to), spotOf(placed, other.to)];
  const [a, b] = [one.distance.mm, other.distance.mm];
  const apart = Math.hypot(q.x - p.x, q.y - p.y) || 1e-9;
  const [ux, uy] = [(q.x - p.x) / apart, (q.y - p.y) / apart];
  const along = Math.max(-a, Math.min(a, (apart * apart + a * a - b * b) / (2 * apart)));
  const up = Math.sqrt(Math.max(0, a * a - along * along));
  const points = [1, -1].map((side) => ({
    x: p.x + along * ux - side * up * uy,
    y: p.y + along * uy + side * up * ux,
  }));
  const checks = more.filter(({ distance }) => !distance.isGuessed);
  const miss = (point: { x: number; y: number }): number =>
    checks.reduce((sum, { to, distance }) => {
      const spot = spotOf(placed, to);
      return sum + (Math.hypot(point.x - spot.x, point.y - spot.y) - distance.mm) ** 2;
    }, 0);
  const others = [...placed.values()];
  const room = (point: { x: number; y: number }): number =>
    Math.min(...others.map((spot) => Math.hypot(point.x - spot.x, point.y - spot.y)));
  const [left, right] = points;
  const isRight = checks.length > 0 ? miss(right) < miss(left) : room(right) > room(left) + 1e-9;
  // Of the first triangle either side will do: the other is the view from below.
  const isMirrorFree = own.size === 2;
  const rests = [one, other].some(({ to, distance }) => distance.isGuessed || spotOf(placed, to).isGuessed);
  return {
    ...(isRight && !isMirrorFree ? right : left),
    isGuessed: rests || !(isMirrorFree || checks.length > 0 || up < 1e-6),
  };
}

/** On in the line that leads to the placed end, or turned from it as far as other posts ask. */
function setOn(
  { to, distance }: Reach,
  at: ReadonlyMap<string, readonly Reach[]>,
  placed: ReadonlyMap<string, Spot>,
): Spot {
  const end = spotOf(placed, to);
  const before = (at.get(to) ?? []).flatMap((reach) => placed.get(reach.to) ?? [])[0];
  const straight = before ? Math.atan2(end.y - before.y, end.x - before.x) : 0;
  const near = [...placed.values()].filter(
    (spot) => spot !== end && Math.hypot(spot.x - end.x, spot.y - end.y) < 4 * distance.mm,
  );
  let best: { point: { x: number; y: number }; room: number } | undefined;
  for (const turn of turns) {
    const angle = straight + (turn * Math.PI) / 180;
    const point = { x: end.x + distance.mm * Math.cos(angle), y: end.y + distance.mm * Math.sin(angle) };
    const room = Math.min(distance.mm, ...near.map((spot) => Math.hypot(point.x - spot.x, point.y - spot.y)));
    if (!best || room > best.room + 1e-6) best = { point, room };
  }
  if (!best) throw new Error('no direction to set a post on in');
  return { ...best.point, isGuessed: true };
}

/** Degrees, straight on first. */
const turns = [0, 60, -60, 90, -90, 120, -120] as const;

/** Where a group of posts that nothing joins to the rest may begin. */
function findRightEnd(placed: ReadonlyMap<string, Spot>): number {
  const xs = [...placed.values()].map((spot) => spot.x);
  return Math.max(...xs) + 20;
}
