import type { DriveModel, DriveWheel } from './drive-model.ts';

/**
 * How far a rack moves for each tooth that passes, mm: π m_t of its own toothing, else of a wheel that runs on it;
 * undefined where neither is known.
 *
 * @example module 3: 9.42478; with twelve teeth a turn of the pinion moves it 113.097
 */
export function findRackStep(model: DriveModel, rack: DriveWheel): number | undefined {
  const own = findRackPitch(rack);
  if (own !== undefined) return own;
  for (const mesh of model.meshes) {
    if (mesh.driver !== rack.id && mesh.driven !== rack.id) continue;
    const id = mesh.driver === rack.id ? mesh.driven : mesh.driver;
    const mate = model.wheels.find((wheel) => wheel.id === id);
    const pitch = mate && findRackPitch(mate);
    if (pitch !== undefined) return pitch;
  }
  return undefined;
}

/** Transverse pitch of a wheel's or a rack's own toothing, mm. */
export function findRackPitch({ spec }: DriveWheel): number | undefined {
  return spec && (Math.PI * spec.module) / Math.cos(spec.helixAngle);
}
