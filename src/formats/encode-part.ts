import type { Mesh } from '../solid/mesh.ts';
import type { PartFormat } from './part-formats.ts';
import { encodeStl } from './stl.ts';
import { encodeThreeMf } from './three-mf.ts';

type Encode = (mesh: Mesh, name: string, metadata: Readonly<Record<string, string>>) => Uint8Array;

const encoders: Readonly<Record<PartFormat['key'], Encode>> = {
  stl: (mesh, name) => encodeStl(mesh, `${name} (mm)`),
  '3mf': encodeThreeMf,
};

/** A mesh as the bytes of one part format. A name or metadata that the format can't hold is a plain Error. */
export function encodePart(
  format: PartFormat,
  mesh: Mesh,
  name: string,
  metadata: Readonly<Record<string, string>>,
): Uint8Array {
  return encoders[format.key](mesh, name, metadata);
}
