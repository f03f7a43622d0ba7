import { listFlattenedArcs, sampleArc, traceBore, tracePolygon } from './bore-outline.ts';
import { fillLoop } from './fill-cap.ts';
import type { MeshBuilder, MeshRing } from './mesh.ts';
import type { StackWall } from './part-stack.ts';

/**
 * How a wall stands where a cross hole meets it, at +x (side 1) and −x (side −1): a round wall of that radius, or a
 * flat at that distance.
 */
export function findCrossedSide(
  wall: StackWall,
  side: 1 | -1,
): { readonly radius: number } | { readonly flat: number } {
  const { loop } = wall;
  if (loop.kind === 'circle') return { radius: loop.radius };
  if (loop.kind !== 'bore') throw new Error(`a cross hole through ${loop.key}`);
  const { bore } = loop;
  switch (bore.shape) {
    case 'round':
      return { radius: bore.diameter / 2 };
    case 'd':
      return side > 0 ? { flat: bore.flat - bore.diameter / 2 } : { radius: bore.diameter / 2 };
    case 'double-d':
      return { flat: bore.flat / 2 };
    case 'hex':
    case 'square':
      return { flat: bore.acrossFlats / 2 };
    default:
      throw new Error(`a cross hole through a ${bore.shape} bore`);
  }
}

/** The hole's rim, y from −ρ to ρ in even steps round it. */
const rimSteps = 24;

function listRimSines(): number[] {
  return Array.from({ length: rimSteps + 1 }, (_, k) => -Math.cos((k * Math.PI) / rimSteps));
}

/**
 * A wall's loop where a cross hole goes through it: a round wall gets corners over and under the hole's rim, so that
 * no triangle of the wall reaches further round it than one step.
 */
export function traceCrossed(wall: StackWall, chordError: number): Float64Array {
  const { loop, cross } = wall;
  if (!cross) throw new Error(`${loop.key} has no cross hole`);
  if (loop.kind === 'bore' && loop.bore.shape === 'hex')
    return tracePolygon(6, loop.bore.acrossFlats / Math.sqrt(3));
  if (loop.kind === 'bore' && loop.bore.shape === 'double-d') return traceBore(loop.bore, chordError);
  if (loop.kind === 'bore' && loop.bore.shape === 'square')
    return tracePolygon(4, loop.bore.acrossFlats / Math.SQRT2);
  const back = findCrossedSide(wall, -1);
  if (!('radius' in back)) throw new Error(`${loop.key} is not round`);
  const { radius } = back;
  const angles = listRimSines().map((sine) => Math.asin((sine * cross.radius) / radius));
  const window = (about: number): number[] =>
    angles.flatMap((angle) => [radius * Math.cos(about + angle), radius * Math.sin(about + angle)]);
  const half = angles[rimSteps];
  const isD = loop.kind === 'bore' && loop.bore.shape === 'd';
  // Without the ends, which the windows have; a D's ends belong to its flat.
  const between = (from: number, to: number): number[] =>
    sampleArc(radius, from, to, chordError).slice(2, -2);
  const [start] = isD ? listFlattenedArcs(loop.bore as never)[0] : [half];
  const points: number[] = isD ? [radius * Math.cos(start), radius * Math.sin(start)] : window(0);
  const end = 2 * Math.PI - start;
  if (cross.isThrough) {
    points.push(...between(start, Math.PI - half), ...window(Math.PI), ...between(Math.PI + half, end));
  } else points.push(...between(start, end));
  if (isD) points.push(radius * Math.cos(end), radius * Math.sin(end));
  return Float64Array.from(points);
}

/** Corners that cross holes add at most. */
export function countCrossed(walls: readonly StackWall[]): number {
  return walls.some(({ cross }) => cross) ? walls.length * 8 * (rimSteps + 2) + 1024 : 0;
}

/** Adds the walls that cross holes go through, and the holes' own walls between hub and bore. */
export function crossWalls(
  mesh: MeshBuilder,
  walls: readonly StackWall[],
  rings: readonly { readonly low: MeshRing; readonly high: MeshRing }[],
): void {
  const rims = new Map<1 | -1, { outer?: number[]; inner?: number[] }>();
  walls.forEach((wall, k) => {
    const { cross, isHole } = wall;
    if (!cross) return;
    const sides = cross.isThrough ? ([1, -1] as const) : ([1] as const);
    const found = sides.map((side) => addRim(mesh, wall, side));
    found.forEach((rim, i) => {
      const known = rims.get(sides[i]) ?? {};
      rims.set(sides[i], isHole ? { ...known, inner: rim } : { ...known, outer: rim });
    });
    addPiercedWall(mesh, wall, rings[k].low, rings[k].high, sides, found);
  });
  for (const [, { outer, inner }] of rims) {
    if (!outer || !inner) throw new Error('a cross hole with one end');
    outer.forEach((corner, k) => {
      const next = (k + 1) % outer.length;
      // Rims run the same way seen from outside: under the hole in the direction of the loop, back over it.
      mesh.addTriangle(corner, inner[next], inner[k]);
      mesh.addTriangle(corner, outer[next], inner[next]);
    });
  }
}

/** The rim's corners: under the hole along the loop's direction (counter-clockwise), then back over it. */
function addRim(mesh: MeshBuilder, wall: StackWall, side: 1 | -1): number[] {
  const { cross } = wall;
  if (!cross) throw new Error('no cross hole');
  const form = findCrossedSide(wall, side);
  const at = (sine: number, up: 1 | -1): number => {
    const y = sine * cross.radius;
    const x = 'radius' in form ? Math.sqrt(form.radius * form.radius - y * y) : form.flat;
    const height = cross.radius * Math.sqrt(Math.max(0, 1 - sine * sine));
    return mesh.addCorner(side * x, side * y, cross.z + up * height);
  };
  const sines = listRimSines();
  return [
    ...sines.map((sine) => at(sine, -1)),
    ...sines.slice(1, -1).map((_, k) => at(sines[rimSteps - 1 - k], 1)),
  ];
}

function addPiercedWall(
  mesh: MeshBuilder,
  wall: StackWall,
  low: MeshRing,
  high: MeshRing,
  sides: readonly (1 | -1)[],
  rims: readonly (readonly number[])[],
): void {
  const { count } = low;
  const add = (a: number, b: number, c: number): void =>
    wall.isHole ? mesh.addTriangle(a, c, b) : mesh.addTriangle(a, b, c);
  const done = new Set<number>();
  sides.forEach((side, i) => {
    const rim = rims[i];
    const form = findCrossedSide(wall, side);
    const start = findStart(wall, side, count);
    if ('flat' in form) {
      const next = (start + 1) % count;
      const ends = [low.first + start, low.first + next, high.first + next, high.first + start];
      addPiercedFlat(wall, form.flat, ends, rim, add);
      done.add(start);
      return;
    }
    const underOf = (k: number): number => rim[k];
    const overOf = (k: number): number => (k === 0 || k === rimSteps ? rim[k] : rim[2 * rimSteps - k]);
    for (let k = 0; k < rimSteps; k++) {
      const a = (start + k) % count;
      const b = (a + 1) % count;
      done.add(a);
      add(low.first + a, low.first + b, underOf(k + 1));
      add(low.first + a, underOf(k + 1), underOf(k));
      add(overOf(k), overOf(k + 1), high.first + b);
      add(overOf(k), high.first + b, high.first + a);
    }
    // The strips beside the hole meet its two ends halfway up.
    for (const [a, corner] of [
      [(start + count - 1) % count, rim[0]],
      [(start + rimSteps) % count, rim[rimSteps]],
    ]) {
      const b = (a + 1) % count;
      done.add(a);
      const isBefore = corner === rim[0];
      if (isBefore) {
        add(low.first + a, low.first + b, corner);
        add(low.first + a, corner, high.first + a);
        add(corner, high.first + b, high.first + a);
      } else {
        add(low.first + a, low.first + b, corner);
        add(low.first + b, high.first + b, corner);
        add(corner, high.first + b, high.first + a);
      }
    }
  });
  for (let a = 0; a < count; a++) {
    if (done.has(a)) continue;
    const b = (a + 1) % count;
    add(low.first + a, low.first + b, high.first + b);
    add(low.first + a, high.first + b, high.first + a);
  }
}

/** The loop's corner that the pierced part begins at: a window's first, or a flat's. */
function findStart(wall: StackWall, side: 1 | -1, count: number): number {
  const { loop } = wall;
  if (loop.kind === 'circle' || (loop.kind === 'bore' && loop.bore.shape === 'round')) {
    if (side > 0) return 0;
    // The loop is its own mirror image: as many corners lie between the windows on either side.
    return rimSteps + (count - 2 * rimSteps) / 2;
  }
  if (loop.kind !== 'bore') throw new Error(`a cross hole through ${loop.key}`);
  if (side > 0) return count - 1;
  if (loop.bore.shape === 'd') return (count - 1 - rimSteps) / 2;
  return count / 2 - 1;
}

/** A flat with a hole in it; `ends`: its corners, seen from outside the loop counter-clockwise from the lower left. */
function addPiercedFlat(
  { cross, loop, low, high }: StackWall,
  flat: number,
  ends: readonly number[],
  rim: readonly number[],
  add: (a: number, b: number, c: number) => void,
): void {
  if (!cross) throw new Error('no cross hole');
  const half = Math.sqrt(Math.max(0, loop.most * loop.most - flat * flat));
  const hole = rim.flatMap((_, k) => {
    const turn = (k * Math.PI) / rimSteps;
    return [-cross.radius * Math.cos(turn), cross.z - cross.radius * Math.sin(turn)];
  });
  const corners = [...ends, ...rim];
  const triples = fillLoop([-half, low, half, low, half, high, -half, high], [hole]);
  for (let k = 0; k < triples.length; k += 3)
    add(corners[triples[k]], corners[triples[k + 1]], corners[triples[k + 2]]);
}
