import { buildSolid } from '../../src/solid/build-solid.ts';
import type { Mesh } from '../../src/solid/mesh.ts';
import { makeSpec } from '../involute/make-spec.ts';

/** A small wheel with everything on it. */
export function makePlate(): Mesh {
  return buildSolid(
    {
      spec: makeSpec({ teeth: 12, module: 0.5, profileShift: 0.3, helixAngle: 0.2 }),
      faceWidth: 3,
      bore: { shape: 'd', diameter: 2, flat: 1.5 },
      hubs: [{ side: 'top', diameter: 4, length: 2 }],
      chamfer: 0.2,
    },
    0.005,
  );
}
