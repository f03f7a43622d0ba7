import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { buildSolid } from '../solid/build-solid.ts';
import type { Mesh } from '../solid/mesh.ts';
import { type Bore, findBoreRadius, type WheelForm } from '../solid/wheel-form.ts';

/** Thin gears to roll by hand against the mate, side by side in one file. */
export interface TrialPlate {
  readonly mesh: Mesh;
  /** The gears, and how far along x each one lies, mm */
  readonly bodies: readonly { readonly form: WheelForm; readonly x: number }[];
  /** How each rival is marked, in the order given */
  readonly marks: readonly string[];
}

const plateThickness = 1.6;
const gap = 3;

/**
 * A trial plate of two to four rivals: thin gears on the measured shaft, told apart by one, two, three, four through
 * holes where there is room between bore and root, else by their order from left to right.
 */
export function layTrialPlate(rivals: readonly GearSpec[], bore: Bore, chordError: number): TrialPlate {
  let x = 0;
  const meshes: Mesh[] = [];
  const bodies: { form: WheelForm; x: number }[] = [];
  const marks: string[] = [];
  rivals.forEach((spec, i) => {
    const { tip, root } = findDiameters(spec);
    const room = root / 2 - findBoreRadius(bore) - 0.6;
    const diameter = Math.min(1.5, room);
    const circle = (root / 2 + findBoreRadius(bore)) / 2;
    const fits = diameter >= 0.5 && 1.6 * diameter * (i + 1) < 2 * Math.PI * circle;
    const form: WheelForm = {
      spec,
      faceWidth: plateThickness,
      bore,
      hubs: [],
      chamfer: 0,
      ...(fits ? { marks: { count: i + 1, diameter } } : {}),
    };
    bodies.push({ form, x: x + tip / 2 });
    meshes.push(moveMesh(buildSolid(form, chordError), x + tip / 2));
    x += tip + gap;
    marks.push(fits ? `${i + 1} ${i === 0 ? 'hole' : 'holes'}` : `number ${i + 1} from the left`);
  });
  return { mesh: joinMeshes(meshes), bodies, marks };
}

function moveMesh(mesh: Mesh, by: number): Mesh {
  const positions = mesh.positions.slice();
  for (let k = 0; k < positions.length; k += 3) positions[k] += by;
  return { positions, triangles: mesh.triangles };
}

function joinMeshes(meshes: readonly Mesh[]): Mesh {
  const positions = new Float64Array(meshes.reduce((sum, mesh) => sum + mesh.positions.length, 0));
  const triangles = new Uint32Array(meshes.reduce((sum, mesh) => sum + mesh.triangles.length, 0));
  let corner = 0;
  let at = 0;
  for (const mesh of meshes) {
    positions.set(mesh.positions, 3 * corner);
    for (let k = 0; k < mesh.triangles.length; k++) triangles[at++] = mesh.triangles[k] + corner;
    corner += mesh.positions.length / 3;
  }
  return { positions, triangles };
}
