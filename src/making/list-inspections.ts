import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { findPinRange } from '../involute/pin-range.ts';
import { findSpanTeeth } from '../involute/span.ts';
import { type AskedReading, expectReading } from '../readings/expected-reading.ts';
import type { Bore, WheelForm } from '../solid/wheel-form.ts';
import type { Deviation, PartLimits } from './find-making-limits.ts';
import { findPartLength } from './find-part-length.ts';
import { formatMm } from './format-mm.ts';

/** One size to check on the made part, mm. */
export interface Inspection {
  readonly key: string;
  readonly what: string;
  readonly how: string;
  /** Of the size itself */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** What a caliper shows on a part at that value and at its limits; one row for each way the jaws may lie */
  readonly reads: readonly ExpectedRead[];
  /** A tolerance class, or `judgment` */
  readonly basis: string;
}

export interface ExpectedRead {
  /** `as it is`: the reading is the size */
  readonly jaws: 'as it is' | 'settled' | 'rocked';
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * What to check on a part and what the caliper will read: span, over pins, outside, bore, width, hub and length, as far
 * as the part has them. The readings are those of `expectReading` on the spec itself, on teeth as thin as allowed, and
 * on tips at their limits; so a span's lower limit is the thinning's, times the cosine of the pressure angle.
 *
 * @param pins diameters of pins that are at hand, mm; without one that fits, a tenth of a mm near the ideal
 */
export function listInspections(
  form: WheelForm,
  limits: PartLimits,
  pins: readonly number[],
): readonly Inspection[] {
  const { spec, bore, hubs, faceWidth } = form;
  const found: Inspection[] = [];
  const thin: GearSpec = { ...spec, thinning: spec.thinning + limits.thinning };
  const addThickness = (key: string, what: string, how: string, asked: AskedReading): void => {
    const value = expectReading(spec, asked);
    const thinned = expectReading(thin, asked);
    if (value === undefined || thinned === undefined) return;
    const [low, high] = [Math.min(value, thinned), Math.max(value, thinned)];
    found.push({ key, what, how, value, low, high, reads: [asIs(value, low, high)], basis: 'judgment' });
  };
  const k = spec.kind === 'external' ? findSpanTeeth(spec) : undefined;
  if (k !== undefined && isWideEnough(form, k)) {
    addThickness('span', `Span over ${k} teeth`, 'flat jaws on the flanks, smallest reading', {
      of: 'span',
      teeth: k,
    });
  }
  const pin = choosePin(spec, thin, pins);
  if (pin !== undefined) {
    const name = `${Number(pin.toFixed(2))} mm`;
    const isInside = spec.kind === 'internal';
    addThickness(
      'over-pins',
      `${isInside ? 'Between' : 'Over'} two pins of ${name}`,
      `${spec.teeth % 2 === 0 ? 'in opposite gaps' : 'in the two most nearly opposite gaps'}, ${isInside ? 'smallest' : 'largest'} reading`,
      { of: 'over-pins', pinMm: pin },
    );
  }
  if (spec.kind === 'rack') addRack(found, spec, limits);
  else addOutside(found, spec, limits);
  addBore(found, bore, limits);
  const plain = (key: string, what: string, how: string, value: number): void => {
    found.push(plainSize(key, what, how, value, limits.general(value)));
  };
  if (form.rimDiameter !== undefined && spec.kind === 'internal')
    plain('rim', 'Ring outside', 'across the ring', form.rimDiameter);
  plain('face-width', 'Tooth width', 'across the faces of the teeth', faceWidth);
  hubs.forEach((hub, index) => {
    const side = hubs.length > 1 ? ` ${index + 1}` : '';
    plain(`hub-${hub.side}`, `Hub${side} diameter`, 'across the hub', hub.diameter);
  });
  addFeatures(plain, form);
  const length = findPartLength(form);
  if (length > faceWidth + 1e-6)
    plain('overall-length', 'Overall length', 'over everything along the axis', length);
  return found;
}

/** What stands on the teeth's faces or is cut into them. */
function addFeatures(
  plain: (key: string, what: string, how: string, value: number) => void,
  { flanges = [], web, holes, crossHole }: WheelForm,
): void {
  for (const flange of flanges) {
    plain(`flange-${flange.side}`, 'Flange diameter', 'across the flange', flange.diameter);
    plain(`flange-width-${flange.side}`, 'Flange width', 'at its rim', flange.thickness);
  }
  if (web) {
    plain('web', 'Web thickness', 'between hub and rim', web.thickness);
    plain('web-rim', 'Rim, inside', 'across the web', web.rimDiameter);
  }
  if (holes) {
    plain(
      'holes',
      `${holes.count} holes, each`,
      `on a circle of ${formatMm(holes.circleDiameter)} mm`,
      holes.diameter,
    );
  }
  if (crossHole) plain('cross-hole', 'Hole across the hub', 'by a drill shank', crossHole.diameter);
}

/** A helical span leans across the face: it needs W sin β_b of width, and some to rest on. */
function isWideEnough({ spec, faceWidth }: WheelForm, k: number): boolean {
  const span = expectReading(spec, { of: 'span', teeth: k }) ?? 0;
  return faceWidth > 1.05 * span * Math.sin(Math.abs(findDiameters(spec).baseHelixAngle));
}

function choosePin(spec: GearSpec, thin: GearSpec, owned: readonly number[]): number | undefined {
  if (spec.kind === 'rack') return undefined;
  const range = findPinRange(spec);
  const thinned = findPinRange(thin);
  if (!range || !thinned) return undefined;
  const fits = (pin: number): boolean =>
    pin > Math.max(range.least, thinned.least) && pin < Math.min(range.greatest, thinned.greatest);
  const near = Array.from({ length: 5 }, (_, i) => Math.round(range.ideal * 10 + i - 2) / 10);
  const nearest = (list: readonly number[]): number | undefined =>
    list
      .filter(fits)
      .sort((a, b) => Math.abs(a - range.ideal) - Math.abs(b - range.ideal))
      .at(0);
  return nearest(owned) ?? nearest(near);
}

function addOutside(found: Inspection[], spec: GearSpec, limits: PartLimits): void {
  const { tip } = findDiameters(spec);
  const isInside = spec.kind === 'internal';
  const outside = limits.outside(tip);
  // Inside a ring the tips may stand back, not forward.
  const [lower, upper] = isInside ? [-outside.upper, -outside.lower] : [outside.lower, outside.upper];
  const read = (jaws: 'settled' | 'rocked' | undefined, change: number): number =>
    expectReading({ ...spec, tipDiameter: tip + change }, { of: 'outside', jaws }) ?? tip + change;
  const ways =
    spec.teeth % 2 === 0 ? [undefined] : isInside ? (['rocked'] as const) : (['settled', 'rocked'] as const);
  found.push({
    key: 'outside',
    what: isInside ? 'Across the tips, inside' : 'Outside, across the tips',
    how:
      spec.teeth % 2 === 0 ? 'tips stand opposite' : 'no two tips stand opposite: see what the caliper reads',
    value: tip,
    low: tip + lower,
    high: tip + upper,
    reads: ways.map((jaws) => ({
      jaws: jaws ?? 'as it is',
      value: read(jaws, 0),
      low: read(jaws, lower),
      high: read(jaws, upper),
    })),
    basis: outside.basis,
  });
}

function addRack(found: Inspection[], spec: GearSpec, limits: PartLimits): void {
  const pitches = spec.teeth - 1;
  const addPlain = (key: string, what: string, how: string, asked: AskedReading): void => {
    const value = expectReading(spec, asked);
    if (value !== undefined) found.push(plainSize(key, what, how, value, limits.general(value)));
  };
  if (pitches >= 1) {
    addPlain('rack-pitch', `Over ${pitches} ${pitches === 1 ? 'pitch' : 'pitches'}`, 'edge to same edge', {
      of: 'rack-pitch',
      pitches,
    });
  }
  addPlain('tooth-depth', 'Tooth depth', 'depth rod in a gap', { of: 'tooth-depth' });
}

function addBore(found: Inspection[], bore: Bore, limits: PartLimits): void {
  if (bore.shape === 'none') return;
  const size = bore.shape === 'hex' || bore.shape === 'square' ? bore.acrossFlats : bore.diameter;
  const isFlats = bore.shape === 'hex' || bore.shape === 'square';
  const how =
    size < 4 ? 'by a pin or drill shank: jaws read small holes small' : 'inside jaws, largest reading';
  found.push(
    plainSize(
      'bore',
      isFlats ? 'Bore across flats' : 'Bore',
      isFlats ? 'inside jaws' : how,
      size,
      limits.bore(size),
    ),
  );
  if (bore.shape === 'd' || bore.shape === 'double-d') {
    const what = bore.shape === 'd' ? 'Bore, flat to wall' : 'Bore, between flats';
    found.push(plainSize('bore-flat', what, 'inside jaws', bore.flat, limits.bore(bore.flat)));
  }
}

function plainSize(key: string, what: string, how: string, value: number, by: Deviation): Inspection {
  const [low, high] = [value + by.lower, value + by.upper];
  return { key, what, how, value, low, high, reads: [asIs(value, low, high)], basis: by.basis };
}

function asIs(value: number, low: number, high: number): ExpectedRead {
  return { jaws: 'as it is', value, low, high };
}
