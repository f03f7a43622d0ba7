import type { Job, Wheel } from '../../index.ts';
import { shaftOf } from './edit-train.ts';

/** A job's wheels from the input to the output: from the motor's shaft along the meshes; what no mesh reaches, last. */
export function orderWheels(job: Job): readonly Wheel[] {
  const wheels = job.wheels ?? [];
  const meshes = job.meshes ?? [];
  const driven = new Set(meshes.map((mesh) => mesh.driven));
  const drivers = new Set(meshes.map((mesh) => mesh.driver));
  const ordered = new Set<Wheel>();
  const byId = new Map(wheels.map((wheel) => [wheel.id, wheel]));
  const onShaft = new Map<string, Wheel[]>();
  for (const wheel of wheels) onShaft.set(shaftOf(wheel), [...(onShaft.get(shaftOf(wheel)) ?? []), wheel]);
  const follow = (shaft: string): void => {
    const queue = [shaft];
    const seen = new Set(queue);
    for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
      // On one shaft the wheel that is turned comes before those that turn others.
      const here = (onShaft.get(at) ?? []).toSorted(
        (a, b) => Number(driven.has(b.id)) - Number(driven.has(a.id)),
      );
      for (const wheel of here) ordered.add(wheel);
      for (const mesh of meshes) {
        const next = byId.get(mesh.driven ?? '');
        if (!next || !here.some((wheel) => wheel.id === mesh.driver) || seen.has(shaftOf(next))) continue;
        seen.add(shaftOf(next));
        queue.push(shaftOf(next));
      }
    }
  };
  if (job.motor?.shaft !== undefined) follow(job.motor.shaft);
  for (const wheel of wheels) {
    const isFirst = (onShaft.get(shaftOf(wheel)) ?? []).every((one) => !driven.has(one.id));
    if (isFirst && drivers.has(wheel.id) && !ordered.has(wheel)) follow(shaftOf(wheel));
  }
  return [...ordered, ...wheels.filter((wheel) => !ordered.has(wheel))];
}
