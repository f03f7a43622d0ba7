import { findDiameters } from '../involute/gear-diameters.ts';
import type { DriveMesh, DriveModel, DriveWheel } from './drive-model.ts';
import type { DriveTrouble } from './drive-report.ts';
import { findBeltDiameter } from './list-relations.ts';

/** Two posts and how far they stand apart, mm. */
export interface PostDistance {
  readonly ends: readonly [string, string];
  readonly mm: number;
  readonly uMm: number;
  /** Nobody measured it: from toothings, diameters or mere counts */
  readonly isGuessed: boolean;
}

/**
 * The posts of a drive (a shaft without one is its own) and the distances that meshes set between them. Of two meshes
 * between the same posts the first measured one counts; where they differ by more than both may be off, that is a
 * trouble. Sun, ring and arm of a planetary set share one post. Bars have none.
 */
export function listDistances(model: DriveModel): {
  readonly posts: readonly string[];
  readonly distances: readonly PostDistance[];
  readonly troubles: readonly DriveTrouble[];
  /** The post of every shaft that turns */
  readonly postOfShaft: ReadonlyMap<string, string>;
} {
  const wheels = new Map(model.wheels.map((wheel) => [wheel.id, wheel]));
  const postOf = namePosts(model, wheels);
  const postOfShaft = new Map<string, string>();
  for (const { kind, shaft } of model.wheels) if (kind !== 'rack') postOfShaft.set(shaft, postOf(shaft));
  const kept = new Map<string, { distance: PostDistance; mesh: DriveMesh }>();
  const troubles: DriveTrouble[] = [];
  for (const mesh of model.meshes) {
    const driver = wheels.get(mesh.driver);
    const driven = wheels.get(mesh.driven);
    if (!driver || !driven || driver.kind === 'rack' || driven.kind === 'rack') continue;
    const ends = [postOf(driver.shaft), postOf(driven.shaft)] as const;
    if (ends[0] === ends[1]) continue;
    const distance = measure(mesh, driver, driven, ends);
    const key = JSON.stringify([...ends].sort());
    const other = kept.get(key);
    if (!other || (other.distance.isGuessed && !distance.isGuessed)) kept.set(key, { distance, mesh });
    else if (!distance.isGuessed && mesh.carrier === undefined) {
      const apart = Math.abs(distance.mm - other.distance.mm);
      if (apart > 2 * Math.hypot(distance.uMm, other.distance.uMm) + finest) {
        troubles.push(tellTwoDistances(distance, mesh, other.distance, other.mesh));
      }
    }
  }
  return {
    posts: [...new Set(postOfShaft.values())],
    distances: [...kept.values()].map((one) => one.distance),
    troubles,
    postOfShaft,
  };
}

/** mm: two readings of one length that differ by less are the same. */
const finest = 0.01;

/** What a shaft turns on: its wheels' post, the common middle of its planetary set, or itself. */
function namePosts(model: DriveModel, wheels: ReadonlyMap<string, DriveWheel>): (shaft: string) => string {
  const said = new Map<string, string>();
  for (const { shaft, post } of model.wheels) {
    if (post !== undefined && !said.has(shaft)) said.set(shaft, post);
  }
  const middle = new Map<string, string>();
  for (const carrier of new Set(model.meshes.map((mesh) => mesh.carrier))) {
    if (carrier === undefined) continue;
    for (const shaft of listMiddle(model, wheels, carrier)) middle.set(shaft, carrier);
  }
  return (shaft) => {
    const center = middle.get(shaft) ?? shaft;
    return said.get(shaft) ?? said.get(center) ?? center;
  };
}

/**
 * Shafts of a carrier's meshes that share its axis. Wheels that mesh lie on either side, in turns: the side that is
 * held still, driven from outside, wished for or an inward ring is the middle, the other the planets.
 */
function listMiddle(
  model: DriveModel,
  wheels: ReadonlyMap<string, DriveWheel>,
  carrier: string,
): readonly string[] {
  const side = new Map<string, number>();
  const carried = model.meshes.filter((mesh) => mesh.carrier === carrier);
  const shaftsOf = (mesh: DriveMesh): readonly string[] =>
    [mesh.driver, mesh.driven].map((id) => wheels.get(id)?.shaft ?? id);
  const next = new Map<string, string[]>();
  for (const [one, other] of carried.map(shaftsOf)) {
    next.set(one, [...(next.get(one) ?? []), other]);
    next.set(other, [...(next.get(other) ?? []), one]);
  }
  const outside = new Set([
    ...model.fixed,
    ...[model.wanted?.from, model.wanted?.to, model.motor?.shaft].filter((one) => one !== undefined),
    ...model.meshes.filter((mesh) => mesh.carrier !== carrier).flatMap(shaftsOf),
    ...model.wheels.filter((wheel) => wheel.kind === 'internal').map((wheel) => wheel.shaft),
  ]);
  const starts = [...next.keys()].sort((a, b) => Number(outside.has(b)) - Number(outside.has(a)));
  for (const start of starts) {
    if (side.has(start)) continue;
    side.set(start, 0);
    const waiting = [start];
    for (let shaft = waiting.pop(); shaft !== undefined; shaft = waiting.pop()) {
      for (const one of next.get(shaft) ?? []) {
        if (side.has(one)) continue;
        side.set(one, 1 - (side.get(shaft) ?? 0));
        waiting.push(one);
      }
    }
  }
  return [...side].flatMap(([shaft, which]) => (which === 0 ? [shaft] : []));
}

function measure(
  mesh: DriveMesh,
  driver: DriveWheel,
  driven: DriveWheel,
  ends: readonly [string, string],
): PostDistance {
  if (mesh.center) return { ends, mm: mesh.center.mm, uMm: mesh.center.uMm, isGuessed: false };
  const [one, other] = [driver, driven].map((wheel) => guessRadius(wheel, mesh.kind === 'belt'));
  const isRing = driver.kind === 'internal' || driven.kind === 'internal';
  // A belt's pulleys stand clear of each other.
  const mm = isRing ? Math.abs(one - other) : (one + other) * (mesh.kind === 'belt' ? 2 : 1);
  return { ends, mm: Math.max(mm, 1), uMm: mm / 4, isGuessed: true };
}

/** Half the reference diameter, mm; of a wheel that was only counted at a usual module, of an unknown one a usual size. */
function guessRadius(wheel: DriveWheel, isBelt: boolean): number {
  if (isBelt) return (findBeltDiameter(wheel) ?? 2 * usualRadius) / 2;
  if (wheel.spec && wheel.spec.kind !== 'rack') return findDiameters(wheel.spec).reference / 2;
  if (wheel.worm?.referenceDiameterMm !== undefined) return wheel.worm.referenceDiameterMm / 2;
  return wheel.teeth === undefined || wheel.kind === 'worm' ? usualRadius : (wheel.teeth * usualModule) / 2;
}

/** What most small machines have; a drawing without distances needs some size. Common practice, no published source. */
const usualModule = 0.5;
const usualRadius = 6;

function tellTwoDistances(
  one: PostDistance,
  oneMesh: DriveMesh,
  other: PostDistance,
  otherMesh: DriveMesh,
): DriveTrouble {
  const pair = (mesh: DriveMesh): string => `"${mesh.driver}" and "${mesh.driven}"`;
  return {
    kind: 'contradiction',
    about: [oneMesh.driver, oneMesh.driven, otherMesh.driver, otherMesh.driven],
    message:
      `"${one.ends[0]}" and "${one.ends[1]}" can't stand ${one.mm} mm apart for ${pair(oneMesh)} ` +
      `and ${other.mm} mm for ${pair(otherMesh)}`,
    remedy: 'Measure the distance between the two shafts once more; it holds for both.',
  };
}
