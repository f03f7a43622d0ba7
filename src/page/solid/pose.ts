/** How the solid is held before the eye. */
export interface Pose {
  /** About its own axis, rad; grows as the side before the eye goes right */
  readonly yaw: number;
  /** How far its upper face leans toward the eye, rad: 0 edge on, π/2 straight from above, −π/2 from below */
  readonly pitch: number;
  /** 1 where the whole solid just fits the sheet */
  readonly nearness: number;
}

export type PoseStep = 'left' | 'right' | 'up' | 'down' | 'nearer' | 'farther' | 'home';

/** One press of a key or a button: 15°, or a quarter nearer. Never past straight above, below, or the limits of zoom. */
export function stepPose(pose: Pose, step: PoseStep, home: Pose): Pose {
  switch (step) {
    case 'left':
      return turnPose(pose, -step15, 0);
    case 'right':
      return turnPose(pose, step15, 0);
    case 'up':
      return turnPose(pose, 0, -step15);
    case 'down':
      return turnPose(pose, 0, step15);
    case 'nearer':
      return zoomPose(pose, 1.25);
    case 'farther':
      return zoomPose(pose, 1 / 1.25);
    case 'home':
      return home;
  }
}

/** Turned back to where a cut is seen, if it would look away from the eye. At home it is seen. */
export function faceCut(pose: Pose, home: Pose): Pose {
  return Math.cos(pose.yaw - home.yaw) < 0.5 ? { ...pose, yaw: home.yaw } : pose;
}

/** Turned by angles in rad. */
export function turnPose(pose: Pose, yaw: number, pitch: number): Pose {
  const whole = 2 * Math.PI;
  return {
    ...pose,
    yaw: (pose.yaw + yaw) % whole,
    pitch: Math.min(Math.PI / 2, Math.max(-Math.PI / 2, pose.pitch + pitch)),
  };
}

export function zoomPose(pose: Pose, factor: number): Pose {
  return { ...pose, nearness: Math.min(8, Math.max(0.5, pose.nearness * factor)) };
}

/** A twenty-fourth of a turn, 15°: six of them from the side to straight above. */
const step15 = Math.PI / 12;
