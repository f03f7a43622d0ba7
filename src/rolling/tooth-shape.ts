import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { findGeneratingRack } from '../involute/generating-rack.ts';
import { traceInternalHalf } from '../involute/internal-outline.ts';
import { findInternalRoot } from '../involute/internal-root.ts';
import { traceRackOutline } from '../involute/rack-outline.ts';
import { traceHalf } from '../involute/trace-outline.ts';
import { findTrochoid } from '../involute/trochoid.ts';
import type { RolledWheel } from './rolled-wheel.ts';

/**
 * One tooth of a wheel as rolling needs it, transverse section. Radii are about the wheel's axis; of a rack they are
 * heights over its datum line, and angles are lengths along it.
 */
export interface ToothShape {
  readonly kind: GearSpec['kind'];
  readonly teeth: number;
  /** From tooth to tooth: rad; of a rack mm */
  readonly pitch: number;
  /** Radius of the base circle, mm; of a rack 0 */
  readonly base: number;
  /** α_t of the basic rack, rad */
  readonly pressureAngle: number;
  readonly baseHelixAngle: number;
  readonly module: number;
  readonly tip: number;
  readonly root: number;
  /** Where the involute begins, above root fillet and undercut */
  readonly form: number;
  /**
   * The whole tooth from the middle of one space to the middle of the next, tooth on the +x axis, counter-clockwise
   * (of a rack: x is the height, y runs along it). An internal wheel's metal lies outside of it.
   */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** The flank alone, fillet included: half the tooth's angle at ascending radii, one for each radius */
  readonly flankRadius: Float64Array;
  readonly flankAngle: Float64Array;
}

/**
 * The tooth of a wheel as it is now: worn off at the tips by `tipWear`; missing teeth and runout are the wheel's, not
 * the tooth's. `chordError` as in `traceOutline`.
 *
 * Throws Fail as `traceOutline` does (`pointed-tooth`, `pointed-rack`, `bad-geometry`), also where wear leaves no tooth.
 */
export function traceToothShape(wheel: RolledWheel, chordError: number): ToothShape {
  const spec = wearTips(wheel.spec, wheel.tipWear ?? 0);
  return spec.kind === 'rack' ? shapeRack(spec, chordError) : shapeWheel(spec, chordError);
}

function wearTips(spec: GearSpec, wear: number): GearSpec {
  if (wear === 0) return spec;
  if (spec.kind === 'rack') return { ...spec, addendum: spec.addendum - wear / spec.module };
  const outward = spec.kind === 'internal' ? -1 : 1;
  return { ...spec, tipDiameter: findDiameters(spec).tip - 2 * outward * wear };
}

function shapeWheel(spec: GearSpec, chordError: number): ToothShape {
  const diameters = findDiameters(spec);
  const isInternal = spec.kind === 'internal';
  const half = isInternal ? traceInternalHalf(spec, chordError) : traceHalf(spec, chordError);
  const count = half.length / 2;
  const radius = new Float64Array(count);
  const angle = new Float64Array(count);
  for (let k = 0; k < count; k++) {
    radius[k] = Math.hypot(half[2 * k], half[2 * k + 1]);
    angle[k] = Math.PI / spec.teeth - Math.atan2(half[2 * k], half[2 * k + 1]);
  }
  angle[count - 1] = 0;
  const x = new Float64Array(2 * count - 1);
  const y = new Float64Array(2 * count - 1);
  for (let k = 0; k < count; k++) {
    const px = radius[k] * Math.cos(angle[k]);
    const py = radius[k] * Math.sin(angle[k]);
    x[k] = px;
    y[k] = -py;
    x[2 * count - 2 - k] = px;
    y[2 * count - 2 - k] = py;
  }
  return {
    kind: spec.kind,
    teeth: spec.teeth,
    pitch: (2 * Math.PI) / spec.teeth,
    base: diameters.base / 2,
    pressureAngle: diameters.transversePressureAngle,
    baseHelixAngle: diameters.baseHelixAngle,
    module: spec.module,
    tip: diameters.tip / 2,
    root: diameters.root / 2,
    form: isInternal ? findInternalRoot(spec).flankStart : findTrochoid(spec).endRadius,
    x,
    y,
    ...takeFlank(radius, angle, diameters.root / 2, diameters.tip / 2),
  };
}

function shapeRack(spec: GearSpec, chordError: number): ToothShape {
  const { points, perTooth } = traceRackOutline({ ...spec, teeth: 1 }, chordError);
  const total = points.length / 2;
  const flank = (perTooth + 1) / 2;
  // The outline is closed backwards: its last point is the middle of the space left of the tooth.
  const height = new Float64Array(flank + 1);
  const along = new Float64Array(flank + 1);
  for (let k = 0; k < flank; k++) {
    along[k] = -points[2 * (total - 1 - k)];
    height[k] = points[2 * (total - 1 - k) + 1];
  }
  height[flank] = height[flank - 1];
  const x = new Float64Array(2 * flank + 1);
  const y = new Float64Array(2 * flank + 1);
  for (let k = 0; k <= flank; k++) {
    x[k] = height[k];
    y[k] = -along[k];
    x[2 * flank - k] = height[k];
    y[2 * flank - k] = along[k];
  }
  const corner = findGeneratingRack(spec);
  return {
    kind: 'rack',
    teeth: spec.teeth,
    pitch: (Math.PI * spec.module) / Math.cos(spec.helixAngle),
    base: 0,
    pressureAngle: Math.atan(Math.tan(spec.pressureAngle) / Math.cos(spec.helixAngle)),
    baseHelixAngle: Math.asin(Math.sin(spec.helixAngle) * Math.cos(spec.pressureAngle)),
    module: spec.module,
    tip: height[flank],
    root: height[0],
    form: corner.cornerV - corner.cornerRadius * Math.sin(spec.pressureAngle),
    x,
    y,
    ...takeFlank(height, along, height[0], height[flank]),
  };
}

/** The part between root circle and tip circle, both its ends included, ascending. */
function takeFlank(
  radius: Float64Array,
  angle: Float64Array,
  root: number,
  tip: number,
): { readonly flankRadius: Float64Array; readonly flankAngle: Float64Array } {
  const least = 1e-9 * Math.abs(tip - root);
  let first = 0;
  while (Math.abs(radius[first + 1] - root) <= least) first++;
  let last = radius.length - 1;
  while (Math.abs(radius[last - 1] - tip) <= least) last--;
  const flankRadius = radius.slice(first, last + 1);
  const flankAngle = angle.slice(first, last + 1);
  if (tip < root) {
    flankRadius.reverse();
    flankAngle.reverse();
  }
  return { flankRadius, flankAngle };
}
