import type { PostDistance } from './list-distances.ts';

/** A post's place, mm. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly isGuessed: boolean;
}

/** Moves guessed posts, and where that isn't enough all, until distances hold: each step shares out its miss. */
export function bendRings(distances: readonly PostDistance[], placed: Map<string, Spot>): void {
  const rounds = Math.min(mostRounds, Math.ceil(mostSteps / Math.max(1, distances.length)));
  for (let round = 0; round < rounds; round++) {
    let worst = 0;
    for (const one of distances) {
      const [p, q] = one.ends.map((id) => spotOf(placed, id));
      const apart = Math.hypot(q.x - p.x, q.y - p.y);
      // Posts on one spot part in some direction.
      const [ux, uy] = apart > 1e-9 ? [(q.x - p.x) / apart, (q.y - p.y) / apart] : [0.6, 0.8];
      // A guessed distance gives way.
      const by = (apart - one.mm) * (one.isGuessed ? 0.05 : 1);
      if (!one.isGuessed) worst = Math.max(worst, Math.abs(by));
      const share = p.isGuessed === q.isGuessed ? 0.5 : p.isGuessed ? 1 : 0;
      // A bent ring in one line can't choose a side: a hair of asymmetry lets it.
      const aside = 1e-3 * by;
      placed.set(one.ends[0], {
        ...p,
        x: p.x + share * (by * ux - aside * uy),
        y: p.y + share * (by * uy + aside * ux),
      });
      const rest = 1 - share;
      placed.set(one.ends[1], {
        ...q,
        x: q.x - rest * (by * ux + aside * uy),
        y: q.y - rest * (by * uy - aside * ux),
      });
    }
    if (worst < 1e-9) return;
  }
}

/** Enough for rings of a dozen posts to settle to a micrometer; with thousands of distances, an end in a second. */
const mostRounds = 4000;
const mostSteps = 1_000_000;

/** By how much two posts stand nearer or further than their distance. */
export function missOf(one: PostDistance, placed: ReadonlyMap<string, Spot>): number {
  const [p, q] = one.ends.map((id) => spotOf(placed, id));
  return Math.abs(Math.hypot(q.x - p.x, q.y - p.y) - one.mm);
}

export function spotOf(placed: ReadonlyMap<string, Spot>, id: string): Spot {
  const spot = placed.get(id);
  if (!spot) throw new Error(`post "${id}" was not placed`);
  return spot;
}
