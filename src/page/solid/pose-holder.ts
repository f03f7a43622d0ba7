import type { Pose } from './pose.ts';

/** Holds a pose that changes many times a second, outside React: only who listens is told. */
export interface PoseHolder {
  readonly get: () => Pose;
  readonly set: (pose: Pose) => void;
  /** Returns what stops listening */
  readonly listen: (told: () => void) => () => void;
}

export function holdPose(first: Pose): PoseHolder {
  let pose = first;
  const told = new Set<() => void>();
  return {
    get: () => pose,
    set(next) {
      pose = next;
      for (const tell of told) tell();
    },
    listen(tell) {
      told.add(tell);
      return () => told.delete(tell);
    },
  };
}
