import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { traceInternalHalf } from '../involute/internal-outline.ts';
import { traceRackOutline } from '../involute/rack-outline.ts';
import { traceHalf } from '../involute/trace-outline.ts';

/**
 * One side of a real tooth in the section that bends, set upright: from the middle of the space beside it, up the
 * fillet and the flank, to the end of the flank at the tip. The tooth's axis is the height.
 */
export interface ToothHalf {
  readonly kind: GearSpec['kind'];
  /**
   * Pairs of half thickness and height, mm. Heights grow toward the tip: of external wheels from the axis, of
   * internal wheels from the axis with a minus sign, of racks from the datum line.
   */
  readonly points: Float64Array;
  /** m_n, mm */
  readonly module: number;
  /** α_n, rad */
  readonly pressureAngle: number;
}

/**
 * The half tooth of a spec, from the same outline that parts are made of: undercut, shift, thinning, trimmed and
 * shaper-cut teeth are in it. A helical wheel bends in its normal section, that of a spur wheel of
 * z_n = z/(cos² β_b cos β) teeth, d_an = m_n z_n + d_a − d (ISO 6336-3:2006, virtual spur gear; value from memory).
 *
 * Throws Fail as `traceOutline` does.
 *
 * @param chordError mm; the default is a hundred-thousandth of the module, below what any factor here shows
 */
export function traceToothHalf(spec: GearSpec, chordError: number = spec.module * 1e-5): ToothHalf {
  const { kind, module, pressureAngle } = spec;
  const points = kind === 'rack' ? traceRackHalf(spec, chordError) : traceWheelHalf(spec, chordError);
  return { kind, points, module, pressureAngle };
}

function traceWheelHalf(spec: GearSpec, chordError: number): Float64Array {
  const section = findNormalSection(spec);
  const isInternal = section.kind === 'internal';
  const half = isInternal ? traceInternalHalf(section, chordError) : traceHalf(section, chordError);
  const axis = Math.PI / section.teeth;
  const { tip } = findDiameters(section);
  const upright: number[] = [];
  for (let k = 0; k < half.length; k += 2) {
    const radius = Math.hypot(half[k], half[k + 1]);
    const off = axis - Math.atan2(half[k], half[k + 1]);
    upright.push(radius * Math.sin(off), (isInternal ? -radius : radius) * Math.cos(off));
    // The flank ends where it first reaches the tip circle; the land carries no load.
    const isTip = isInternal ? radius <= (tip / 2) * (1 + samePlace) : radius >= (tip / 2) * (1 - samePlace);
    if (isTip) break;
  }
  return Float64Array.from(upright);
}

/** Relative; the outline's own points on the tip circle differ from it by roundings alone. */
const samePlace = 1e-9;

function findNormalSection(spec: GearSpec): GearSpec {
  if (spec.helixAngle === 0) return spec;
  const { baseHelixAngle, reference, tip } = findDiameters(spec);
  const teeth = spec.teeth / (Math.cos(baseHelixAngle) ** 2 * Math.cos(spec.helixAngle));
  // A shaper's count belongs to the transverse section; the fillet that stands in for its trochoid serves here.
  const { cutterTeeth: _, ...rest } = spec;
  return {
    ...rest,
    helixAngle: 0,
    teeth,
    tipDiameter: spec.tipDiameter === null ? null : spec.module * teeth + tip - reference,
  };
}

/** The left half of a rack's one tooth, in the normal section, whatever the helix. */
function traceRackHalf(spec: GearSpec, chordError: number): Float64Array {
  const { points } = traceRackOutline({ ...spec, teeth: 1, helixAngle: 0 }, chordError);
  const left: [number, number][] = [];
  const root = -spec.dedendum * spec.module;
  // The outline is closed by a bar below the root line, and runs from right to left over the teeth.
  for (let k = points.length - 2; k >= 0; k -= 2) {
    if (points[k] <= 0 && points[k + 1] >= root * (1 + samePlace)) left.push([-points[k], points[k + 1]]);
  }
  left.sort((a, b) => a[1] - b[1] || b[0] - a[0]);
  return Float64Array.from(left.flat());
}
