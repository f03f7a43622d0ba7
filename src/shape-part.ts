import { findDiameters } from './involute/gear-diameters.ts';
import type { Job } from './job/job-schema.ts';
import { type LastingOptions, planLasting } from './plan-lasting.ts';
import { planWholePart, type WholePartOptions } from './plan-whole-part.ts';
import { buildSolid } from './solid/build-solid.ts';
import { type CutPlane, cutMesh } from './solid/cut-mesh.ts';
import { findEdges, type MeshEdges } from './solid/find-edges.ts';
import type { Mesh } from './solid/mesh.ts';
import type { Bore, Hub, WheelForm } from './solid/wheel-form.ts';

export interface ShapeOptions extends WholePartOptions, LastingOptions {
  /** Greatest stray of a chord from the exact curve, mm; where left out, what no screen shows at four times full size */
  readonly chordErrorMm?: number | undefined;
}

/** A part's shape, to look at: nothing in it is rounded for a file. Lengths mm, axis z, lower face of the teeth at 0. */
export interface ShapedPart {
  readonly wheelId: string;
  readonly isTrial: boolean;
  readonly form: {
    readonly kind: WheelForm['spec']['kind'];
    readonly teeth: number;
    /** Across the tips; for a rack, its length */
    readonly tipDiameter: number;
    readonly faceWidth: number;
    readonly bore: Bore;
    readonly hubs: readonly Hub[];
    readonly helixAngle: number;
    readonly rimDiameter?: number | undefined;
  };
  readonly mesh: Mesh;
  readonly whole: SolidDrawing;
  /** Cut along the axis (a rack: across its middle), with the side of negative y (rack: positive x) taken away */
  readonly cut: SolidDrawing & { readonly cap: DrawnFaces };
}

/** Triangles as a screen wants them: single precision, corners shared. */
export interface DrawnFaces {
  readonly positions: Float32Array;
  readonly triangles: Uint32Array;
}

/** What of a solid is drawn: its faces, and its edges as lines. */
export interface SolidDrawing {
  readonly faces: DrawnFaces;
  readonly edges: MeshEdges;
}

/**
 * The shape of the part that `make` writes to files, with its edges, whole and cut open. Throws what `make` throws.
 */
export function shapePart(job: Job, options: ShapeOptions): ShapedPart {
  const planned = planWholePart(job, options);
  const { wheel, isTrial } = planned;
  const plan = planLasting(job, planned, options);
  const { spec, faceWidth, bore, hubs, rimDiameter } = plan.form;
  const isRack = spec.kind === 'rack';
  const length = (spec.teeth * Math.PI * spec.module) / Math.cos(spec.helixAngle);
  const tipDiameter = isRack ? length : findDiameters(spec).tip;
  const mesh = buildSolid(plan.form, options.chordErrorMm ?? (rimDiameter ?? tipDiameter) * screenPart);
  const { body, cap } = cutMesh(mesh, isRack ? middleOf(mesh) : alongAxis);
  return {
    wheelId: wheel.id,
    isTrial,
    form: {
      kind: spec.kind,
      teeth: spec.teeth,
      tipDiameter,
      faceWidth,
      bore,
      hubs,
      helixAngle: spec.helixAngle,
      rimDiameter,
    },
    mesh,
    whole: { faces: drawFaces(mesh), edges: findEdges(mesh, sharpAngle) },
    cut: { faces: drawFaces(body), edges: findEdges(body, sharpAngle), cap: drawFaces(cap) },
  };
}

/** A tenth of a pixel where the part fills a thousand. */
const screenPart = 1e-4;

/** Less is a curve's own turning, from one of its chords to the next; a tooth's and a face's edges turn by more. */
const sharpAngle = (25 * Math.PI) / 180;

/** Keeps what lies at positive y. A D's flat faces +x, so the cut shows it. */
const alongAxis: CutPlane = { angle: Math.PI / 2, offset: 0 };

/** Across a rack at the middle of its length; keeps the far half. */
function middleOf({ positions }: Mesh): CutPlane {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < positions.length; k += 3) {
    least = Math.min(least, positions[k]);
    most = Math.max(most, positions[k]);
  }
  return { angle: Math.PI, offset: -(least + most) / 2 };
}

/** Corners that no triangle has are left out. */
function drawFaces({ positions, triangles }: Mesh): DrawnFaces {
  const places = new Int32Array(positions.length / 3).fill(-1);
  const kept: number[] = [];
  const corners = new Uint32Array(triangles.length);
  for (let k = 0; k < triangles.length; k++) {
    const corner = triangles[k];
    if (places[corner] < 0) {
      places[corner] = kept.length / 3;
      kept.push(positions[3 * corner], positions[3 * corner + 1], positions[3 * corner + 2]);
    }
    corners[k] = places[corner];
  }
  return { positions: Float32Array.from(kept), triangles: corners };
}
