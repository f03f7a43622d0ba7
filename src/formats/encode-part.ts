import { buildExact } from '../solid/build-exact.ts';
import { flattenPart } from '../solid/flatten-part.ts';
import type { Mesh } from '../solid/mesh.ts';
import type { WheelForm } from '../solid/wheel-form.ts';
import { encodeDxf } from './dxf.ts';
import type { PartFormat } from './part-formats.ts';
import { encodeStep } from './step.ts';
import { encodeStl } from './stl.ts';
import { encodeSvg } from './svg.ts';
import { encodeThreeMf } from './three-mf.ts';

/** What a part file holds: the triangles, and the forms that they were made from, each moved along x by so much, mm. */
export interface PartShape {
  readonly mesh: Mesh;
  readonly bodies: readonly { readonly form: WheelForm; readonly x: number }[];
}

type Encode = (shape: PartShape, name: string, metadata: Readonly<Record<string, string>>) => Uint8Array;

const encoders: Readonly<Record<PartFormat['key'], Encode>> = {
  stl: ({ mesh }, name) => encodeStl(mesh, `${name} (mm)`),
  '3mf': ({ mesh }, name, metadata) => encodeThreeMf(mesh, name, metadata),
  step: ({ bodies }, name, metadata) =>
    encodeStep(
      bodies.map(({ form, x }) => ({ body: buildExact(form), x })),
      name,
      metadata.Description ?? '',
    ),
  dxf: (shape) => encodeDxf(flatten(shape)),
  svg: (shape, name) => encodeSvg(flatten(shape), name),
};

/** A part as the bytes of one format. A name or metadata that the format can't hold is a plain Error. */
export function encodePart(
  format: PartFormat,
  shape: PartShape,
  name: string,
  metadata: Readonly<Record<string, string>>,
): Uint8Array {
  return encoders[format.key](shape, name, metadata);
}

function flatten({ bodies }: PartShape): ReturnType<typeof flattenPart> {
  return bodies.flatMap(({ form, x }) => flattenPart(form, x, flatError));
}

/** How far the arcs of a flat file may stray from the exact flanks, mm: a tenth of what the finest cutter repeats. */
const flatError = 0.001;
