import { Fail } from '../fail.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { findTrochoid } from '../involute/trochoid.ts';
import { checkBore } from './check-bore.ts';
import {
  type Flange,
  findBoreRadius,
  findMarkCircle,
  type LighteningHoles,
  leastWall,
  listSections,
  type PlacedSection,
  type ToothedSection,
  type WheelForm,
} from './wheel-form.ts';

/**
 * Throws Fail `bad-geometry`, naming the field and a value that works, where a part's own sizes make no solid: each
 * feature against its section. What features do to one another shows when they are stacked.
 */
export function checkForm(form: WheelForm): void {
  for (const other of form.others ?? []) {
    const { kind } = other.spec;
    if (kind !== 'external')
      throw refuse(other, 'kind', `a ${kind} toothing on another`, 'Leave it out, or make it alone.');
  }
  for (const section of listSections(form)) checkTeeth(section);
  const { spec, bore } = form;
  if (spec.kind === 'rack') {
    refuseExtras(form);
    return;
  }
  if (spec.kind === 'internal') {
    refuseExtras(form);
    checkRim(form);
    return;
  }
  checkBore(bore);
  checkBoreFits(form);
  for (const section of listSections(form)) checkSection(section, 2 * findBoreRadius(bore));
  if (form.marks && form.marks.count > 0) checkMarks(form);
  checkCrossHole(form);
}

function checkTeeth(section: PlacedSection): void {
  const { spec, faceWidth, chamfer } = section;
  if (spec.kind === 'external') checkSector(section);
  if (!(faceWidth > 0))
    throw refuse(section, 'faceWidth', `a face width of ${faceWidth} mm`, 'Give a face width above 0.');
  if (!Number.isFinite(section.offset))
    throw refuse(section, 'offset', `an offset of ${section.offset} mm`, 'Give an offset in mm.');
  if (spec.kind === 'rack') {
    if (chamfer > 0) throw refuse(section, 'chamfer', 'a rim chamfer on a rack', 'Leave the chamfer out.');
    return;
  }
  const greatest = findGreatestChamfer(section);
  if (!(chamfer >= 0) || chamfer > greatest) {
    throw refuse(
      section,
      'chamfer',
      `a chamfer of ${chamfer} mm on flanks ${findFlankDepth(spec).toFixed(2)} mm deep and a face ${faceWidth} mm wide`,
      greatest >= 0.01 ? `Give a chamfer of at most ${floor(greatest)} mm.` : 'Leave the chamfer out.',
    );
  }
}

/** Some face width stays between two chamfers, and a tip stays above an internal wheel's root. */
const chamferPart = 0.9;

function findGreatestChamfer({ spec, faceWidth }: ToothedSection): number {
  const depth = findFlankDepth(spec);
  return Math.min((faceWidth / 2) * chamferPart, spec.kind === 'internal' ? depth * chamferPart : depth);
}

/** On external wheels down to where the involute begins: a face cut back into an undercut would overlap itself. */
function findFlankDepth(spec: GearSpec): number {
  const { tip, root } = findDiameters(spec);
  return spec.kind === 'internal' ? (root - tip) / 2 : tip / 2 - findTrochoid(spec).endRadius;
}

/** A ring or a rack is its teeth alone. */
function refuseExtras(form: WheelForm): void {
  const { spec, bore, hubs, web, holes, flanges, sector, phaseMark, crossHole, others } = form;
  const extras: readonly [string, string, boolean][] = [
    ['bore', 'bore', bore.shape !== 'none'],
    ['hubs', 'hub', hubs.length > 0],
    ['web', 'web', web !== undefined],
    ['holes', 'row of holes', holes !== undefined],
    ['flanges', 'flange', (flanges ?? []).length > 0],
    ['sector', 'sector', sector !== undefined],
    ['phaseMark', 'phase mark', phaseMark !== undefined],
    ['crossHole', 'cross hole', crossHole !== undefined],
    ['others', 'second toothing', (others ?? []).length > 0],
  ];
  for (const [field, what, isThere] of extras) {
    if (isThere)
      throw refuse(undefined, field, `a ${what} in a ${spec.kind} toothing`, `Leave the ${what} out.`);
  }
}

function checkRim(form: WheelForm): void {
  const { root } = findDiameters(form.spec);
  const least = root + 2 * leastWall;
  if ((form.rimDiameter ?? 0) >= least) return;
  throw refuse(
    undefined,
    'rimDiameter',
    form.rimDiameter === undefined
      ? 'a ring without an outside diameter'
      : `an outside diameter of ${form.rimDiameter} mm round a root circle of ${root.toFixed(2)} mm`,
    `Give a rim diameter of at least ${ceil(least)} mm.`,
  );
}

/** The bore runs through all: the narrowest toothing decides. */
function checkBoreFits(form: WheelForm): void {
  const hole = 2 * findBoreRadius(form.bore);
  const narrowest = Math.min(...listSections(form).map(findInner));
  const greatest = narrowest - 2 * leastWall;
  if (hole === 0 || hole <= greatest) return;
  throw refuse(
    undefined,
    'bore',
    `a bore ${hole.toFixed(2)} mm across its corners in a wheel whose root diameter is ${narrowest.toFixed(2)} mm`,
    greatest >= 0.01
      ? `Give a bore of at most ${floor(greatest)} mm: ${leastWall} mm of wall is the least.`
      : 'Leave the bore out.',
  );
}

function checkSection(section: PlacedSection, hole: number): void {
  const { spec, hubs, web, holes, phaseMark } = section;
  const { root } = findDiameters(spec);
  const leastHub = hole + 2 * leastWall;
  for (const hub of hubs) {
    if (!(hub.diameter >= leastHub && hub.diameter <= root * innerPart)) {
      throw refuse(
        section,
        'hubs',
        `a hub of ${hub.diameter} mm`,
        Math.ceil(leastHub * 100) <= Math.floor(root * innerPart * 100)
          ? `Give a hub between ${ceil(leastHub)} and ${floor(root * innerPart)} mm.`
          : 'Leave the hub out, or give a smaller bore.',
      );
    }
    if (!(hub.length > 0))
      throw refuse(section, 'hubs', `a hub ${hub.length} mm long`, 'Give a length above 0.');
  }
  checkSides(section, 'hubs', hubs);
  for (const flange of section.flanges ?? []) checkFlange(section, flange);
  checkSides(section, 'flanges', section.flanges ?? []);
  if (web) checkWeb(section, web);
  if (holes) checkHoles(section, holes, hole);
  if (phaseMark && !(phaseMark.diameter > 0 && phaseMark.depth > 0)) {
    throw refuse(
      section,
      'phaseMark',
      `a mark of ${phaseMark.diameter} mm, ${phaseMark.depth} mm deep`,
      'Give a diameter and a depth above 0.',
    );
  }
}

// What stands inside teeth stays inside the polygon of the root arcs: the coarsest chord error of a solid takes
// 0.008 off it.
export const innerPart = 0.985;

/** Diameter inside which a section has no gaps. */
function findInner({ spec, sector }: ToothedSection): number {
  const { root } = findDiameters(spec);
  return Math.min(root, sector?.restDiameter ?? root);
}

function checkSector(section: PlacedSection): void {
  const { spec, sector } = section;
  if (!sector) return;
  const { tip } = findDiameters(spec);
  if (!(Number.isInteger(sector.teeth) && sector.teeth >= 1 && sector.teeth < spec.teeth)) {
    throw refuse(
      section,
      'sector',
      `a sector of ${sector.teeth} teeth out of ${spec.teeth}`,
      spec.teeth > 1 ? `Give 1 to ${spec.teeth - 1} teeth, or leave the sector out.` : 'Leave it out.',
    );
  }
  const rest = sector.restDiameter;
  if (rest !== undefined && !(rest > 0 && rest <= tip)) {
    throw refuse(
      section,
      'sector',
      `a cylinder of ${rest} mm beside teeth whose tips span ${tip.toFixed(2)} mm`,
      `Give at most ${floor(tip)} mm, or leave it out: it is the root circle then.`,
    );
  }
}

/** A flange whose edge ran between roots and tips would have to be cut to the teeth's shape. */
function checkFlange(section: PlacedSection, flange: Flange): void {
  const { tip, root } = findDiameters(section.spec);
  const least = tip + 2 * flangeOver;
  if (!(flange.diameter >= least)) {
    throw refuse(
      section,
      'flanges',
      `a flange of ${flange.diameter} mm beside tips that span ${tip.toFixed(2)} mm`,
      `Give at least ${ceil(least)} mm; what is no wider than ${floor(root * innerPart)} mm is a hub.`,
    );
  }
  if (!(flange.thickness >= leastWall)) {
    throw refuse(
      section,
      'flanges',
      `a flange ${flange.thickness} mm thick`,
      `Give at least ${leastWall} mm.`,
    );
  }
}

/** How far a flange reaches over the tips at least, mm: less is the width of a chord. */
export const flangeOver = 0.02;

function checkWeb(section: PlacedSection, web: NonNullable<ToothedSection['web']>): void {
  const { faceWidth } = section;
  const from = web.fromFace ?? (faceWidth - web.thickness) / 2;
  if (!(web.thickness >= leastWall && web.thickness < faceWidth)) {
    throw refuse(
      section,
      'web',
      `a web ${web.thickness} mm thick in a face ${faceWidth} mm wide`,
      faceWidth > leastWall
        ? `Give at least ${leastWall} and less than ${faceWidth} mm, or leave the web out.`
        : 'Leave the web out.',
    );
  }
  if (!(from >= 0 && from + web.thickness <= faceWidth + 1e-9)) {
    throw refuse(
      section,
      'web',
      `a web from ${from} to ${from + web.thickness} mm in a face ${faceWidth} mm wide`,
      `Begin it at 0 to ${floor(faceWidth - web.thickness)} mm.`,
    );
  }
  const greatest = findInner(section) - 2 * leastWall;
  if (!(web.rimDiameter <= greatest)) {
    throw refuse(
      section,
      'web',
      `a rim of ${web.rimDiameter} mm inside under roots of ${findInner(section).toFixed(2)} mm`,
      `Give a rim of at most ${floor(greatest)} mm inside.`,
    );
  }
  if (!(web.rimDiameter >= web.hubDiameter + 2 * leastWall)) {
    throw refuse(
      section,
      'web',
      `a web between ${web.hubDiameter} and ${web.rimDiameter} mm`,
      `Give a hub of at most ${floor(web.rimDiameter - 2 * leastWall)} mm, or leave the web out.`,
    );
  }
}

/** Between bore (or the web's hub) and roots (or the rim), with walls; what stands on the faces is seen later. */
function checkHoles(section: PlacedSection, holes: LighteningHoles, bore: number): void {
  const { count, diameter, circleDiameter } = holes;
  if (!(Number.isInteger(count) && count > 0 && diameter > 0)) {
    throw refuse(
      section,
      'holes',
      `${count} holes of ${diameter} mm`,
      'Give a whole count and a diameter above 0.',
    );
  }
  const outer = (section.web?.rimDiameter ?? findInner(section)) - 2 * leastWall;
  const inner = (section.web?.hubDiameter ?? bore) + 2 * leastWall;
  if (circleDiameter + diameter <= outer && circleDiameter - diameter >= inner) return;
  const room = Math.min(outer - circleDiameter, circleDiameter - inner);
  throw refuse(
    section,
    'holes',
    `holes of ${diameter} mm on a circle of ${circleDiameter} mm in the disk between ${inner.toFixed(2)} and ${outer.toFixed(2)} mm`,
    room >= 0.01
      ? `Give holes of at most ${floor(room)} mm there.`
      : `Put them on a circle of ${((inner + outer) / 2).toFixed(2)} mm, at most ${floor(Math.max(0, (outer - inner) / 2))} mm across.`,
  );
}

function checkSides(
  section: PlacedSection,
  field: 'hubs' | 'flanges',
  list: readonly { readonly side: string }[],
): void {
  const one = field === 'hubs' ? 'hub' : 'flange';
  if (new Set(list.map(({ side }) => side)).size < list.length)
    throw refuse(section, field, `two ${field} on one side`, `Give one ${one} a side.`);
}

function checkMarks(form: WheelForm): void {
  const room = findDiameters(form.spec).root / 2 - findBoreRadius(form.bore) - 2 * leastWall;
  const { count, diameter } = form.marks ?? { count: 0, diameter: 0 };
  const along = 2 * Math.PI * findMarkCircle(form) - 1.6 * diameter * count;
  if (form.hubs.length > 0 || !(diameter > 0) || diameter > room || along < 0) {
    throw refuse(
      undefined,
      'marks',
      `${count} mark holes of ${diameter} mm`,
      `Give smaller holes: ${floor(Math.max(0, room))} mm of room.`,
    );
  }
}

/** In its hub with a wall above and below, and into a bore with a round wall or a flat wide enough to meet. */
function checkCrossHole(form: WheelForm): void {
  const { crossHole, bore } = form;
  if (!crossHole) return;
  const hub = form.hubs.find((one) => one.side === crossHole.side);
  if (!hub) {
    throw refuse(
      undefined,
      'crossHole',
      `a cross hole where there is no hub on the ${crossHole.side}`,
      'Give a hub on that side, or leave the hole out.',
    );
  }
  const reach = crossHole.diameter / 2 + leastWall;
  const from = crossHole.fromFace ?? hub.length / 2;
  if (!(crossHole.diameter > 0 && from >= reach && from <= hub.length - reach)) {
    const room = 2 * (Math.min(from, hub.length - from) - leastWall);
    throw refuse(
      undefined,
      'crossHole',
      `a cross hole of ${crossHole.diameter} mm at ${from} mm along a hub ${hub.length} mm long`,
      room >= 0.01
        ? `Give a hole of at most ${floor(room)} mm there, or a longer hub.`
        : 'Give a longer hub, or move the hole towards its middle.',
    );
  }
  const greatest = findGreatestCross(bore);
  if (bore.shape === 'none' || bore.shape === 'spline' || bore.shape === 'knurl') {
    throw refuse(
      undefined,
      'crossHole',
      `a cross hole into ${bore.shape === 'none' ? 'no bore' : `a ${bore.shape} bore`}`,
      'Leave it out, or give a round, d, double-d, hex or square bore.',
    );
  }
  if (crossHole.diameter > greatest) {
    throw refuse(
      undefined,
      'crossHole',
      `a cross hole of ${crossHole.diameter} mm into that bore`,
      `Give at most ${floor(greatest)} mm.`,
    );
  }
}

/** The hole meets one face of the bore only: within a flat, or well within a round wall. */
function findGreatestCross(bore: WheelForm['bore']): number {
  const part = 0.9;
  switch (bore.shape) {
    case 'round':
      return part * bore.diameter;
    case 'd': {
      const off = bore.flat - bore.diameter / 2;
      return part * 2 * Math.sqrt(Math.max(0, (bore.diameter / 2) ** 2 - off * off));
    }
    case 'double-d':
      return part * Math.sqrt(Math.max(0, bore.diameter ** 2 - bore.flat ** 2));
    case 'hex':
      return (part * bore.acrossFlats) / Math.sqrt(3);
    case 'square':
      return part * bore.acrossFlats;
    default:
      return 0;
  }
}

function ceil(value: number): string {
  return (Math.ceil(value * 100) / 100).toFixed(2);
}

function floor(value: number): string {
  return (Math.floor(value * 100) / 100).toFixed(2);
}

function refuse(section: PlacedSection | undefined, field: string, what: string, remedy: string): Fail {
  const place = section?.place ?? '';
  return new Fail(
    'bad-geometry',
    place === '' ? field : `${place}.${field}`,
    `${what} makes no solid`,
    remedy,
  );
}
