import type { Job } from '../../index.ts';
import { shaftOf } from '../state/edit-train.ts';

/** What a wheel is called: by its name, else its id. */
export function nameWheel(job: Job, wheelId: string): string {
  return job.wheels?.find((one) => one.id === wheelId)?.name ?? wheelId;
}

/** What a shaft is called: by the name that was given to it, else by what sits on it. */
export function nameShaft(job: Job, shaft: string): string {
  const wheels = (job.wheels ?? []).filter((wheel) => shaftOf(wheel) === shaft);
  const isNamed = wheels.every((wheel) => wheel.id !== shaft && wheel.part !== shaft);
  if (isNamed) return shaft;
  return wheels.map((wheel) => wheel.name ?? wheel.id).join(' with ') || shaft;
}
