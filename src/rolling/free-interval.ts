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
 * driven wheel's middle depends on its angle, so its bounds are found a second time from where they first came out: a
 * third would change them by less than a nanometer.
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
    for (let round = 0; round < (mesh.drivenOffset === 0 ? 1 : 2); round++) {
      const seen = seeFromMiddles(mesh, driverAngle, Number.isFinite(found) ? found : 0);
      const one = findBound(mesh, seen, findReach(mesh.facing, seen.distance), stop, direction);
      found = direction * one + seen.lead;
    }
    return found;
  };
  return { low: bound(1), high: bound(-1) };
}

/** What touches at a bound, in the frame of the shafts: driver's axis at the origin, driven's axis on the x axis. */
export function findTouch(mesh: Mesh, driverAngle: number, direction: 1 | -1, at: number): Touch | undefined {
  const seen = seeFromMiddles(mesh, driverAngle, Number.isFinite(at) ? at : 0);
  const touch: Touch = { x: 0, y: 0, driverRadius: 0, drivenRadius: 0 };
  // Each stop that is asked for lies above the one before it, so the last to touch is the one that holds.
  const bound = findBound(
    mesh,
    seen,
    findReach(mesh.facing, seen.distance),
    (distance, turn, above) => findStop(mesh.facing, distance, turn, above, touch),
    direction,
  );
  if (bound === Number.NEGATIVE_INFINITY) return undefined;
  const { x, y } = { x: touch.x, y: direction * touch.y };
  // Back from the line of middles to that of the shafts.
  const c = Math.cos(seen.tilt ?? 0);
  const s = Math.sin(seen.tilt ?? 0);
  return {
    ...touch,
    x: x * c - y * s + (seen.fromX ?? 0),
    y: x * s + y * c + (seen.fromY ?? 0),
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

/** The low bound; with direction −1, the high bound as seen in a mirror.  */
function findBound(
  { facing: { driver, driven }, driverTeeth, drivenTeeth }: Mesh,
  seen: Seen,
  reach: number,
  stop: Stop,
  direction: 1 | -1,
): number {
  const ratio = driven.pitch / driver.pitch;
  const first = Math.ceil((-reach - seen.turn) / driver.pitch);
  const last = Math.floor((reach - seen.turn) / driver.pitch);
  let bound = Number.NEGATIVE_INFINITY;
  for (let tooth = first; tooth <= last; tooth++) {
    if (driverTeeth && !driverTeeth[wrap(tooth, driver.teeth)]) continue;
    const gone = drivenTeeth ? countGone(drivenTeeth, direction > 0 ? tooth : tooth - 1, direction) : 0;
    const turn = direction * (seen.turn + tooth * driver.pitch);
    const nominal = turn * ratio + (0.5 + gone) * driven.pitch;
    const one = stop(seen.distance, turn, bound + nominal) - nominal;
    if (one > bound) bound = one;
  }
  return bound;
}

/** How many teeth of the driven wheel are gone from one on; Infinity where all are. */
function countGone(teeth: readonly boolean[], from: number, direction: 1 | -1): number {
  for (let gone = 0; gone < teeth.length; gone++) {
    if (teeth[wrap(from + direction * gone, teeth.length)]) return gone;
  }
  return Number.POSITIVE_INFINITY;
}

function wrap(index: number, count: number): number {
  return ((index % count) + count) % count;
}
