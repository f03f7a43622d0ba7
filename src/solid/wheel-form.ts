import { Fail } from '../fail.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { findTrochoid } from '../involute/trochoid.ts';

/** Everything that makes a toothing a part. Lengths mm. The lower face lies at z = 0, the axis is z. */
export interface WheelForm {
  readonly spec: GearSpec;
  readonly faceWidth: number;
  /** None on internal wheels and racks. */
  readonly bore: Bore;
  readonly hubs: readonly Hub[];
  /**
   * Rims: the outline at each face is cut back to the tip circle less this on the radius (internal: widened), and
   * runs straight to the whole outline this deep, so 45° at the tip. 0 for none; none on racks.
   */
  readonly chamfer: number;
  /** Outside diameter of an internal wheel's ring; needed there, else ignored. */
  readonly rimDiameter?: number;
  /** Through holes that tell trial parts apart; external wheels without hubs alone. */
  readonly marks?: { readonly count: number; readonly diameter: number };
}

/** `flat`: d, from the flat to the opposite wall; double-d, across the two flats. */
export type Bore =
  | { readonly shape: 'none' }
  | { readonly shape: 'round'; readonly diameter: number }
  | { readonly shape: 'd'; readonly diameter: number; readonly flat: number }
  | { readonly shape: 'double-d'; readonly diameter: number; readonly flat: number }
  | { readonly shape: 'hex'; readonly acrossFlats: number }
  | { readonly shape: 'square'; readonly acrossFlats: number };

export interface Hub {
  readonly side: 'top' | 'bottom';
  readonly diameter: number;
  readonly length: number;
}

/** The thinnest wall that is still a wall, mm: half a printed line. */
export const leastWall = 0.2;

/** Throws Fail `bad-geometry`, naming the field and a value that works, where no solid of that form exists. */
export function checkForm(form: WheelForm): void {
  const { spec, bore, hubs, chamfer, faceWidth } = form;
  if (!(faceWidth > 0))
    throw refuse('faceWidth', `a face width of ${faceWidth} mm`, 'Give a face width above 0.');
  if (spec.kind !== 'external') {
    if (bore.shape !== 'none')
      throw refuse('bore', `a bore in a ${spec.kind} toothing`, 'Leave the bore out.');
    if (hubs.length > 0) throw refuse('hubs', `a hub on a ${spec.kind} toothing`, 'Leave the hub out.');
  }
  if (spec.kind === 'rack') {
    if (chamfer > 0) throw refuse('chamfer', 'a rim chamfer on a rack', 'Leave the chamfer out.');
    return;
  }
  const { root } = findDiameters(spec);
  const greatestChamfer = findGreatestChamfer(form);
  if (!(chamfer >= 0) || chamfer > greatestChamfer) {
    throw refuse(
      'chamfer',
      `a chamfer of ${chamfer} mm on flanks ${findFlankDepth(spec).toFixed(2)} mm deep and a face ${faceWidth} mm wide`,
      greatestChamfer >= 0.01
        ? `Give a chamfer of at most ${floor(greatestChamfer)} mm.`
        : 'Leave the chamfer out.',
    );
  }
  if (spec.kind === 'internal') {
    const least = root + 2 * leastWall;
    if (!((form.rimDiameter ?? 0) >= least)) {
      throw refuse(
        'rimDiameter',
        form.rimDiameter === undefined
          ? 'a ring without an outside diameter'
          : `an outside diameter of ${form.rimDiameter} mm round a root circle of ${root.toFixed(2)} mm`,
        `Give a rim diameter of at least ${ceil(least)} mm.`,
      );
    }
    return;
  }
  checkBore(bore);
  const hole = 2 * findBoreRadius(bore);
  const greatest = root - 2 * leastWall;
  if (hole > 0 && hole > greatest) {
    throw refuse(
      'bore',
      `a bore ${hole.toFixed(2)} mm across its corners in a wheel whose root diameter is ${root.toFixed(2)} mm`,
      greatest >= 0.01
        ? `Give a bore of at most ${floor(greatest)} mm: ${leastWall} mm of wall is the least.`
        : 'Leave the bore out.',
    );
  }
  const leastHub = hole + 2 * leastWall;
  for (const hub of hubs) {
    if (!(hub.diameter >= leastHub && hub.diameter <= root * hubPart)) {
      throw refuse(
        'hubs',
        `a hub of ${hub.diameter} mm`,
        Math.ceil(leastHub * 100) <= Math.floor(root * hubPart * 100)
          ? `Give a hub between ${ceil(leastHub)} and ${floor(root * hubPart)} mm.`
          : 'Leave the hub out, or give a smaller bore.',
      );
    }
    if (!(hub.length > 0)) throw refuse('hubs', `a hub ${hub.length} mm long`, 'Give a length above 0.');
  }
  if (form.marks && form.marks.count > 0) checkMarks(form);
  if (new Set(hubs.map((hub) => hub.side)).size < hubs.length) {
    throw refuse('hubs', 'two hubs on one side', 'Give one hub a side.');
  }
}

/** Some face width stays between two chamfers, and a tip stays above an internal wheel's root. */
const chamferPart = 0.9;

function findGreatestChamfer({ spec, faceWidth }: WheelForm): number {
  const depth = findFlankDepth(spec);
  return Math.min((faceWidth / 2) * chamferPart, spec.kind === 'internal' ? depth * chamferPart : depth);
}

/** On external wheels down to where the involute begins: a face cut back into an undercut would overlap itself. */
function findFlankDepth(spec: GearSpec): number {
  const { tip, root } = findDiameters(spec);
  return spec.kind === 'internal' ? (root - tip) / 2 : tip / 2 - findTrochoid(spec).endRadius;
}

// A hub stays inside the polygon of the root arcs: the coarsest chord error of a solid takes 0.008 off it.
const hubPart = 0.985;

/** Radius of the circle that marks stand on, mm: halfway between bore and root. */
export function findMarkCircle(form: WheelForm): number {
  return (findBoreRadius(form.bore) + findDiameters(form.spec).root / 2) / 2;
}

function checkMarks(form: WheelForm): void {
  const room = findDiameters(form.spec).root / 2 - findBoreRadius(form.bore) - 2 * leastWall;
  const { count, diameter } = form.marks ?? { count: 0, diameter: 0 };
  const along = 2 * Math.PI * findMarkCircle(form) - 1.6 * diameter * count;
  if (form.hubs.length > 0 || !(diameter > 0) || diameter > room || along < 0) {
    throw refuse(
      'marks',
      `${count} mark holes of ${diameter} mm`,
      `Give smaller holes: ${floor(Math.max(0, room))} mm of room.`,
    );
  }
}

/** Radius of the smallest circle about a bore, mm; 0 for none. */
export function findBoreRadius(bore: Bore): number {
  if (bore.shape === 'none') return 0;
  if (bore.shape === 'hex') return bore.acrossFlats / Math.sqrt(3);
  if (bore.shape === 'square') return bore.acrossFlats / Math.SQRT2;
  return bore.diameter / 2;
}

// A D whose flat reaches the axis, and a slot where two flats were meant, are slips rather than wishes.
const leastD = 0.55;
const leastDoubleD = 0.1;

function checkBore(bore: Bore): void {
  if (bore.shape === 'none') return;
  const size = bore.shape === 'hex' || bore.shape === 'square' ? bore.acrossFlats : bore.diameter;
  if (!(size > 0)) throw refuse('bore', `a bore of ${size} mm`, 'Give a bore above 0.');
  if (bore.shape === 'd' && !(bore.flat > bore.diameter * leastD && bore.flat < bore.diameter)) {
    throw refuse(
      'bore.flat',
      `${bore.flat} mm from the flat to the wall of a ${bore.diameter} mm bore`,
      `Give more than ${ceil(bore.diameter * leastD)} and less than ${bore.diameter} mm.`,
    );
  }
  if (bore.shape === 'double-d' && !(bore.flat > bore.diameter * leastDoubleD && bore.flat < bore.diameter)) {
    throw refuse(
      'bore.flat',
      `${bore.flat} mm across the flats of a ${bore.diameter} mm bore`,
      `Give more than ${ceil(bore.diameter * leastDoubleD)} and less than ${bore.diameter} mm.`,
    );
  }
}

function ceil(value: number): string {
  return (Math.ceil(value * 100) / 100).toFixed(2);
}

function floor(value: number): string {
  return (Math.floor(value * 100) / 100).toFixed(2);
}

function refuse(field: string, what: string, remedy: string): Fail {
  return new Fail('bad-geometry', field, `${what} makes no solid`, remedy);
}
