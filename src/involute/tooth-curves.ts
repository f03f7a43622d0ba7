import { findBaseSpaceAngle } from './base-space-angle.ts';
import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { findInternalRoot, findInternalSpaceHalfAngle } from './internal-root.ts';
import { traceOutline } from './trace-outline.ts';
import { findTrochoid } from './trochoid.ts';

/**
 * One tooth of a wheel as exact curves, transverse section, mm: the flank that follows the space before the tooth,
 * from the root circle to the tip circle. The tooth stands on +x, so the flank lies at negative y; the other flank is
 * its mirror image, and the wheel's outline runs counter-clockwise over both.
 */
export interface ToothCurves {
  readonly rootRadius: number;
  readonly tipRadius: number;
  /** From root to tip, each ending where the next begins */
  readonly flank: readonly FlankCurve[];
  /** x, y where the flank's curves begin, and where the last one ends */
  readonly joints: Float64Array;
  /** Whether an arc of the root circle is left between two teeth, and of the tip circle on a tooth */
  readonly hasRoot: boolean;
  readonly hasTip: boolean;
}

/** One smooth curve on 0 … 1. `arc`: it is an arc about that point, counter-clockwise. */
export interface FlankCurve {
  readonly kind: 'trochoid' | 'fillet' | 'involute';
  /** Writes x, y */
  readonly pointAt: (parameter: number, out: Float64Array) => void;
  readonly arc?: { readonly x: number; readonly y: number; readonly radius: number };
}

/** Arcs and curves shorter than this are left out, modules: as in `traceOutline`. */
const nearlyNothing = 1e-6;

/**
 * The exact curves of a wheel's tooth: external (root trochoid, involute) or internal (fillet or shaper's trochoid,
 * involute). Racks have none: a plain Error. Throws the Fails of `traceOutline`.
 */
export function findToothCurves(spec: GearSpec): ToothCurves {
  if (spec.kind === 'rack') throw new Error('a rack has no tooth curves about an axis');
  // Refuses what has no outline; coarse, since only its checks are wanted.
  traceOutline(spec, 0.05 * spec.module);
  const { tip, root } = findDiameters(spec);
  const flank = (spec.kind === 'internal' ? listInternal(spec) : listExternal(spec)).filter(
    (curve) => lengthOf(curve) > nearlyNothing * spec.module,
  );
  const half = Math.PI / spec.teeth;
  const joints = new Float64Array(2 * flank.length + 2);
  const at = new Float64Array(2);
  flank.forEach((curve, k) => {
    curve.pointAt(0, at);
    joints.set(at, 2 * k);
  });
  flank[flank.length - 1].pointAt(1, at);
  joints.set(at, 2 * flank.length);
  const angleOf = (k: number): number => Math.atan2(joints[2 * k + 1], joints[2 * k]);
  const least = nearlyNothing * spec.module;
  const hasRoot = (half + angleOf(0)) * (root / 2) > least;
  const hasTip = -angleOf(flank.length) * (tip / 2) > least;
  // Both flanks of a space without a floor, or of a tooth without a land, meet on its axis.
  const place = (k: number, radius: number, angle: number): void => {
    joints[2 * k] = radius * Math.cos(angle);
    joints[2 * k + 1] = radius * Math.sin(angle);
  };
  place(0, root / 2, hasRoot ? angleOf(0) : -half);
  place(flank.length, tip / 2, hasTip ? angleOf(flank.length) : 0);
  return { rootRadius: root / 2, tipRadius: tip / 2, flank, joints, hasRoot, hasTip };
}

function lengthOf({ pointAt }: FlankCurve): number {
  const from = new Float64Array(2);
  const to = new Float64Array(2);
  pointAt(0, from);
  pointAt(1, to);
  return Math.hypot(to[0] - from[0], to[1] - from[1]);
}

/** From the frame of `traceOutline`'s halves (the space's axis on +y, clockwise to the tooth) to the tooth's. */
function startTurn(spec: GearSpec): (x: number, y: number, out: Float64Array) => void {
  const c = Math.cos(Math.PI / spec.teeth);
  const s = Math.sin(Math.PI / spec.teeth);
  return (x, y, out) => {
    out[0] = y * c + x * s;
    out[1] = x * c - y * s;
  };
}

function listExternal(spec: GearSpec): FlankCurve[] {
  const { base, tip } = findDiameters(spec);
  const trochoid = findTrochoid(spec);
  const turn = startTurn(spec);
  const pair: [number, number] = [0, 0];
  const curves: FlankCurve[] = [
    {
      kind: 'trochoid',
      pointAt: (parameter, out) => {
        trochoid.pointAt(parameter * trochoid.end, pair);
        turn(pair[0], pair[1], out);
      },
    },
  ];
  if (trochoid.meetsTip) return curves;
  const baseSpace = findBaseSpaceAngle(spec);
  const rollAt = (radius: number): number => Math.sqrt(Math.max(0, ((2 * radius) / base) ** 2 - 1));
  curves.push(involute(base / 2, rollAt(trochoid.endRadius), rollAt(tip / 2), 1, baseSpace, turn));
  return curves;
}

/** `side` 1: the space narrows towards the axis (external); −1: it widens (internal). */
function involute(
  baseRadius: number,
  from: number,
  to: number,
  side: 1 | -1,
  baseSpace: number,
  turn: (x: number, y: number, out: Float64Array) => void,
): FlankCurve {
  return {
    kind: 'involute',
    pointAt: (parameter, out) => {
      const roll = from + (to - from) * parameter;
      const angle = baseSpace + side * (roll - Math.atan(roll));
      const radius = baseRadius * Math.sqrt(1 + roll * roll);
      turn(radius * Math.sin(angle), radius * Math.cos(angle), out);
    },
  };
}

function listInternal(spec: GearSpec): FlankCurve[] {
  const { base, tip } = findDiameters(spec);
  const form = findInternalRoot(spec);
  const turn = startTurn(spec);
  const pair: [number, number] = [0, 0];
  const rollAt = (radius: number): number => Math.sqrt(Math.max(0, ((2 * radius) / base) ** 2 - 1));
  const flank = involute(
    base / 2,
    rollAt(form.flankStart),
    rollAt(tip / 2),
    -1,
    findBaseSpaceAngle(spec),
    turn,
  );
  if (form.cut === 'shaper') {
    return [
      {
        kind: 'trochoid',
        pointAt: (parameter, out) => {
          form.pointAt(parameter * form.end, pair);
          turn(pair[0], pair[1], out);
        },
      },
      flank,
    ];
  }
  const { radius, centerRadius, centerAngle, flankStart } = form;
  if (radius < nearlyNothing) return [flank];
  const cx = centerRadius * Math.sin(centerAngle);
  const cy = centerRadius * Math.cos(centerAngle);
  const endAngle = findInternalSpaceHalfAngle(spec, flankStart);
  const end = Math.atan2(flankStart * Math.sin(endAngle) - cx, flankStart * Math.cos(endAngle) - cy);
  const center = new Float64Array(2);
  turn(cx, cy, center);
  return [
    {
      kind: 'fillet',
      arc: { x: center[0], y: center[1], radius },
      pointAt: (parameter, out) => {
        const at = centerAngle + (end - centerAngle) * parameter;
        turn(cx + radius * Math.sin(at), cy + radius * Math.cos(at), out);
      },
    },
    flank,
  ];
}
