import { divide, multiply, negate, type Rational, unity } from '../numeric/rational.ts';
import type { Relation } from './list-relations.ts';

/** A node's speed as a multiple of its root's. */
export interface Placed {
  readonly root: string;
  readonly factor: Rational;
  readonly isExact: boolean;
  /** Nodes of one group know each other's direction; no group has two roots */
  readonly group: number;
  /** The relation it was reached by; undefined for a root */
  readonly by: { readonly relation: Relation; readonly from: string } | undefined;
  readonly depth: number;
}

/**
 * Follows relations between two speeds outward from the first node, then from each that is left: where every node
 * stands, and the relations that close a loop.
 *
 * Exact relations with known directions go first, then those whose direction isn't known, then belts: a loop is
 * closed by what may give.
 */
export function spreadSpeeds(
  pairs: readonly Relation[],
  nodes: readonly string[],
): { readonly placed: ReadonlyMap<string, Placed>; readonly closing: readonly Relation[] } {
  const at = relationsAt(pairs);
  const placed = new Map<string, Placed>();
  const used = new Set<Relation>();
  let groups = 0;
  for (const root of nodes) {
    if (placed.has(root)) continue;
    placed.set(root, { root, factor: unity, isExact: true, group: groups++, by: undefined, depth: 0 });
    const waiting: { relation: Relation; from: string }[][] = [[], [], []];
    const next = [0, 0, 0];
    const enter = (node: string): void => {
      for (const relation of at.get(node) ?? []) {
        if (!used.has(relation)) waiting[rankOf(relation)].push({ relation, from: node });
      }
    };
    enter(root);
    for (;;) {
      const rank = waiting.findIndex((list, k) => next[k] < list.length);
      if (rank < 0) break;
      const { relation, from } = waiting[rank][next[rank]++];
      const to = otherEnd(relation, from);
      if (used.has(relation) || placed.has(to)) continue;
      used.add(relation);
      placed.set(
        to,
        step(relation, from, to, placed, () => groups++),
      );
      enter(to);
    }
  }
  return { placed, closing: pairs.filter((relation) => !used.has(relation)) };
}

function relationsAt(relations: readonly Relation[]): ReadonlyMap<string, readonly Relation[]> {
  const at = new Map<string, Relation[]>();
  for (const relation of relations) {
    for (const node of relation.terms.keys()) {
      const list = at.get(node);
      if (list) list.push(relation);
      else at.set(node, [relation]);
    }
  }
  return at;
}

function rankOf(relation: Relation): number {
  if (!relation.isExact) return 2;
  return relation.isSignKnown ? 0 : 1;
}

function otherEnd(relation: Relation, from: string): string {
  for (const node of relation.terms.keys()) if (node !== from) return node;
  throw new Error('a relation of two speeds has one only');
}

function step(
  relation: Relation,
  from: string,
  to: string,
  placed: ReadonlyMap<string, Placed>,
  nextGroup: () => number,
): Placed {
  const place = placed.get(from);
  const near = relation.terms.get(from);
  const far = relation.terms.get(to);
  if (!place || !near || !far) throw new Error(`no way from ${from} to ${to}`);
  return {
    root: place.root,
    factor: multiply(place.factor, divide(negate(near), far)),
    isExact: place.isExact && relation.isExact,
    group: relation.isSignKnown ? place.group : nextGroup(),
    by: { relation, from },
    depth: place.depth + 1,
  };
}

/** The relations of the loop that `closing` closes, itself first. */
export function findLoop(placed: ReadonlyMap<string, Placed>, closing: Relation): Relation[] {
  const loop = [closing];
  let [one, other] = [...closing.terms.keys()].map((node) => placed.get(node));
  while (one && other && one !== other) {
    const isOneDeeper = one.depth >= other.depth;
    const by = isOneDeeper ? one.by : other.by;
    if (!by) break;
    loop.push(by.relation);
    if (isOneDeeper) one = placed.get(by.from);
    else other = placed.get(by.from);
  }
  return loop;
}
