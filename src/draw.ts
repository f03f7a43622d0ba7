import { Fail } from './fail.ts';
import { findDiameters } from './involute/gear-diameters.ts';
import type { GearSpec } from './involute/gear-spec.ts';
import { traceOutline } from './involute/trace-outline.ts';
import { findPointedDiameter } from './involute/undercut.ts';
import type { CandidateReport, WheelReport } from './job/identity-report.ts';
import { specOfFields } from './job/spec-fields.ts';
import type { SpecFields } from './job/spec-schema.ts';
import { type AskedReading, expectReading } from './readings/expected-reading.ts';

/** What one wheel could still be, as outlines, and what each would show at the readings asked about. */
export interface WheelDrawing {
  /** Most likely first; one a size and count */
  readonly gears: readonly DrawnGear[];
  /** One row a reading asked about: what each of `gears` would show, mm; null where it can't be taken there */
  readonly expected: readonly (readonly (number | null)[])[];
}

/** One thing the wheel may be, ready to draw. Lengths mm. */
export interface DrawnGear {
  /** Index into the report's candidates; −1 for one that is none of them */
  readonly candidate: number;
  /** How likely its size and count are, angles summed: 0 to 1 */
  readonly share: number;
  /** x0, y0, x1, … closed, counter-clockwise, tooth 0 on +x; a rack lies along x with its datum line at y = 0 */
  readonly outline: Float64Array;
  readonly perTooth: number;
  readonly teeth: number;
  readonly moduleMm: number;
  readonly tipDiameterMm: number;
  readonly rootDiameterMm: number;
  readonly referenceDiameterMm: number;
  readonly baseDiameterMm: number;
  readonly pressureAngleDeg: number;
}

/** Rivals that a drawing can still show apart; fainter ones are in the list beside it. */
const mostDrawn = 6;
const leastShare = 0.01;

/**
 * The outlines of what a wheel may still be, one for each size and count that is likely enough to draw, and what
 * each of them would show at every reading in `asked` (those still to come).
 *
 * @param chordError greatest stray of a chord from the exact curve, mm
 */
export function drawWheel(
  report: WheelReport,
  kind: GearSpec['kind'],
  asked: readonly AskedReading[],
  chordError: number,
): WheelDrawing {
  const groups = new Map<string, { candidate: number; share: number }>();
  report.candidates.forEach((candidate, index) => {
    const key = `${candidate.system} ${candidate.system === 'free' ? '' : candidate.size} ${candidate.teeth}`;
    const known = groups.get(key);
    groups.set(key, {
      candidate: known?.candidate ?? index,
      share: (known?.share ?? 0) + candidate.probability,
    });
  });
  const chosen = [...groups.values()]
    .sort((a, b) => b.share - a.share)
    .filter((group, index) => index === 0 || group.share >= leastShare)
    .slice(0, mostDrawn);
  const specs = chosen.map(({ candidate }) => drawableSpec(report.candidates[candidate], kind));
  const gears = chosen.flatMap(({ candidate, share }, i) => {
    const gear = drawGear(specs[i], candidate, share, chordError);
    return gear ? [{ gear, spec: specs[i] }] : [];
  });
  return {
    gears: gears.map(({ gear }) => gear),
    expected: asked.map((reading) => gears.map(({ spec }) => tryExpect(spec, reading))),
  };
}

/** The same for a wheel that is known by its spec: one gear, of no doubt, that no reading is expected of. */
export function drawSpec(fields: SpecFields, kind: GearSpec['kind'], chordError: number): WheelDrawing {
  const spec = specOfFields(kind === 'rack' ? { teeth: shownRackTeeth, ...fields } : fields, kind, 'spec');
  const gear = drawGear(spec, -1, 1, chordError);
  return { gears: gear ? [gear] : [], expected: [] };
}

/** A bar's length is rarely said; so many teeth are drawn of it at least. */
const shownRackTeeth = 12;

/** A tip that would come to a point is drawn with the least land; the readings don't tell tips that fine apart. */
function drawableSpec(candidate: CandidateReport, kind: GearSpec['kind']): GearSpec {
  const spec = specOfFields(candidate.spec, kind, 'spec');
  if (kind !== 'external') return spec;
  const greatest = findPointedDiameter(spec) - 0.02 * spec.module;
  return findDiameters(spec).tip > greatest ? { ...spec, tipDiameter: greatest } : spec;
}

function drawGear(
  spec: GearSpec,
  candidate: number,
  share: number,
  chordError: number,
): DrawnGear | undefined {
  try {
    const { points, perTooth } = traceOutline(spec, chordError);
    const isRack = spec.kind === 'rack';
    const diameters = isRack ? undefined : findDiameters(spec);
    return {
      candidate,
      share,
      outline: points,
      perTooth,
      teeth: spec.teeth,
      moduleMm: spec.module,
      tipDiameterMm: diameters?.tip ?? 0,
      rootDiameterMm: diameters?.root ?? 0,
      referenceDiameterMm: diameters?.reference ?? 0,
      baseDiameterMm: diameters?.base ?? 0,
      pressureAngleDeg: (spec.pressureAngle * 180) / Math.PI,
    };
  } catch (error) {
    // A mean of parts may describe no wheel that exists; it is listed in words, but can't be drawn.
    if (error instanceof Fail) return undefined;
    throw error;
  }
}

function tryExpect(spec: GearSpec, reading: AskedReading): number | null {
  try {
    return expectReading(spec, reading) ?? null;
  } catch (error) {
    if (error instanceof Fail) return null;
    throw error;
  }
}

/**
 * Wheels of these counts whose tips span `tipDiameter` mm, to lay a broken one on: full-depth 20° teeth, since only
 * the spacing is compared. A count that leaves no tooth is left out.
 */
export function drawCounts(
  tipDiameter: number,
  counts: readonly number[],
  chordError: number,
): { readonly teeth: number; readonly outline: Float64Array }[] {
  return counts.flatMap((teeth) => {
    const spec: GearSpec = {
      kind: 'external',
      teeth,
      module: tipDiameter / (teeth + 2),
      pressureAngle: (20 * Math.PI) / 180,
      helixAngle: 0,
      profileShift: 0,
      addendum: 1,
      dedendum: 1.25,
      rootRadius: 0.38,
      thinning: 0,
      tipDiameter: null,
    };
    const gear = drawGear(spec, -1, 0, chordError);
    return gear ? [{ teeth, outline: gear.outline }] : [];
  });
}
