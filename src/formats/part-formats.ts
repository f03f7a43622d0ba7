import type { Mesh } from '../solid/mesh.ts';
import { encodeStl } from './stl.ts';
import { encodeThreeMf } from './three-mf.ts';

/** One file format that a part can be written in; the command's choices and the README's table come from here. */
export interface PartFormat {
  readonly key: string;
  readonly extension: string;
  readonly what: string;
  readonly encode: (mesh: Mesh, name: string, metadata: Readonly<Record<string, string>>) => Uint8Array;
}

export const partFormats: readonly PartFormat[] = [
  {
    key: 'stl',
    extension: 'stl',
    what: 'triangles, numbers in mm, read by everything',
    encode: (mesh, name) => encodeStl(mesh, `${name} (mm)`),
  },
  {
    key: '3mf',
    extension: '3mf',
    what: 'triangles with unit, name and the spec inside',
    encode: encodeThreeMf,
  },
];
