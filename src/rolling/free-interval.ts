import { type Facing, findReach, findStop, type Touch } from './find-stop.ts';

/** Two wheels at a distance of their shafts: what stands there, not how it is turned. */
export interface Mesh {
  readonly facing: Facing;
  readonly distance: number;
  /** Which teeth are there, by number; undefined where all are */
  readonly driverTeeth: readonly boolean[] | undefined;
  readonly drivenTeeth: readonly boolean[] | undefined;
  /** How far each wheel's middle lies off its shaft, toward its tooth 0, mm; of a rack 0 */
  readonly driverOffset: number;
  readonly drivenOffset: number;
}

/** Angles less the nominal one, rad (a driven rack's travel, mm), counted in the way the driven wheel is driven. */
export interface FreeInterval {
  /** Where the driving flanks touch; −Infinity where nothing holds the wheel */
  readonly low: number;
  /** Where the other flanks touch; below `low` where the outlines overlap however the wheel is turned */
  readonly high: number;
}

/** A function such as `findStop`, or a table of it. */
export type Stop = (distance: number, turn: number, above?: number) => number;

/**
 * Between which angles the driven wheel is free while the driver stands at `driverAngle` (of its tooth 0 from the line
 * of centers, rad, positive as the driver turns to drive the driven wheel positive; a rack's travel, mm).
 *
 * Driven in step, each tooth of the driver stands between two certain teeth of the driven wheel: the one ahead may
 * come no nearer than `findStop`, and by mirror symmetry neither may the one behind. The interval is what all teeth
 * within reach leave. Where a tooth of the driven wheel is gone, its neighbor holds instead. At angle 0 of both the
 * driver's tooth 0 stands on the line of centers, the driven wheel's tooth 0 half a pitch ahead of it.
 *
 * With runout, the teeth mesh along the line between the wheels' middles, which is not that between the shafts; the
 * driven wheel's middle depends on its angle, so its bounds are found again from where they first came out (the
 * second change is less by offset over radius, the third nothing).
 *
 * @param stop `findStop` of this facing, or a table of it
 */
export function findFreeInterval(mesh: Mesh, driverAngle: number, stop: Stop): FreeInterval {
  if (mesh.driverOffset === 0 && mesh.drivenOffset === 0) {
    const seen: Seen = { distance: mesh.distance, turn: driverAngle, lead: 0 };
    const reach = findReach(mesh.facing, mesh.distance);
    return {
      low: findBound(mesh, seen, reach, stop, 1),
      high: -findBound(mesh, seen, reach, stop, -1),
    };
  }
  const bound = (direction: 1 | -1): number => {
    let found = 0;
    for (let round = 0; round < (mesh.drivenOffset === 0 ? 1 : 3); round++) {
      const seen = seeFromMiddles(mesh, driverAngle, Number.isFinite(found) ? found : 0);
      const one = findBound(mesh, seen, findReach(mesh.facing, seen.distance), stop, direction);
      found = direction * one + seen.lead;
    }
    return found;
  };
  return { low: bound(1), high: bound(-1) };
}

/** What touches at a bound, in the frame of the shafts: driver's axis at the origin, driven's axis on the x axis. */
export function findTouch(
  mesh: Mesh,
  driverAngle: number,
  direction: 1 | -1,
  at: number,
): Touch | undefined {
  const seen = seeFromMiddles(mesh, driverAngle, Number.isFinite(at) ? at : 0);
  const touch: Touch = { x: 0, y: 0, driverRadius: 0, drivenRadius: 0 };
  let best = Number.NEGATIVE_INFINITY;
  let found: Touch | undefined;
  const stop: Stop = (distance, turn, above) => findStop(mesh.facing, distance, turn, above, touch);
  listTeeth(mesh, seen, findReach(mesh.facing, seen.distance), direction, (turn, skipped) => {
    const bound = boundOf(mesh, seen, stop, turn, direction, skipped, best);
    if (!(bound > best)) return;
    best = bound;
    found = { ...touch, y: direction * touch.y };
  });
  if (!found) return undefined;
  // Back from the line of middles to that of the shafts.
  const c = Math.cos(seen.tilt ?? 0);
  const s = Math.sin(seen.tilt ?? 0);
  return {
    ...found,
    x: found.x * c - found.y * s + (seen.fromX ?? 0),
    y: found.x * s + found.y * c + (seen.fromY ?? 0),
  };
}

/** The mesh as seen along the line between the wheels' middles. */
interface Seen {
  readonly distance: number;
  /** Driver's angle from that line */
  readonly turn: number;
  /** What to add to a bound found from that line */
  readonly lead: number;
  readonly tilt?: number;
  readonly fromX?: number;
  readonly fromY?: number;
}

function seeFromMiddles(mesh: Mesh, driverAngle: number, ahead: number): Seen {
  const { facing, distance } = mesh;
  const { driver, driven, side, toward } = facing;
  const ratio = driven.pitch / driver.pitch;
  const drivenAngle = driverAngle * ratio + ahead + driven.pitch / 2;
  const fromX = driver.kind === 'rack' ? 0 : mesh.driverOffset * Math.cos(driverAngle);
  const fromY = driver.kind === 'rack' ? 0 : mesh.driverOffset * Math.sin(driverAngle);
  const isDrivenRack = driven.kind === 'rack';
  const toX = side * distance + (isDrivenRack ? 0 : mesh.drivenOffset * toward * Math.cos(drivenAngle));
  const toY = isDrivenRack ? 0 : mesh.drivenOffset * Math.sin(drivenAngle);
  if (isDrivenRack) return { distance: toX - fromX, turn: driverAngle, lead: fromY, fromX, fromY };
  if (driver.kind === 'rack') {
    return { distance: toX, turn: driverAngle - toY, lead: -toY * ratio, fromX: 0, fromY: toY };
  }
  const tilt = Math.atan2(side * (toY - fromY), side * (toX - fromX));
  return {
    distance: Math.hypot(toX - fromX, toY - fromY),
    turn: driverAngle - tilt,
    lead: toward * tilt - tilt * ratio,
    tilt,
    fromX,
    fromY,
  };
}

/** The low bound; with direction −1, the high bound as seen in a mirror. */
function findBound(mesh: Mesh, seen: Seen, reach: number, stop: Stop, direction: 1 | -1): number {
  let bound = Number.NEGATIVE_INFINITY;
  listTeeth(mesh, seen, reach, direction, (turn, skipped) => {
    const one = boundOf(mesh, seen, stop, turn, direction, skipped, bound);
    if (one > bound) bound = one;
  });
  return bound;
}

function boundOf(
  { facing: { driver, driven } }: Mesh,
  seen: Seen,
  stop: Stop,
  turn: number,
  direction: 1 | -1,
  skipped: number,
  above: number,
): number {
  const mirrored = direction * turn;
  const nominal = (mirrored * driven.pitch) / driver.pitch + (0.5 + skipped) * driven.pitch;
  return stop(seen.distance, mirrored, above + nominal) - nominal;
}

/** Calls with the angle of each tooth of the driver within reach, and how many teeth of the mate are gone beside it. */
function listTeeth(
  { facing: { driver, driven }, driverTeeth, drivenTeeth }: Mesh,
  seen: Seen,
  reach: number,
  direction: 1 | -1,
  call: (turn: number, skipped: number) => void,
): void {
  const first = Math.ceil((-reach - seen.turn) / driver.pitch);
  const last = Math.floor((reach - seen.turn) / driver.pitch);
  for (let tooth = first; tooth <= last; tooth++) {
    if (driverTeeth && !driverTeeth[wrap(tooth, driver.teeth)]) continue;
    let skipped = 0;
    if (drivenTeeth) {
      const beside = direction > 0 ? tooth : tooth - 1;
      while (skipped < driven.teeth && !drivenTeeth[wrap(beside + direction * skipped, driven.teeth)]) skipped++;
      if (skipped === driven.teeth) return;
    }
    call(seen.turn + tooth * driver.pitch, skipped);
  }
}

function wrap(index: number, count: number): number {
  return ((index % count) + count) % count;
}
