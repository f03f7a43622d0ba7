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
  const places = new Map<string, number>();
  const positions: number[] = [];
  const found = new Uint32Array(array.length / 3);
  const cell = 1e-4;
  for (let k = 0; k < found.length; k++) {
    const at = array.slice(3 * k, 3 * k + 3);
    let corner: number | undefined;
    // A corner near a cell's edge may have been met on the other side of it.
    for (const dx of [0, -0.5, 0.5])
      for (const dy of [0, -0.5, 0.5])
        for (const dz of [0, -0.5, 0.5])
          corner ??= places.get(
            `${Math.round(at[0] / cell + dx)} ${Math.round(at[1] / cell + dy)} ${Math.round(at[2] / cell + dz)}`,
          );
    if (corner === undefined) {
      corner = positions.length / 3;
      positions.push(...at);
      places.set(at.map((value) => Math.round(value / cell)).join(' '), corner);
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
