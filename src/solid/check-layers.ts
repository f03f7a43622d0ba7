import { Fail } from '../fail.ts';
import { flangeOver, innerPart } from './check-form.ts';
import type { Loop, StackLayer } from './lay-layers.ts';
import { leastWall } from './wheel-form.ts';

/**
 * Throws Fail `bad-geometry` where a stack's layers make no solid: walls thinner than the least, curves of neighboring
 * layers that cross, cavities that nothing opens, layers that touch nowhere. The remedy names the least change.
 */
export function checkLayers(layers: readonly StackLayer[]): void {
  for (const layer of layers) checkWalls(layer);
  for (let k = 0; k + 1 < layers.length; k++) checkNeighbors(layers[k], layers[k + 1]);
  checkPockets(layers);
}

/** Curve after curve, from the outside in. */
function checkWalls({ chain, islands }: StackLayer): void {
  for (let k = 0; k + 1 < chain.length; k++) {
    const [outer, inner] = [chain[k], chain[k + 1]];
    if (outer.least - inner.most < leastWall - tiny) throw refuseThin(inner, outer);
  }
  islands.forEach((island, k) => {
    for (const loop of chain) {
      if (loop.least >= island.most + leastWall - tiny || loop.most <= island.least - leastWall + tiny)
        continue;
      throw refuseThin(island, loop);
    }
    for (const other of islands.slice(k + 1)) checkApart(island, other);
  });
}

const tiny = 1e-9;

function checkApart(one: Loop, other: Loop): void {
  if (one.kind !== 'circle' || other.kind !== 'circle' || one.key === other.key) return;
  const wall = Math.hypot(one.x - other.x, one.y - other.y) - one.radius - other.radius;
  if (wall >= leastWall - tiny) return;
  const smaller = floor(2 * one.radius - Math.max(0, leastWall - wall));
  throw new Fail(
    'bad-geometry',
    one.field,
    `${one.name} and ${other.name} leave a wall of ${wall.toFixed(2)} mm between them, which makes no solid`,
    Number(smaller) > 0
      ? `Give fewer, or holes of at most ${smaller} mm: ${leastWall} mm of wall is the least.`
      : `Give fewer, or move them apart: ${leastWall} mm of wall is the least.`,
  );
}

/** Where one layer ends and the next begins, their curves are laid over each other in one face. */
function checkNeighbors(lower: StackLayer, upper: StackLayer): void {
  for (const below of lower.chain) {
    for (const above of upper.chain) {
      if (below.key === above.key) continue;
      const [outer, inner] = below.most > above.most ? [below, above] : [above, below];
      const gap = outer.least - inner.most;
      if (gap >= leastGap(outer, inner)) continue;
      throw refuseMeeting(inner, outer);
    }
  }
  const pairs = [
    [lower, upper],
    [upper, lower],
  ] as const;
  for (const [one, other] of pairs) {
    for (const island of one.islands) {
      for (const loop of other.chain) {
        if (loop.least >= island.most + smallestStep || loop.most <= island.least - smallestStep) continue;
        throw refuseMeeting(island, loop);
      }
      for (const second of other.islands) checkApart(island, second);
    }
  }
  // The bore runs through all; what holds two layers together is what stands round it in both.
  const shared = Math.min(coreOf(lower), coreOf(upper));
  const bore = lower.chain.find(({ key }) => key === 'bore')?.most ?? 0;
  if (shared - bore < leastWall - tiny) throw refuseMeeting(lower.chain[0], upper.chain[0]);
}

/** Radius of the innermost body of a layer. */
function coreOf({ chain }: StackLayer): number {
  return chain[chain.length - (chain[chain.length - 1].key === 'bore' ? 2 : 1)].least;
}

/** Steps smaller than this are no steps: a slip of a digit, mm on the radius. */
const smallestStep = 0.005;

function leastGap(outer: Loop, inner: Loop): number {
  if (outer.kind === 'teeth') return outer.least * (1 - innerPart) - tiny;
  return inner.kind === 'teeth' ? flangeOver - tiny : smallestStep;
}

/** A pocket must open to a face, and so must a hole: what covers it on all sides leaves a closed cavity. */
function checkPockets(layers: readonly StackLayer[]): void {
  layers.forEach((layer, k) => {
    for (const island of layer.islands) {
      const isOpen = [-1, 1].some((step) => {
        let next = k + step;
        while (layers[next]?.islands.some(({ key }) => key === island.key)) next += step;
        return !layers[next] || !isSolidAt(layers[next], island);
      });
      if (!isOpen) throw refuseCavity(island);
    }
    for (let at = 1; at + 1 < layer.chain.length; at += 2) {
      const rim = layer.chain[at];
      const isOpen = [-1, 1].some((step) => {
        for (let next = k + step; ; next += step) {
          const other = layers[next];
          if (!other) return true;
          const outer = other.chain[0];
          const isSame = other.chain.some(({ key }) => key === rim.key);
          if (isSame) continue;
          return outer.most <= rim.least - leastWall;
        }
      });
      if (!isOpen) throw refuseCavity(rim);
    }
  });
}

function isSolidAt({ chain }: StackLayer, island: Loop): boolean {
  return chain.filter((loop) => loop.least >= island.most).length % 2 === 1;
}

function refuseCavity(loop: Loop): Fail {
  return new Fail(
    'bad-geometry',
    loop.field,
    `${loop.name} is covered at its faces, which leaves a closed cavity`,
    `Leave out what covers it, or leave ${loop.name} out.`,
  );
}

function refuseThin(inner: Loop, outer: Loop): Fail {
  const isBeside = inner.kind === 'circle' && (inner.x !== 0 || inner.y !== 0);
  const wall = isBeside
    ? Math.max(outer.least - inner.most, inner.least - outer.most)
    : outer.least - inner.most;
  const size = inner.kind === 'circle' ? inner.radius : inner.most;
  const greatest = 2 * size - (isBeside ? 1 : 2) * (leastWall - wall);
  return new Fail(
    'bad-geometry',
    inner.field,
    `${inner.name} and ${outer.name} leave a wall of ${wall.toFixed(2)} mm, which makes no solid`,
    inner.kind !== 'teeth' && greatest > 0.01
      ? `Make ${inner.name} at most ${floor(greatest)} mm: ${leastWall} mm of wall is the least.`
      : `Make ${outer.name} at least ${ceil(2 * (inner.most + leastWall))} mm.`,
  );
}

function refuseMeeting(inner: Loop, outer: Loop): Fail {
  const greatest = 2 * (outer.least - leastGap(outer, inner));
  const canShrink = inner.kind === 'circle' && inner.x === 0 && inner.y === 0;
  return new Fail(
    'bad-geometry',
    inner.field,
    `${inner.name} ends where ${outer.name} begins, and their edges cross or all but touch`,
    canShrink && greatest > 0.01
      ? `Make ${inner.name} at most ${floor(greatest)} mm${outer.kind === 'circle' ? ', or both alike' : ''}.`
      : `Put a hub at least ${leastWall} mm long between them, no wider than the smaller roots, or move them apart.`,
  );
}

function ceil(value: number): string {
  return (Math.ceil(value * 100) / 100).toFixed(2);
}

function floor(value: number): string {
  return (Math.floor(value * 100) / 100).toFixed(2);
}
