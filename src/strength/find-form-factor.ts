import { type FlankPoint, findFlankPoint } from './find-flank-point.ts';
import type { ToothHalf } from './trace-tooth-half.ts';

/** What a tooth's shape makes of a force on its flank, at the two root sections in use. Lengths mm, angles rad. */
export interface FormFactor {
  readonly load: FlankPoint;
  /** Lewis: the section where the parabola of even strength, its vertex on the load's line, touches the outline */
  readonly lewis: {
    /** Y = t²/(6 l m), by the module or π over the circular pitch; y = Y/π goes with the circular pitch */
    readonly Y: number;
    /** t, the tooth's thickness there */
    readonly thickness: number;
    /** l, from the section to the vertex */
    readonly lever: number;
  };
  /** ISO 6336-3: the section where the fillet's tangent stands at 30° to the tooth's axis (internal 60°) */
  readonly tangent: {
    /** Y_F */
    readonly form: number;
    /** Y_S */
    readonly concentration: number;
    /** s_Fn */
    readonly thickness: number;
    /** h_Fe */
    readonly lever: number;
    /** ρ_F, radius of the fillet there */
    readonly filletRadius: number;
    /** False where the corner is sharper (or rounder) than the formula for Y_S was made for; it is clipped then */
    readonly isConcentrationInRange: boolean;
  };
}

/**
 * The form factors of a tooth with one force on its flank, along the flank's normal.
 *
 * Lewis: Y = t²/(6 l m) at the first section from the root that is weaker than its neighbors: there the parabola
 * touches (Lewis 1893; Shigley, Mechanical Engineering Design, eq. 14-3 to 14-5, t² = 4 l x).
 * ISO 6336-3:2006, method B (value from memory): Y_F = 6 (h_Fe/m_n) cos α_Fen/((s_Fn/m_n)² cos α_n);
 * Y_S = (1.2 + 0.13 L) q_s^(1/(1.21 + 2.3/L)), L = s_Fn/h_Fe, q_s = s_Fn/(2 ρ_F), for 1 ≤ q_s < 8.
 *
 * @param loadRadius where the force stands: a radius of the (virtual) wheel, of a rack a height over the datum line;
 * left out: the end of the flank at the tip
 * @example 20 teeth, 20°, rack 1/1.25/0.38, load at the tip: Y_F 2.80, Y_S 1.55
 */
export function findFormFactor(tooth: ToothHalf, loadRadius?: number): FormFactor {
  const load = findFlankPoint(tooth, loadRadius);
  return { load, lewis: findParabola(tooth, load), tangent: findTangentSection(tooth, load) };
}

function findParabola({ points, module }: ToothHalf, load: FlankPoint): FormFactor['lewis'] {
  let best = { Y: Number.POSITIVE_INFINITY, thickness: 0, lever: 0 };
  for (let k = 0; k < points.length && points[k + 1] < load.height; k += 2) {
    const thickness = 2 * points[k];
    const lever = load.vertex - points[k + 1];
    const Y = thickness ** 2 / (6 * lever * module);
    // From the root the sections weaken up to the one that Lewis means; what comes later is the tip's own edge.
    if (Y >= best.Y) break;
    best = { Y, thickness, lever };
  }
  return best;
}

function findTangentSection(tooth: ToothHalf, load: FlankPoint): FormFactor['tangent'] {
  const { points, module, pressureAngle } = tooth;
  const wanted = tooth.kind === 'internal' ? Math.PI / 3 : Math.PI / 6;
  const at = findTangentPoint(points, wanted);
  const thickness = 2 * at.halfThickness;
  const lever = load.vertex - at.height;
  const form =
    (6 * (lever / module) * Math.cos(load.angle)) / ((thickness / module) ** 2 * Math.cos(pressureAngle));
  const L = thickness / lever;
  const sharpness = thickness / (2 * at.radius);
  const clipped = Math.min(8, Math.max(1, sharpness));
  return {
    form,
    concentration: (1.2 + 0.13 * L) * clipped ** (1 / (1.21 + 2.3 / L)),
    thickness,
    lever,
    filletRadius: at.radius,
    isConcentrationInRange: clipped === sharpness,
  };
}

/** The outline's first point from the root whose tangent stands at `wanted` to the tooth's axis, with its radius. */
function findTangentPoint(
  points: Float64Array,
  wanted: number,
): { readonly halfThickness: number; readonly height: number; readonly radius: number } {
  let before: Edge | undefined;
  for (let k = 0; k + 3 < points.length; k += 2) {
    const edge = edgeAt(points, k);
    if (edge.angle <= wanted) {
      // A fillet that is steeper than wanted from its start on is a sharp corner: its foot is the section.
      if (!before) return { halfThickness: points[k], height: points[k + 1], radius: 0 };
      const turned = before.angle - edge.angle;
      const part = turned > 0 ? (before.angle - wanted) / turned : 0;
      return {
        halfThickness: before.x + (edge.x - before.x) * part,
        height: before.y + (edge.y - before.y) * part,
        radius: turned > 0 ? (before.length + edge.length) / 2 / turned : 0,
      };
    }
    before = edge;
  }
  // No fillet so steep: a stub of a tooth, weakest at the end of its flank.
  const last = points.length - 2;
  return { halfThickness: points[last], height: points[last + 1], radius: before?.length ?? 0 };
}

interface Edge {
  /** Middle of the chord, where its direction is the curve's */
  readonly x: number;
  readonly y: number;
  readonly length: number;
  /** To the tooth's axis */
  readonly angle: number;
}

function edgeAt(points: Float64Array, k: number): Edge {
  const dx = points[k + 2] - points[k];
  const dy = points[k + 3] - points[k + 1];
  return {
    x: points[k] + dx / 2,
    y: points[k + 1] + dy / 2,
    length: Math.hypot(dx, dy),
    angle: Math.atan2(-dx, dy),
  };
}
