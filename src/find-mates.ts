import type { Job, Wheel } from './job/job-schema.ts';

type Mesh = NonNullable<Job['meshes']>[number];

/** A wheel that teeth join to another one. */
export interface FoundMate {
  readonly mesh: Mesh;
  readonly mate: Wheel;
  /** The mate drives, and the wheel asked about is driven */
  readonly isDriver: boolean;
}

/** The wheels of a job that a mesh of teeth joins to the one asked about, in the order of the meshes. */
export function findMates(job: Job, wheelId: string): FoundMate[] {
  return (job.meshes ?? []).filter(isOfTeeth).flatMap((mesh): FoundMate[] => {
    const isDriver = mesh.driver !== wheelId;
    const id = isDriver ? (mesh.driven === wheelId ? mesh.driver : undefined) : mesh.driven;
    const mate = job.wheels?.find((one) => one.id === id);
    return id !== undefined && mate ? [{ mesh, mate, isDriver }] : [];
  });
}

/** A wheel that is driven by one and drives another bends its teeth both ways. */
export function isIdler(job: Job, wheelId: string): boolean {
  const meshes = (job.meshes ?? []).filter(isOfTeeth);
  return meshes.some(({ driver }) => driver === wheelId) && meshes.some(({ driven }) => driven === wheelId);
}

function isOfTeeth({ kind }: Mesh): boolean {
  return kind === undefined || kind === 'teeth';
}
