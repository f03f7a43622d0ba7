import type { Job } from './job-schema.ts';

/**
 * The ratio that a job's drive was made for, input speed over output speed, from whatever the person knows: the ratio
 * itself, or the output's turns a minute, a belt's or tape's speed over a roller, or the seconds of one stroke (one
 * turn of the output), with the motor's rpm. Undefined where none can be had.
 *
 * @example a motor of 3000 rpm, a tape at 95.3 mm/s over a roller of 18.2 mm: 3000/(60 · 95.3/(π 18.2)) = 30.0
 */
export function findWantedRatio(job: Job): number | undefined {
  const { wanted, motor } = job;
  if (!wanted) return undefined;
  if (wanted.ratio !== undefined) return wanted.ratio;
  const output = findOutputRpm(wanted);
  return output === undefined || !motor?.rpm ? undefined : Math.abs(motor.rpm) / output;
}

/** Turns a minute of the output. */
function findOutputRpm(wanted: NonNullable<Job['wanted']>): number | undefined {
  const { turnsPerMinute, beltSpeedMmPerS, rollerDiameterMm, secondsForStroke } = wanted;
  if (turnsPerMinute) return Math.abs(turnsPerMinute);
  if (beltSpeedMmPerS && rollerDiameterMm) return (60 * beltSpeedMmPerS) / (Math.PI * rollerDiameterMm);
  return secondsForStroke ? 60 / secondsForStroke : undefined;
}
