import type { DriveModel } from './drive-model.ts';

/** Shafts (and racks' slides) that meshes, carriers and pieces join to a shaft, counted or not; itself among them. */
export function findJoined(model: DriveModel, from: string): ReadonlySet<string> {
  const shaftOf = new Map(model.wheels.map((wheel) => [wheel.id, wheel.shaft]));
  const next = new Map<string, string[]>();
  const join = (all: readonly (string | undefined)[]): void => {
    const [first, ...others] = all.filter((one) => one !== undefined);
    for (const other of others) {
      next.set(first, [...(next.get(first) ?? []), other]);
      next.set(other, [...(next.get(other) ?? []), first]);
    }
  };
  for (const mesh of model.meshes) join([shaftOf.get(mesh.driver), shaftOf.get(mesh.driven), mesh.carrier]);
  const firstOfPart = new Map<string, string>();
  for (const { part, shaft } of model.wheels) {
    if (part === undefined) continue;
    const first = firstOfPart.get(part);
    if (first === undefined) firstOfPart.set(part, shaft);
    else join([first, shaft]);
  }
  const joined = new Set([from]);
  const waiting = [from];
  for (let shaft = waiting.pop(); shaft !== undefined; shaft = waiting.pop()) {
    for (const one of next.get(shaft) ?? []) {
      if (joined.has(one)) continue;
      joined.add(one);
      waiting.push(one);
    }
  }
  return joined;
}
