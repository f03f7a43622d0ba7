import { Fail } from '../fail.ts';
import { findBaseSpaceAngle } from './base-space-angle.ts';
import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { traceInternalHalf } from './internal-outline.ts';
import { pushArc } from './push-arc.ts';
import { traceRackOutline } from './rack-outline.ts';
import { sampleCurve } from './sample-curve.ts';
import type { ToothOutline } from './tooth-outline.ts';
import { findTrochoid } from './trochoid.ts';
import { findPointedDiameter } from './undercut.ts';

/**
 * The outline of a toothing, sampled so that no chord strays further than `chordError` (mm, above 0) from the exact
 * curves: involute flanks, the trochoid of the generating rack's rounded corner (undercut included), tip and root
 * arcs; internal wheels and racks as their own files say.
 *
 * Throws Fail `pointed-tooth` where the tooth comes to a point below its tip circle, `pointed-rack` from the
 * generating rack, `bad-geometry` where undercut cuts the tooth off or the circles leave no tooth.
 */
export function traceOutline(spec: GearSpec, chordError: number): ToothOutline {
  if (!(chordError > 0)) throw new Error(`chord error ${chordError}`);
  if (spec.kind === 'rack') return traceRackOutline(spec, chordError);
  const half = spec.kind === 'internal' ? traceInternalHalf(spec, chordError) : traceHalf(spec, chordError);
  return repeatHalf(half, spec.teeth);
}

/**
 * Half a tooth and half a space of an external wheel, from the middle of the space (+y axis) to the middle of the
 * tooth, at −π/z from it (clockwise): x, y pairs, both ends included.
 */
export function traceHalf(spec: GearSpec, chordError: number): number[] {
  const { base, tip, root } = findDiameters(spec);
  checkCircles(tip, root);
  const toothAxis = Math.PI / spec.teeth;
  const baseSpace = findBaseSpaceAngle(spec);
  const trochoid = findTrochoid(spec);
  const points = [0, root / 2];
  const start: [number, number] = [0, 0];
  trochoid.pointAt(0, start);
  pushArc(points, root / 2, 0, Math.atan2(start[0], start[1]), chordError);
  sampleCurve(trochoid.pointAt, 0, trochoid.end, chordError, points);
  checkFoot(points, spec);
  if (!trochoid.meetsTip) {
    const from = Math.sqrt(Math.max(0, (2 * trochoid.endRadius) ** 2 / base ** 2 - 1));
    const to = Math.sqrt(Math.max(0, tip ** 2 / base ** 2 - 1));
    const land = toothAxis - (baseSpace + to - Math.atan(to));
    if ((land * tip) / 2 < -nearlyNothing * spec.module) throw pointedTooth(spec);
    pushInvolute(points, base / 2, baseSpace, from, to, chordError);
  }
  const n = points.length;
  pushArc(points, tip / 2, Math.atan2(points[n - 2], points[n - 1]), toothAxis, chordError);
  return dropRepeats(points, nearlyNothing * spec.module);
}

/** Modules; a thousand times less than the micron that outlines are held to. Shorter edges are left out. */
const nearlyNothing = 1e-6;

function checkCircles(tip: number, root: number): void {
  if (root > 0 && tip > root) return;
  const field = root > 0 ? 'tipDiameter' : 'dedendum';
  throw new Fail(
    'bad-geometry',
    field,
    root > 0
      ? `the tip circle (${tip.toFixed(3)} mm) is not outside the root circle (${root.toFixed(3)} mm)`
      : 'the teeth are deeper than the wheel is thick',
    root > 0
      ? `Give a tip diameter above ${root.toFixed(3)} mm.`
      : 'Use a smaller dedendum, more teeth or a larger profile shift.',
    { tip, root },
  );
}

/** A trochoid that crosses the tooth's axis leaves the tooth's head loose. */
function checkFoot(points: readonly number[], spec: GearSpec): void {
  const tangent = Math.tan(Math.PI / spec.teeth) * (1 + 1e-9);
  for (let k = 0; k < points.length; k += 2) {
    if (points[k] <= points[k + 1] * tangent) continue;
    throw new Fail(
      'bad-geometry',
      'profileShift',
      'undercut cuts the tooth off at its foot',
      'Use a larger profile shift or a larger root radius.',
      { teeth: spec.teeth, profileShift: spec.profileShift },
    );
  }
}

function pointedTooth(spec: GearSpec): Fail {
  const greatest = findPointedDiameter(spec);
  const rounded = Math.floor(greatest * 1000) / 1000;
  return new Fail(
    'pointed-tooth',
    'tipDiameter',
    `the tooth comes to a point at ${rounded} mm, below its tip circle`,
    `Give a tip diameter of at most ${rounded} mm.`,
    { greatest },
  );
}

/**
 * Appends the involute from roll angle tan α = `from` to `to`. Its radius of curvature is r_b τ at roll angle τ, so
 * even steps of τ^1.5 give chords of even error.
 */
function pushInvolute(
  points: number[],
  baseRadius: number,
  baseSpace: number,
  from: number,
  to: number,
  chordError: number,
): void {
  const first = from ** 1.5;
  const last = to ** 1.5;
  const count = Math.max(1, Math.ceil((2 / 3) * Math.sqrt(baseRadius / (8 * chordError)) * (last - first)));
  for (let k = 1; k <= count; k++) {
    const roll = k === count ? to : (first + ((last - first) * k) / count) ** (2 / 3);
    const sine = Math.sin(baseSpace + roll);
    const cosine = Math.cos(baseSpace + roll);
    points.push(baseRadius * (sine - roll * cosine), baseRadius * (cosine + roll * sine));
  }
}

/** Without the points that lie closer than `least` to the one before; both ends are kept. */
function dropRepeats(points: readonly number[], least: number): number[] {
  const kept = [points[0], points[1]];
  const last = points.length - 2;
  for (let k = 2; k <= last; k += 2) {
    const isNear =
      Math.abs(points[k] - kept[kept.length - 2]) < least &&
      Math.abs(points[k + 1] - kept[kept.length - 1]) < least;
    if (isNear && k < last) continue;
    if (isNear && kept.length > 2) kept.length -= 2;
    kept.push(points[k], points[k + 1]);
  }
  return kept;
}

/** A whole wheel from half a tooth: mirrored about the tooth's middle, then turned from tooth to tooth. */
function repeatHalf(half: readonly number[], teeth: number): ToothOutline {
  const n = half.length / 2;
  const perTooth = 2 * n - 2;
  const one = new Float64Array(2 * perTooth);
  const pitch = (2 * Math.PI) / teeth;
  for (let k = 0; k < n; k++) {
    // From the +y axis clockwise to an angle from the tooth's middle.
    const radius = Math.hypot(half[2 * k], half[2 * k + 1]);
    const off = k === n - 1 ? 0 : pitch / 2 - Math.atan2(half[2 * k], half[2 * k + 1]);
    one[2 * k] = radius * Math.cos(off);
    one[2 * k + 1] = -radius * Math.sin(off);
    if (k > 0 && k < n - 1) {
      const mirrored = 2 * (perTooth - k);
      one[mirrored] = one[2 * k];
      one[mirrored + 1] = -one[2 * k + 1];
    }
  }
  const points = new Float64Array(2 * perTooth * teeth);
  for (let tooth = 0; tooth < teeth; tooth++) {
    const c = Math.cos(tooth * pitch);
    const s = Math.sin(tooth * pitch);
    const at = 2 * perTooth * tooth;
    for (let k = 0; k < 2 * perTooth; k += 2) {
      points[at + k] = one[k] * c - one[k + 1] * s;
      points[at + k + 1] = one[k] * s + one[k + 1] * c;
    }
  }
  return { points, perTooth };
}
