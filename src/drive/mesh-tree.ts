import type { MeasuredDistance } from './distance-ways.ts';

/** Two wheels that run against each other, with every measurement of their distance, each once. */
export interface Join {
  readonly wheels: readonly [string, string];
  readonly distances: readonly MeasuredDistance[];
}

/** The wheels that joins connect, as a tree, and the joins that had to be left out to make it one. */
export interface MeshTree {
  readonly wheels: readonly string[];
  readonly joins: readonly Join[];
  readonly leftOut: readonly Join[];
}

/**
 * The tree of everything that joins connect with a wheel. A loop is broken at its weakest join: one without a
 * distance before one with, the less exact distance before the more exact, the later before the earlier.
 */
export function growMeshTree(from: string, joins: readonly Join[]): MeshTree {
  const reached = new Set([from]);
  for (let grew = true; grew; ) {
    grew = false;
    for (const { wheels } of joins) {
      if (reached.has(wheels[0]) === reached.has(wheels[1])) continue;
      for (const id of wheels) reached.add(id);
      grew = true;
    }
  }
  const own = joins.filter(({ wheels }) => reached.has(wheels[0]));
  const strongest = [...own].sort((a, b) => weakness(a) - weakness(b));
  const group = new Map([...reached].map((id) => [id, id]));
  const find = (id: string): string => {
    let at = id;
    for (;;) {
      const up = group.get(at) ?? at;
      if (up === at) return at;
      at = up;
    }
  };
  const kept = new Set<Join>();
  for (const join of strongest) {
    const [a, b] = join.wheels.map(find);
    if (a === b) continue;
    group.set(a, b);
    kept.add(join);
  }
  return {
    wheels: [...reached],
    joins: own.filter((join) => kept.has(join)),
    leftOut: own.filter((join) => !kept.has(join)),
  };
}

function weakness({ distances }: Join): number {
  let precision = 0;
  for (const { length } of distances) precision += 1 / (length.noise + length.zeroDeviation ** 2);
  return precision === 0 ? Number.MAX_VALUE : 1 / precision;
}
