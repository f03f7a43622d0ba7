import { add, divide, multiply, negate, type Rational, zero } from '../numeric/rational.ts';
import type { Relation } from './list-relations.ts';
import type { Placed } from './spread-speeds.ts';

export interface CoupledSpeeds {
  /** Root → its speed; what isn't in it is free to turn as it likes */
  readonly values: ReadonlyMap<string, Rational>;
  readonly isExact: (root: string) => boolean;
  readonly isDirectionKnown: (place: Placed) => boolean;
  /** Wheels whose meshes can't all hold, one list a contradiction */
  readonly contradictions: readonly (readonly string[])[];
  /** Meshes left aside: directions that nobody knows meet in them */
  readonly ambiguous: readonly number[];
}

/**
 * Roots' speeds from the meshes that carriers couple, by exact sparse elimination; `known` roots start it.
 *
 * A mesh behind crossed axes has its speed but not its sense. Where all that a set of coupled meshes takes in is of
 * one such group, sizes are sound and the sense stays unknown; where two groups of one root meet, sizes would depend
 * on a sense that isn't known, and the meshes are left aside.
 */
export function solveCoupled(
  relations: readonly Relation[],
  placed: ReadonlyMap<string, Placed>,
  known: ReadonlyMap<string, Rational>,
  input: string | undefined,
): CoupledSpeeds {
  const places = (relation: Relation): readonly Placed[] =>
    [...relation.terms.keys()]
      .map((node) => placeOf(placed, node))
      .filter((place) => known.get(place.root)?.num !== 0n);
  const senses = joinSenses(relations, places);
  const usable = relations.filter(
    (relation) => relation.isSignKnown && !places(relation).some((place) => senses.isMixed(place)),
  );
  const { pivots, contradictions } = eliminate(usable, placed, known);
  const values = substituteBack(pivots, known);
  const areExact = usable.every(
    (relation) => relation.isExact && places(relation).every((place) => place.isExact),
  );
  return {
    values,
    isExact: (root) => known.has(root) || areExact,
    isDirectionKnown: (place) => input !== undefined && senses.areJoined(place, placeOf(placed, input)),
    contradictions,
    ambiguous: relations.flatMap((relation) =>
      relation.mesh === undefined || usable.includes(relation) ? [] : [relation.mesh],
    ),
  };
}

function placeOf(placed: ReadonlyMap<string, Placed>, node: string): Placed {
  const place = placed.get(node);
  if (!place) throw new Error(`no speed was spread to ${node}`);
  return place;
}

/**
 * Which groups know each other's direction through the meshes that couple them, and which such sets hold two groups of
 * one root.
 */
function joinSenses(
  relations: readonly Relation[],
  places: (relation: Relation) => readonly Placed[],
): { readonly areJoined: (a: Placed, b: Placed) => boolean; readonly isMixed: (place: Placed) => boolean } {
  const parents = new Map<number, number>();
  const findTop = (group: number): number => {
    let top = group;
    for (let next = parents.get(top); next !== undefined; next = parents.get(top)) top = next;
    if (top !== group) parents.set(group, top);
    return top;
  };
  const rootOf = new Map<number, string>();
  for (const relation of relations) {
    const all = places(relation);
    for (const { group, root } of all) {
      rootOf.set(group, root);
      const [top, first] = [findTop(group), findTop(all[0].group)];
      if (top !== first) parents.set(top, first);
    }
  }
  const met = new Set<string>();
  const mixed = new Set<number>();
  for (const [group, root] of rootOf) {
    const key = JSON.stringify([findTop(group), root]);
    if (met.has(key)) mixed.add(findTop(group));
    met.add(key);
  }
  return {
    areJoined: (a, b) => findTop(a.group) === findTop(b.group),
    isMixed: (place) => mixed.has(findTop(place.group)),
  };
}

interface Row {
  /** Root → coefficient */
  readonly terms: Map<string, Rational>;
  constant: Rational;
  readonly wheels: Set<string>;
}

/** Rows with one pivot each, of coefficient 1, in the order they were found; none holds an earlier pivot. */
function eliminate(
  relations: readonly Relation[],
  placed: ReadonlyMap<string, Placed>,
  known: ReadonlyMap<string, Rational>,
): { readonly pivots: ReadonlyMap<string, Row>; readonly contradictions: readonly (readonly string[])[] } {
  const pivots = new Map<string, Row>();
  const contradictions: (readonly string[])[] = [];
  for (const relation of relations) {
    const row = gather(relation, placed, known);
    for (;;) {
      const root = [...row.terms.keys()].find((one) => pivots.has(one));
      const pivot = root === undefined ? undefined : pivots.get(root);
      if (root === undefined || !pivot) break;
      const by = negate(row.terms.get(root) ?? zero);
      for (const [node, value] of pivot.terms) addTo(row.terms, node, multiply(value, by));
      row.constant = add(row.constant, multiply(pivot.constant, by));
      for (const wheel of pivot.wheels) row.wheels.add(wheel);
    }
    const [lead] = row.terms;
    if (!lead) {
      if (row.constant.num !== 0n) contradictions.push([...row.wheels]);
      continue;
    }
    const [root, size] = lead;
    const scaled = new Map([...row.terms].map(([node, value]) => [node, divide(value, size)]));
    pivots.set(root, { terms: scaled, constant: divide(row.constant, size), wheels: row.wheels });
  }
  return { pivots, contradictions };
}

function gather(
  relation: Relation,
  placed: ReadonlyMap<string, Placed>,
  known: ReadonlyMap<string, Rational>,
): Row {
  const row: Row = { terms: new Map(), constant: zero, wheels: new Set(relation.wheels) };
  for (const [node, coefficient] of relation.terms) {
    const place = placeOf(placed, node);
    const size = multiply(coefficient, place.factor);
    const value = known.get(place.root);
    if (value === undefined) addTo(row.terms, place.root, size);
    else row.constant = add(row.constant, multiply(size, value));
  }
  return row;
}

function addTo(terms: Map<string, Rational>, root: string, by: Rational): void {
  const sum = add(terms.get(root) ?? zero, by);
  if (sum.num === 0n) terms.delete(root);
  else terms.set(root, sum);
}

/** Last pivot first, since a row holds later pivots only; a row with a free root stays open. */
function substituteBack(
  pivots: ReadonlyMap<string, Row>,
  known: ReadonlyMap<string, Rational>,
): ReadonlyMap<string, Rational> {
  const values = new Map(known);
  for (const [root, row] of [...pivots].reverse()) {
    let value: Rational | undefined = negate(row.constant);
    for (const [node, coefficient] of row.terms) {
      if (node === root) continue;
      const other = values.get(node);
      value = value && other && add(value, negate(multiply(coefficient, other)));
    }
    if (value) values.set(root, value);
  }
  return values;
}
