import { Fail } from '../fail.ts';
import { checkLayers } from './check-layers.ts';
import { type Loop, layLayers, type StackLayer, sameHeight } from './lay-layers.ts';
import { leastWall, type WheelForm } from './wheel-form.ts';

/**
 * A part as upright walls and level faces, before anything is sampled or written: what the mesh and the exact formats
 * are both made from. Every end of every wall bounds exactly one face.
 */
export interface PartStack {
  readonly walls: readonly StackWall[];
  readonly faces: readonly StackFace[];
}

/** A closed loop carried from one height to another. */
export interface StackWall {
  readonly loop: Loop;
  readonly low: number;
  readonly high: number;
  /** The material lies outside the loop */
  readonly isHole: boolean;
  /** Chamfers of a toothing's ends, 0 where something larger covers the face */
  readonly chamfer: { readonly low: number; readonly high: number };
  /** A round hole along x through this wall: at its height, out at +x, where `isThrough` at −x too */
  readonly cross?: { readonly z: number; readonly radius: number; readonly isThrough: boolean } | undefined;
}

/** A level face between the ends of walls: material below where it looks up, above where it looks down. */
export interface StackFace {
  readonly z: number;
  readonly isUp: boolean;
  readonly outer: WallEnd;
  readonly holes: readonly WallEnd[];
}

export interface WallEnd {
  readonly wall: number;
  readonly end: 'low' | 'high';
}

/**
 * Stacks a checked form of an external wheel or ring (not a rack: a plain Error).
 *
 * The part is cut into layers at every height where something begins or ends. Neighboring layers' curves never cross
 * (else it is refused), so the face between them is made of whole cells between one curve and the next: those with
 * material on one side only. Throws Fail `bad-geometry` where features leave no wall, cross, or don't hang together.
 */
export function stackPart(form: WheelForm): PartStack {
  if (form.spec.kind === 'rack') throw new Error('a rack is no stack');
  const layers = layLayers(form);
  checkLayers(layers);
  return joinLayers(form, layers);
}

/** Joins layers: runs of one loop become a wall, cells with material on one side only become faces. */
function joinLayers(form: WheelForm, layers: readonly StackLayer[]): PartStack {
  const walls: { loop: Loop; low: number; high: number; isHole: boolean }[] = [];
  const faces: StackFace[] = [];
  /** Walls that run through the layer below the level, by their loop's key */
  let open = new Map<string, number>();
  const empty: Omit<StackLayer, 'low' | 'high'> = { chain: [], islands: [] };
  for (let k = 0; k <= layers.length; k++) {
    const lower = k > 0 ? layers[k - 1] : empty;
    const upper = k < layers.length ? layers[k] : empty;
    const z = k > 0 ? layers[k - 1].high : layers[0].low;
    const next = new Map<string, number>();
    if (k < layers.length) {
      const openOne = (loop: Loop, isHole: boolean): void => {
        const running = open.get(loop.key);
        if (running !== undefined && walls[running].isHole === isHole) {
          next.set(loop.key, running);
          return;
        }
        next.set(loop.key, walls.length);
        walls.push({ loop, low: z, high: z, isHole });
      };
      upper.chain.forEach((loop, depth) => {
        openOne(loop, depth % 2 === 1);
      });
      for (const loop of upper.islands) openOne(loop, true);
      for (const wall of next.values()) walls[wall].high = layers[k].high;
    }
    faces.push(...listFaces(lower, upper, z, open, next));
    open = next;
  }
  return { walls: walls.map((wall) => finishWall(form, walls, wall)), faces };
}

/**
 * The cells of two layers' curves laid over each other. Every cell is bounded by one curve outside and the next inside,
 * or it is an island.
 */
function listFaces(
  lower: Omit<StackLayer, 'low' | 'high'>,
  upper: Omit<StackLayer, 'low' | 'high'>,
  z: number,
  below: ReadonlyMap<string, number>,
  above: ReadonlyMap<string, number>,
): StackFace[] {
  const both = (list: 'chain' | 'islands'): Loop[] => [
    ...new Map([...lower[list], ...upper[list]].map((loop) => [loop.key, loop])).values(),
  ];
  const chain = both('chain').sort((a, b) => b.most - a.most);
  const islands = both('islands');
  const endOf = (loop: Loop): WallEnd => {
    const [under, over] = [below.get(loop.key), above.get(loop.key)];
    if (under !== undefined && under === over) throw new Error(`${loop.key} runs on through a face`);
    if (over !== undefined) return { wall: over, end: 'low' };
    if (under === undefined) throw new Error(`${loop.key} has no wall`);
    return { wall: under, end: 'high' };
  };
  const faces: StackFace[] = [];
  const add = (isUnder: boolean, isOver: boolean, outer: Loop, holes: readonly Loop[]): void => {
    if (isUnder !== isOver) faces.push({ z, isUp: isUnder, outer: endOf(outer), holes: holes.map(endOf) });
  };
  let isUnder = false;
  let isOver = false;
  chain.forEach((outer, k) => {
    if (lower.chain.some(({ key }) => key === outer.key)) isUnder = !isUnder;
    if (upper.chain.some(({ key }) => key === outer.key)) isOver = !isOver;
    const inner = chain[k + 1];
    const within = islands.filter(
      (island) => outer.least >= island.most && !(inner && inner.least >= island.most),
    );
    add(isUnder, isOver, outer, [...(inner ? [inner] : []), ...within]);
    for (const island of within) {
      const isIn = (layer: typeof lower): boolean => layer.islands.some(({ key }) => key === island.key);
      add(isUnder !== isIn(lower), isOver !== isIn(upper), island, []);
    }
  });
  return faces;
}

function finishWall(
  form: WheelForm,
  walls: readonly { loop: Loop; low: number; high: number; isHole: boolean }[],
  wall: { loop: Loop; low: number; high: number; isHole: boolean },
): StackWall {
  const { loop, low, high } = wall;
  if (loop.kind === 'teeth') {
    const { offset, faceWidth, chamfer } = loop.section;
    const isCovered = (z: number): boolean =>
      !wall.isHole &&
      walls.some((one) => one.loop.most > loop.most && (one.low === z || one.high === z) && !one.isHole);
    return {
      ...wall,
      chamfer: {
        low: Math.abs(low - offset) < sameHeight && !isCovered(low) ? chamfer : 0,
        high: Math.abs(high - offset - faceWidth) < sameHeight && !isCovered(high) ? chamfer : 0,
      },
    };
  }
  return { ...wall, chamfer: { low: 0, high: 0 }, cross: findCross(form, wall) };
}

/** A cross hole goes through the hub's wall and the bore's. */
function findCross(form: WheelForm, wall: { loop: Loop; low: number; high: number }): StackWall['cross'] {
  const { crossHole, hubs, faceWidth } = form;
  const hub = hubs.find(({ side }) => side === crossHole?.side);
  if (!crossHole || !hub) return undefined;
  const from = crossHole.fromFace ?? hub.length / 2;
  const z = crossHole.side === 'top' ? faceWidth + from : -from;
  const { loop, low, high } = wall;
  if (z < low || z > high) return undefined;
  const radius = crossHole.diameter / 2;
  if (loop.kind === 'circle' && loop.x === 0 && loop.y === 0) {
    if (z - radius - leastWall < low - 1e-9 || z + radius + leastWall > high + 1e-9) throw refuseCross(loop);
  } else if (loop.kind !== 'bore') throw refuseCross(loop);
  return { z, radius, isThrough: crossHole.isThrough === true };
}

function refuseCross(loop: Loop): Fail {
  return new Fail(
    'bad-geometry',
    'crossHole',
    `a cross hole that meets ${loop.name} makes no solid`,
    'Move it along the hub, or give a smaller one.',
  );
}
