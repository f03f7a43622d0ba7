import type { Job, Wheel } from '../../index.ts';
import { addWheel, editWheel } from './edit-job.ts';

export type JobMesh = NonNullable<Job['meshes']>[number];
export type WheelKind = NonNullable<Wheel['kind']>;
export type Wanted = NonNullable<Job['wanted']>;

/** Where a wheel sits: alone, or with another: as one piece, fixed on one shaft, or loose on one fixed post. */
export type Seat =
  | { readonly how: 'alone' }
  | { readonly how: 'one-piece' | 'same-shaft' | 'same-post'; readonly wheelId: string };

/** One more wheel of a kind, that nothing else is known of; the last of the job's wheels. */
export function addWheelOfKind(job: Job, kind: WheelKind): Job {
  const added = addWheel(job);
  const id = added.wheels?.at(-1)?.id;
  return id === undefined ? job : editWheel(added, id, (wheel) => ({ ...wheel, kind }));
}

/** What turns together with a wheel: its shaft, or the wheel alone. */
export function shaftOf(wheel: Wheel): string {
  return wheel.shaft ?? wheel.part ?? wheel.id;
}

/** The two wheels run against each other, the first turning the second; a mesh they had already is replaced. */
export function joinWheels(job: Job, driver: string, driven: string, kind: JobMesh['kind']): Job {
  const old = (job.meshes ?? []).find((mesh) => isBetween(mesh, driver, driven));
  if (old?.driver === driver && (old.kind ?? 'teeth') === kind) return job;
  return {
    ...job,
    meshes: [
      ...(job.meshes ?? []).filter((mesh) => mesh !== old),
      // What was measured of it, and what this page doesn't know, stays.
      { ...old, kind, driver, driven },
    ],
  };
}

/** The two wheels no longer run against each other. */
export function partWheels(job: Job, a: string, b: string): Job {
  const left = (job.meshes ?? []).filter((mesh) => !isBetween(mesh, a, b));
  return left.length === (job.meshes ?? []).length ? job : { ...job, meshes: left };
}

/** A mesh's own distance gives way to one that is measured anew: one measurement is never kept twice. */
export function dropCenter(job: Job, a: string, b: string | undefined): Job {
  const at = (job.meshes ?? []).findIndex((mesh) => b !== undefined && isBetween(mesh, a, b));
  const mesh = job.meshes?.[at];
  if (!mesh || mesh.centerMm === undefined) return job;
  const { centerMm: _mm, uMm: _u, ...rest } = mesh;
  return { ...job, meshes: (job.meshes ?? []).map((one, i) => (i === at ? rest : one)) };
}

export function isBetween(mesh: JobMesh, a: string, b: string): boolean {
  return (mesh.driver === a && mesh.driven === b) || (mesh.driver === b && mesh.driven === a);
}

/** How two kinds of wheel run against each other. */
export function meshKindOf(a: Wheel | undefined, b: Wheel | undefined): NonNullable<JobMesh['kind']> {
  if (a?.kind === 'pulley' || b?.kind === 'pulley') return 'belt';
  return a?.kind === 'worm' || b?.kind === 'worm' ? 'worm' : 'teeth';
}

/** The wheel seated anew. The wheel that it sits with gets the names that both then share. */
export function seatWheel(job: Job, wheelId: string, seat: Seat): Job {
  const other = seat.how === 'alone' ? undefined : job.wheels?.find((one) => one.id === seat.wheelId);
  if (seat.how === 'alone' || !other) {
    return editWheel(job, wheelId, ({ shaft: _shaft, part: _part, post: _post, ...rest }) => rest);
  }
  const shaft = shaftOf(other);
  const post = other.post ?? other.id;
  const part = other.part ?? other.id;
  const shared = seat.how === 'same-post' ? { post } : seat.how === 'one-piece' ? { shaft, part } : { shaft };
  const seated = editWheel(job, wheelId, ({ shaft: _shaft, part: _part, post: _post, ...rest }) => ({
    ...rest,
    // Loose on one post they turn apart: each has its own shaft, by its own name.
    ...(seat.how === 'same-post' ? { shaft: wheelId } : {}),
    ...(other.post === undefined ? {} : { post: other.post }),
    ...shared,
  }));
  return editWheel(seated, other.id, (wheel) => ({ ...wheel, ...shared }));
}

/** How a wheel sits now, as far as the job says. */
export function findSeat(job: Job, wheel: Wheel): Seat {
  const others = (job.wheels ?? []).filter((one) => one.id !== wheel.id);
  const piece = others.find((one) => wheel.part !== undefined && one.part === wheel.part);
  if (piece) return { how: 'one-piece', wheelId: piece.id };
  const shaft = others.find((one) => shaftOf(one) === shaftOf(wheel));
  if (shaft) return { how: 'same-shaft', wheelId: shaft.id };
  const post = others.find((one) => wheel.post !== undefined && one.post === wheel.post);
  return post ? { how: 'same-post', wheelId: post.id } : { how: 'alone' };
}

/** The shaft that everything starts from, and how fast it turns where that is known. */
export function setMotor(job: Job, shaft: string, rpm: number | undefined): Job {
  const { rpm: _, ...rest } = job.motor ?? {};
  return { ...job, motor: { ...rest, shaft, ...(rpm === undefined ? {} : { rpm }) } };
}

/** What should come out; nothing where that isn't known. */
export function setWanted(job: Job, wanted: Wanted | undefined): Job {
  const { wanted: _, ...rest } = job;
  return wanted === undefined ? rest : { ...rest, wanted };
}
