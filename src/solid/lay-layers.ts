import { Fail } from '../fail.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import { innerPart } from './check-form.ts';
import { placePhaseMark } from './place-phase-mark.ts';
import {
  type Bore,
  findBoreRadius,
  findInnerBoreRadius,
  findMarkCircle,
  listSections,
  type PlacedSection,
  type Side,
  type WheelForm,
} from './wheel-form.ts';

/** One closed curve of a section. Loops with one key are one curve. `least` and `most`: its radii about the axis. */
export type Loop = LoopShape & {
  readonly key: string;
  readonly least: number;
  readonly most: number;
  /** How a person would call it, and the field that gives it */
  readonly name: string;
  readonly field: string;
};

type LoopShape =
  | { readonly kind: 'circle'; readonly radius: number; readonly x: number; readonly y: number }
  | { readonly kind: 'bore'; readonly bore: Bore }
  | { readonly kind: 'teeth'; readonly section: PlacedSection };

type CircleLoop = Extract<Loop, { readonly kind: 'circle' }>;

/** The curves of a part's section between two heights; material lies inside an odd number of them. */
export interface StackLayer {
  readonly low: number;
  readonly high: number;
  /** About the axis, the largest first, each within the one before */
  readonly chain: readonly Loop[];
  /** Beside the axis, none within another */
  readonly islands: readonly Loop[];
}

/**
 * The layers of a checked form of an external wheel or a ring: cut at every height where something begins or ends, what
 * lies within something larger left out. Throws Fail `bad-geometry` where things at one height cross, or none is there.
 */
export function layLayers(form: WheelForm): StackLayer[] {
  if (form.spec.kind === 'internal') return [layRing(form)];
  const sections = listSections(form);
  const bodies = sections.flatMap(listBodies);
  const pockets = sections.flatMap(listPockets);
  const marks = sections.flatMap((section) => placePhaseMark(section, bodies, form.bore));
  const heights = [
    ...bodies.flatMap(({ low, high }) => [low, high]),
    ...pockets.flatMap(({ low, high }) => [low, high]),
    ...marks.flatMap(({ low, high }) => [low, high]),
  ].sort((a, b) => a - b);
  const levels = heights.filter((z, k) => k === 0 || z - heights[k - 1] > sameHeight);
  const layers: StackLayer[] = [];
  for (let k = 0; k + 1 < levels.length; k++) {
    const [low, high] = [levels[k], levels[k + 1]];
    const isHere = (one: { low: number; high: number }): boolean =>
      one.low <= low + sameHeight && one.high >= high - sameHeight;
    layers.push(
      layLayer(
        form,
        sections,
        low,
        high,
        bodies.filter(isHere),
        pockets.filter(isHere),
        marks.filter(isHere).map(({ loop }) => loop),
      ),
    );
  }
  return layers;
}

function layRing(form: WheelForm): StackLayer {
  const rim = circle((form.rimDiameter ?? 0) / 2, 0, 0, 'the ring', 'rimDiameter');
  return { low: 0, high: form.faceWidth, chain: [rim, teethLoop(listSections(form)[0])], islands: [] };
}

/** Something that stands between two heights: a toothing, hub or flange. */
interface Body {
  readonly loop: Loop;
  readonly low: number;
  readonly high: number;
}

/** Heights nearer than this are one height, mm: no caliper tells them apart, and a sliver is no layer. */
export const sameHeight = 1e-6;

function listBodies(section: PlacedSection): Body[] {
  const { faceWidth, offset, hubs, flanges } = section;
  const onSide = (side: Side, length: number): { low: number; high: number } =>
    side === 'top'
      ? { low: offset + faceWidth, high: offset + faceWidth + length }
      : { low: offset - length, high: offset };
  return [
    { loop: teethLoop(section), low: offset, high: offset + faceWidth },
    ...hubs.map((hub) => ({
      loop: circle(hub.diameter / 2, 0, 0, `the hub of ${hub.diameter} mm`, fieldOf(section, 'hubs')),
      ...onSide(hub.side, hub.length),
    })),
    ...(flanges ?? []).map((flange) => ({
      loop: circle(
        flange.diameter / 2,
        0,
        0,
        `the flange of ${flange.diameter} mm`,
        fieldOf(section, 'flanges'),
      ),
      ...onSide(flange.side, flange.thickness),
    })),
  ];
}

/** The annular pockets that leave a web between them. */
interface Pocket {
  readonly section: PlacedSection;
  readonly low: number;
  readonly high: number;
  readonly rim: CircleLoop;
  readonly hub: CircleLoop;
}

function listPockets(section: PlacedSection): Pocket[] {
  const { web, faceWidth, offset } = section;
  if (!web) return [];
  const from = web.fromFace ?? (faceWidth - web.thickness) / 2;
  const field = fieldOf(section, 'web');
  const rim = circle(web.rimDiameter / 2, 0, 0, `the rim of ${web.rimDiameter} mm inside`, field);
  const hub = circle(web.hubDiameter / 2, 0, 0, `the web's hub of ${web.hubDiameter} mm`, field);
  return [
    { section, rim, hub, low: offset, high: offset + from },
    { section, rim, hub, low: offset + from + web.thickness, high: offset + faceWidth },
  ].filter(({ low, high }) => high - low > sameHeight);
}

function layLayer(
  form: WheelForm,
  sections: readonly PlacedSection[],
  low: number,
  high: number,
  bodies: readonly Body[],
  pockets: readonly Pocket[],
  marks: readonly Loop[],
): StackLayer {
  if (bodies.length === 0) throw refuseGap(sections, low, high);
  const [outer, ...inner] = bodies.map(({ loop }) => loop).sort((a, b) => b.most - a.most);
  for (const loop of inner) if (!isWithin(loop, outer)) throw refuseCrossing(loop, outer);
  const chain = [outer];
  for (const pocket of pockets) {
    // A pocket swallowed by something larger is none: its section shows nowhere at this height.
    if (outer.key !== teethLoop(pocket.section).key) continue;
    const standing = inner.filter((loop) => loop.key !== outer.key && loop.least < pocket.rim.radius);
    const largest = [pocket.hub, ...standing].sort((a, b) => b.most - a.most)[0];
    for (const loop of standing) if (!isWithin(loop, largest)) throw refuseCrossing(loop, largest);
    chain.push(pocket.rim, largest);
  }
  if (form.bore.shape !== 'none') {
    chain.push({
      kind: 'bore',
      bore: form.bore,
      key: 'bore',
      least: findInnerBoreRadius(form.bore),
      most: findBoreRadius(form.bore),
      name: 'the bore',
      field: 'bore',
    });
  }
  return {
    low,
    high,
    chain,
    islands: [...marks, ...listHoles(form, sections, low, high, chain)],
  };
}

function isWithin(inner: Loop, outer: Loop): boolean {
  if (inner.key === outer.key) return true;
  return inner.most <= outer.least * (outer.kind === 'teeth' ? innerPart : 1);
}

/** Through holes of the sections at this height, where material stands; a pocket has none to cut. */
function listHoles(
  form: WheelForm,
  sections: readonly PlacedSection[],
  low: number,
  high: number,
  chain: readonly Loop[],
): Loop[] {
  const rounds = sections.flatMap((section) => {
    const { holes, offset, faceWidth } = section;
    const isHere = offset <= low + sameHeight && offset + faceWidth >= high - sameHeight;
    if (!holes || !isHere) return [];
    const circleRadius = holes.circleDiameter / 2;
    return Array.from({ length: holes.count }, (_, k) =>
      circleAt(
        circleRadius,
        (section.phase ?? 0) + (2 * Math.PI * k) / holes.count,
        holes.diameter / 2,
        `a hole of ${holes.diameter} mm`,
        fieldOf(section, 'holes'),
      ),
    );
  });
  return [...rounds, ...listMarks(form)].filter((hole) => {
    let depth = 0;
    for (const loop of chain) if (loop.least >= hole.most) depth++;
    return depth % 2 === 1;
  });
}

/** Through holes that tell trial parts apart, side by side on an arc halfway between bore and root. */
function listMarks(form: WheelForm): Loop[] {
  const { marks } = form;
  if (!marks) return [];
  const radius = findMarkCircle(form);
  const apart = (1.6 * marks.diameter) / radius;
  return Array.from({ length: marks.count }, (_, k) =>
    circleAt(
      radius,
      Math.PI / 2 + (k - (marks.count - 1) / 2) * apart,
      marks.diameter / 2,
      `a mark of ${marks.diameter} mm`,
      'marks',
    ),
  );
}

function teethLoop(section: PlacedSection): Loop {
  const { spec, sector, offset } = section;
  const { tip, root } = findDiameters(spec);
  const isInternal = spec.kind === 'internal';
  return {
    kind: 'teeth',
    section,
    key: `teeth ${offset} ${JSON.stringify(spec)}`,
    least: isInternal ? tip / 2 : Math.min(root, sector?.restDiameter ?? root) / 2,
    most: isInternal ? root / 2 : tip / 2,
    name: `the ${spec.teeth} teeth`,
    field: fieldOf(section, 'spec'),
  };
}

function circle(radius: number, x: number, y: number, name: string, field: string): CircleLoop {
  const from = Math.hypot(x, y);
  return {
    kind: 'circle',
    radius,
    x,
    y,
    key: `circle ${radius} ${x} ${y}`,
    least: from === 0 ? radius : from - radius,
    most: from + radius,
    name,
    field,
  };
}

/** A circle about a point at a distance from the axis, in a direction. */
function circleAt(distance: number, angle: number, radius: number, name: string, field: string): Loop {
  return circle(radius, distance * Math.cos(angle), distance * Math.sin(angle), name, field);
}

function fieldOf(section: PlacedSection, field: string): string {
  return section.place ? `${section.place}.${field}` : field;
}

function refuseCrossing(loop: Loop, outer: Loop): Fail {
  const greatest = 2 * outer.least * (outer.kind === 'teeth' ? innerPart : 1);
  return new Fail(
    'bad-geometry',
    loop.field,
    `${loop.name} and ${outer.name} stand at the same height and cross`,
    `Move them apart, or make ${loop.name} no wider than ${(Math.floor(greatest * 100) / 100).toFixed(2)} mm.`,
  );
}

function refuseGap(sections: readonly PlacedSection[], low: number, high: number): Fail {
  const over = sections.find(({ offset }) => Math.abs(offset - high) < sameHeight);
  const gap = Math.round((high - low) * 1e4) / 1e4;
  return new Fail(
    'bad-geometry',
    over ? fieldOf(over, 'offset') : 'others',
    `nothing holds the part together over ${gap} mm of its length`,
    `Give a hub ${gap} mm long there, or move the teeth together by ${gap} mm.`,
  );
}
