import { createRequire } from 'node:module';
import type { Mesh } from '../../src/solid/mesh.ts';

interface ReadMesh {
  readonly attributes: { readonly position: { readonly array: readonly number[] } };
  readonly index: { readonly array: readonly number[] };
  readonly brep_faces: readonly { readonly first: number; readonly last: number }[];
}

interface Reader {
  readonly ReadStepFile: (
    bytes: Uint8Array,
    options: object,
  ) => { readonly success: boolean; readonly meshes: readonly ReadMesh[] };
}

/** What an independent kernel (Open CASCADE, by occt-import-js) makes of a STEP file: a mesh for each solid in it. */
export interface ReadStep {
  readonly solids: readonly { readonly faces: number; readonly mesh: Mesh }[];
}

let starting: Promise<Reader> | undefined;

/**
 * Reads a STEP file. Its kernel gives each face its own corners; those at one place, to a tenth of a micrometer, become
 * one, so that a mesh is closed only where neighboring faces meet.
 */
export async function readStep(bytes: Uint8Array, chordError = 0.005): Promise<ReadStep> {
  starting ??= (createRequire(import.meta.url)('occt-import-js') as () => Promise<Reader>)();
  const reader = await starting;
  const { success, meshes } = reader.ReadStepFile(bytes, {
    linearUnit: 'millimeter',
    linearDeflectionType: 'absolute_value',
    linearDeflection: chordError,
    angularDeflection: 0.5,
  });
  if (!success) throw new Error('the kernel could not read the file');
  return {
    solids: meshes.map((mesh) => ({
      faces: mesh.brep_faces.length,
      mesh: weld(mesh.attributes.position.array, mesh.index.array),
    })),
  };
}

function weld(array: readonly number[], index: readonly number[]): Mesh {
  const cells = new Map<number, number[]>();
  const positions: number[] = [];
  const found = new Uint32Array(array.length / 3);
  for (let k = 0; k < found.length; k++) {
    const [x, y, z] = [array[3 * k], array[3 * k + 1], array[3 * k + 2]];
    const at = [x, y, z].map((value) => Math.floor(value / cell + 0.5));
    // A corner near a cell's edge may have been met in the next one.
    const near = [x, y, z].map((value, axis) => (value / cell + 0.5 - at[axis] < 0.5 ? -1 : 1));
    let corner: number | undefined;
    for (let step = 0; step < 8 && corner === undefined; step++) {
      const key = hash(
        at[0] + (step & 1 ? near[0] : 0),
        at[1] + (step & 2 ? near[1] : 0),
        at[2] + (step & 4 ? near[2] : 0),
      );
      corner = cells
        .get(key)
        ?.find(
          (one) =>
            Math.hypot(positions[3 * one] - x, positions[3 * one + 1] - y, positions[3 * one + 2] - z) <
            cell / 2,
        );
    }
    if (corner === undefined) {
      corner = positions.length / 3;
      positions.push(x, y, z);
      const key = hash(at[0], at[1], at[2]);
      const list = cells.get(key);
      if (list) list.push(corner);
      else cells.set(key, [corner]);
    }
    found[k] = corner;
  }
  const triangles: number[] = [];
  for (let k = 0; k < index.length; k += 3) {
    const [a, b, c] = [found[index[k]], found[index[k + 1]], found[index[k + 2]]];
    if (a !== b && b !== c && c !== a) triangles.push(a, b, c);
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** Corners nearer than half of it are one, mm. */
const cell = 2e-4;

function hash(x: number, y: number, z: number): number {
  return Math.imul(x, 73856093) ^ Math.imul(y, 19349663) ^ Math.imul(z, 83492791);
}
