import type { PartShape } from '../../src/formats/encode-part.ts';
import { buildSolid } from '../../src/solid/build-solid.ts';
import type { WheelForm } from '../../src/solid/wheel-form.ts';
import { makeSpec } from '../involute/make-spec.ts';

/** A small wheel with everything on it. */
export function makePlate(): PartShape {
  const form: WheelForm = {
    spec: makeSpec({ teeth: 12, module: 0.5, profileShift: 0.3, helixAngle: 0.2 }),
    faceWidth: 3,
    bore: { shape: 'd', diameter: 2, flat: 1.5 },
    hubs: [{ side: 'top', diameter: 4, length: 2 }],
    chamfer: 0.2,
  };
  return { mesh: buildSolid(form, 0.005), bodies: [{ form, x: 0 }] };
}
