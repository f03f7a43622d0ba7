import { Fail } from './fail.ts';
import type { Job } from './job/job-schema.ts';
import { planWheel, type WheelPlan } from './plan-wheel.ts';

/** The plan of a wheel that is not the one asked about; none where it isn't known: that is no failure of the asked one's. */
export function tryPlanWheel(job: Job, wheelId: string): WheelPlan | undefined {
  try {
    return planWheel(job, { wheelId });
  } catch (error) {
    if (error instanceof Fail) return undefined;
    throw error;
  }
}
