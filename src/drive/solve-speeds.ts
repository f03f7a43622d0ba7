import {
  divide,
  isSame,
  multiply,
  negate,
  type Rational,
  toNumber,
  unity,
  zero,
} from '../numeric/rational.ts';
import type { DriveModel } from './drive-model.ts';
import { type ImpossibleMesh, listRelations, type Relation, shaftNode } from './list-relations.ts';
import { solveCoupled } from './solve-coupled.ts';
import { findLoop, type Placed, spreadSpeeds } from './spread-speeds.ts';

/** How fast something turns for one turn of the input, signed. */
export interface Speed {
  readonly turns: Rational;
  /** False where a belt's diameters or slip stand in it: then the fraction is as measured, no more */
  readonly isExact: boolean;
  /** False behind axes that cross: the sign means nothing */
  readonly isDirectionKnown: boolean;
}

export interface Speeds {
  /** By node (`shaftNode`, `rackNode`); what isn't in it is not determined */
  readonly speeds: ReadonlyMap<string, Speed>;
  readonly contradictions: readonly Contradiction[];
  readonly impossible: readonly ImpossibleMesh[];
  /** Belts that close a loop and must slip for it, within what a belt does */
  readonly slips: readonly { readonly mesh: number; readonly percent: number }[];
  /** Carriers' meshes left aside because ways of turning that aren't known meet in them */
  readonly ambiguous: readonly number[];
}

export interface Contradiction {
  readonly wheels: readonly string[];
  /** loop: two ways round give two speeds; locked: wheels of one shaft mesh with each other; held: the input is
   * joined to a shaft that is held still; carried: a planetary set is held too often, or its meshes disagree */
  readonly kind: 'loop' | 'locked' | 'held' | 'carried';
  /** Of a loop: one way's speed over the other's; negative where they turn against each other */
  readonly quotient?: number;
}

/**
 * The exact speed of every shaft and rack for one turn of the input, with what contradicts itself.
 *
 * Meshes between two speeds are followed outward from the input, exact ones first and belts last, so that loops are
 * closed by what may give; each loop is then checked. Only what carriers couple (three speeds a mesh) is left to
 * elimination. Without an input, loops are still checked, and nothing has a speed.
 *
 * Source: Willis's equation for carriers; the rest is counting teeth.
 *
 * @example 12 teeth driving 60: −1/5
 */
export function solveSpeeds(model: DriveModel, input: string | undefined): Speeds {
  const { relations, impossible } = listRelations(model);
  const contradictions: Contradiction[] = [];
  const slips: { mesh: number; percent: number }[] = [];
  const inputNode = input === undefined ? undefined : shaftNode(input);

  // 1. Two speeds a mesh: outward along a tree, then every mesh that closes a loop.
  const fixed = new Set(model.fixed.map(shaftNode));
  const pairs = relations.filter((one) => one.terms.size === 2);
  for (const one of relations) {
    const [only] = one.terms.keys();
    if (one.terms.size === 1 && !fixed.has(only)) {
      contradictions.push({ kind: 'locked', wheels: one.wheels });
    }
  }
  const nodes = new Set([...(inputNode === undefined ? [] : [inputNode]), ...fixed]);
  for (const { terms } of relations) for (const node of terms.keys()) nodes.add(node);
  const { placed, closing } = spreadSpeeds(pairs, [...nodes]);
  for (const relation of closing) {
    const loop = findLoop(placed, relation);
    const outcome = checkLoop(relation, placed, loop);
    if (outcome === undefined) continue;
    if (outcome.kind === 'slip') slips.push({ mesh: relation.mesh ?? -1, percent: outcome.percent });
    else {
      const wheels = [...new Set(loop.flatMap((one) => one.wheels))];
      contradictions.push({ kind: 'loop', wheels, quotient: outcome.quotient });
    }
  }

  // 2. What is held still holds all that it is joined to.
  const held = new Map<string, string>();
  for (const node of fixed) {
    const place = placed.get(node);
    if (place && !held.has(place.root)) held.set(place.root, node);
  }
  if (inputNode !== undefined) {
    const holder = held.get(inputNode);
    if (holder !== undefined) {
      const path = pathToRoot(placed, holder);
      contradictions.push({ kind: 'held', wheels: [...new Set(path.flatMap((one) => one.wheels))] });
    }
  }

  // 3. What carriers couple.
  const known = new Map<string, Rational>();
  for (const root of held.keys()) known.set(root, zero);
  if (inputNode !== undefined) known.set(inputNode, unity);
  const coupled = solveCoupled(
    relations.filter((one) => one.terms.size > 2),
    placed,
    known,
    inputNode,
  );
  contradictions.push(...coupled.contradictions.map((wheels) => ({ kind: 'carried' as const, wheels })));

  // 4. Every node from its root.
  const speeds = new Map<string, Speed>();
  if (inputNode !== undefined) {
    for (const [node, place] of placed) {
      const root = coupled.values.get(place.root);
      if (root === undefined) continue;
      speeds.set(node, {
        turns: multiply(root, place.factor),
        isExact: place.isExact && coupled.isExact(place.root),
        isDirectionKnown: root.num === 0n || coupled.isDirectionKnown(place),
      });
    }
  }
  return {
    speeds,
    contradictions,
    impossible,
    slips,
    ambiguous: coupled.ambiguous,
  };
}

/** Belts stretch, creep and are measured to a few hundredths: what a loop closed by one may be off. A judgment. */
const beltGives = 0.03;

type LoopOutcome =
  | { readonly kind: 'slip'; readonly percent: number }
  | { readonly kind: 'contradiction'; readonly quotient: number };

/** Undefined where the loop closes. */
function checkLoop(
  relation: Relation,
  placed: ReadonlyMap<string, Placed>,
  loop: readonly Relation[],
): LoopOutcome | undefined {
  const [[one, first], [other, second]] = relation.terms;
  const left = multiply(first, factorOf(placed, one));
  const right = negate(multiply(second, factorOf(placed, other)));
  if (isSame(left, right)) return undefined;
  const quotient = toNumber(divide(left, right));
  const isSignKnown = loop.every((each) => each.isSignKnown);
  const size = Math.abs(quotient);
  if (!isSignKnown && (isSame(left, negate(right)) || size === 1)) return undefined;
  const isExact = loop.every((each) => each.isExact);
  const isReversed = isSignKnown && quotient < 0;
  if (isExact || isReversed || Math.abs(size - 1) > beltGives) {
    return { kind: 'contradiction', quotient: isSignKnown ? quotient : size };
  }
  return { kind: 'slip', percent: 100 * Math.abs(size - 1) };
}

function factorOf(placed: ReadonlyMap<string, Placed>, node: string): Rational {
  const place = placed.get(node);
  if (!place) throw new Error(`no speed was spread to ${node}`);
  return place.factor;
}

function pathToRoot(placed: ReadonlyMap<string, Placed>, from: string): Relation[] {
  const path: Relation[] = [];
  let place = placed.get(from);
  while (place?.by) {
    path.push(place.by.relation);
    place = placed.get(place.by.from);
  }
  return path;
}
