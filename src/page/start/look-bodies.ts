import type { Point } from '../acts/sketch/draw-points.ts';
import { makeSketchGear } from '../acts/sketch/sketch-gear.ts';
import type { Look } from './look.ts';
import { type Body, raiseWalls, type Spot, topFace } from './solid-picture.ts';

/** The bodies of the picture of a look, lying as on a table; the units are free. */
export function makeLookBodies(look: Look): Body[] {
  switch (look) {
    case 'straight':
      return [raise(gear(14, 10), 8, { hole: circle(3) })];
    case 'slanted-left':
      return [raise(gear(14, 10), 11, { hole: circle(3), twist: -0.55 })];
    case 'slanted-right':
      return [raise(gear(14, 10), 11, { hole: circle(3), twist: 0.55 })];
    case 'inside':
      return [raise(circle(10), 7, { hole: insideTeeth(20, 8.2) })];
    case 'bar':
      return [makeBar()];
    case 'two-rows':
      return [raise(gear(20, 10), 4), raise(gear(10, 5), 6, { from: 4, hole: circle(1.8) })];
    case 'part-rim':
      return [raise(partRim(18, 10, 6), 5, { hole: circle(2.6) })];
    case 'cone':
      return [raise(gear(14, 10), 6.5, { hole: circle(2), taper: 0.58 })];
    case 'crown':
      return makeCrown();
    case 'worm':
      return makeWorm();
    case 'clock-teeth':
      return [raise(clockTeeth(18), 1.6, { hole: circle(1.4) })];
    case 'ratchet':
      return [raise(sawTeeth(14), 2.4, { hole: circle(2.4) })];
    case 'belt-wheel':
      return [
        raise(circle(10), 1.2),
        raise(beltTeeth(16), 8, { from: 1.2 }),
        raise(circle(10), 1.2, { from: 9.2, hole: circle(2.6) }),
      ];
  }
}

interface Raised {
  readonly from?: number;
  readonly hole?: readonly Point[];
  /** rad over the height; positive is right hand */
  readonly twist?: number;
  /** Upper outline against the lower */
  readonly taper?: number;
}

/** An outline raised to a body with a flat top, with a hole through it where one is given. */
function raise(outline: readonly Point[], height: number, given: Raised = {}): Body {
  const { from = 0, hole, twist = 0, taper = 1 } = given;
  const layer = (points: readonly Point[], z: number, turn: number, size: number): Spot[] =>
    points.map(
      ([x, y]): Spot => [
        size * (x * Math.cos(turn) - y * Math.sin(turn)),
        size * (x * Math.sin(turn) + y * Math.cos(turn)),
        z,
      ],
    );
  const steps = twist === 0 ? 1 : 6;
  const layers = Array.from({ length: steps + 1 }, (_, i) => {
    const t = i / steps;
    return layer(outline, from + t * height, twist * t, 1 + (taper - 1) * t);
  });
  const walls = layers.slice(1).flatMap((upper, i) => {
    const faces = raiseWalls(layers[i], upper);
    // Only the lowest layer has a lower edge; between layers there is none to see.
    return i === 0 ? faces : faces.map((face) => ({ ...face, lines: face.lines.slice(1) }));
  });
  const top = layers[layers.length - 1];
  if (!hole) return { walls, tops: [topFace(top)] };
  const inner = [...hole].reverse();
  const holeTop = layer(inner, from + height, 0, 1);
  return {
    walls: [...raiseWalls(layer(inner, from, 0, 1), holeTop), ...walls],
    tops: [topFace(top, holeTop)],
  };
}

function gear(teeth: number, radius: number): Point[] {
  const { points, tip } = makeSketchGear({ kind: 'external', teeth, isSplit: false, isHelical: false });
  const turn = -Math.PI / 2;
  return points.map(([x, y]): Point => turned([(x * radius) / tip, (y * radius) / tip], turn));
}

function insideTeeth(teeth: number, radius: number): Point[] {
  const { points, root } = makeSketchGear({ kind: 'internal', teeth, isSplit: false, isHelical: false });
  return points.map(([x, y]): Point => [(x * radius) / root, (y * radius) / root]);
}

function partRim(teeth: number, radius: number, kept: number): Point[] {
  const all = gear(teeth, radius);
  const perTooth = all.length / teeth;
  const first = -Math.floor(kept / 2);
  const rim = Array.from(
    { length: kept * perTooth },
    (_, k) => all[(first * perTooth + k + all.length) % all.length],
  );
  const root = Math.hypot(...rim[0]);
  const start = Math.atan2(rim[rim.length - 1][1], rim[rim.length - 1][0]);
  const end = Math.atan2(rim[0][1], rim[0][0]);
  const sweep = (((end - start) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  const count = 40;
  const round = Array.from({ length: count - 1 }, (_, i): Point => {
    const angle = start + (sweep * (i + 1)) / count;
    return [root * Math.cos(angle), root * Math.sin(angle)];
  });
  return [...rim, ...round];
}

function circle(radius: number): Point[] {
  return Array.from({ length: 48 }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / 48;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}

/** Outlines tooth by tooth: radius and share of the pitch of each corner. */
function repeat(teeth: number, corners: readonly Point[]): Point[] {
  return Array.from({ length: teeth }, (_, tooth) =>
    corners.map(([radius, share]): Point => {
      const angle = (2 * Math.PI * (tooth + share)) / teeth - Math.PI / 2;
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    }),
  ).flat();
}

/** Long thin teeth with radial sides and rounded tips. */
function clockTeeth(teeth: number): Point[] {
  return repeat(teeth, [
    [7, -0.29],
    [8.4, -0.25],
    [9.2, -0.2],
    [9.8, -0.09],
    [10, 0],
    [9.8, 0.09],
    [9.2, 0.2],
    [8.4, 0.25],
    [7, 0.29],
  ]);
}

function sawTeeth(teeth: number): Point[] {
  return repeat(teeth, [
    [8, 0],
    [8.7, 0.33],
    [9.4, 0.67],
    [10, 0.97],
  ]);
}

function beltTeeth(teeth: number): Point[] {
  return repeat(teeth, [
    [8.6, -0.28],
    [8.6, 0.28],
    [7.6, 0.36],
    [7.6, 0.64],
  ]);
}

/** A bar lying along the picture, teeth up, turned a little so that its end shows. */
function makeBar(): Body {
  const pitch = 5;
  const [tips, foot, back] = [3.4, 0, -3.2];
  const profile: Point[] = [
    [-15, back],
    [15, back],
    [15, foot],
  ];
  for (let i = 2; i >= -3; i--) {
    const middle = (i + 0.5) * pitch;
    profile.push([middle + 1.9, foot], [middle + 0.75, tips], [middle - 0.75, tips], [middle - 1.9, foot]);
  }
  profile.push([-15, foot]);
  const yaw = 0.32;
  const put = ([x, z]: Point, y: number): Spot => {
    const [px, py] = turned([x, y], yaw);
    return [px, py, z];
  };
  const near = profile.map((point) => put(point, -4));
  const far = profile.map((point) => put(point, 4));
  // Seen from the front the profile runs counter-clockwise, so its walls go from far to near.
  const walls = raiseWalls(far, near).map((face) => ({ ...face, lines: [...face.loops] }));
  return { walls, tops: [topFace(near)] };
}

/** A flat ring with teeth standing up from it. */
function makeCrown(): Body[] {
  const teeth = 14;
  const [outer, inner, low, high] = [10, 6.6, 3.2, 6];
  const sector = (from: number, to: number, z: number): Spot[] => {
    const at = (radius: number, angle: number): Spot => [
      radius * Math.cos(angle),
      radius * Math.sin(angle),
      z,
    ];
    const middle = (from + to) / 2;
    return [
      at(outer, from),
      at(outer, middle),
      at(outer, to),
      at(inner, to),
      at(inner, middle),
      at(inner, from),
    ];
  };
  const pitch = (2 * Math.PI) / teeth;
  const stubs = Array.from({ length: teeth }, (_, i): Body => {
    const middle = i * pitch + Math.PI / 2 + pitch / 2;
    const lower = sector(middle - 0.3 * pitch, middle + 0.3 * pitch, low);
    const upper = sector(middle - 0.16 * pitch, middle + 0.16 * pitch, high);
    return { walls: raiseWalls(lower, upper), tops: [topFace(upper)] };
  });
  // Far teeth first: each hides what stands behind it.
  stubs.sort((a, b) => farthest(b) - farthest(a));
  return [raise(circle(outer), low, { hole: circle(inner) }), ...stubs];
}

function farthest({ tops }: Body): number {
  return Math.max(...tops[0].loops[0].map(([, y]) => y));
}

/** A screw standing up: a round stem and the turns of its thread as rising rings. */
function makeWorm(): Body[] {
  const turns = 5;
  const rise = 4.4;
  const ring = (radius: number, z: number): Spot[] =>
    circle(radius).map(([x, y]): Spot => [x, y, z + (rise * 0.5 * Math.atan2(x, -y)) / Math.PI]);
  const bodies: Body[] = [raise(circle(3), 5, { from: -5 })];
  for (let i = 0; i < turns; i++) {
    const z = i * rise + 1.6;
    const [foot, edge, crest, back] = [
      ring(3.6, z - 0.2),
      ring(6, z + 1),
      ring(6, z + 1.9),
      ring(3.6, z + 3.1),
    ];
    bodies.push({
      walls: [...raiseWalls(foot, edge), ...raiseWalls(edge, crest), ...raiseWalls(crest, back)],
      tops: [],
    });
  }
  bodies.push(raise(circle(3), 4.5, { from: turns * rise + 1 }));
  return bodies;
}

function turned([x, y]: Point, by: number): Point {
  return [x * Math.cos(by) - y * Math.sin(by), x * Math.sin(by) + y * Math.cos(by)];
}
