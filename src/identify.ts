import { findWheels } from './job/collect-evidence.ts';
import { type IdentityReport, reportIdentity } from './job/identity-report.ts';
import type { Job } from './job/job-schema.ts';
import { openIdentities } from './job/open-identities.ts';

/**
 * What each wheel of a job is, how sure that is, and what to measure next; all wheels, or the one named. Wheels that
 * run against each other speak for each other.
 */
export function identify(job: Job, options: { readonly wheelId?: string } = {}): IdentityReport {
  const identifyOne = openIdentities(job);
  return {
    wheels: findWheels(job, options.wheelId).map((wheel) => reportIdentity(identifyOne(wheel), wheel.name)),
  };
}
