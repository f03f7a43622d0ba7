import { collectEvidence, findWheels, isCovered } from './job/collect-evidence.ts';
import { type IdentityReport, reportIdentity } from './job/identity-report.ts';
import type { Job, Wheel } from './job/job-schema.ts';
import { type Identity, withoutAnswer } from './readings/conclude-identity.ts';
import { identifyWheel } from './readings/identify-wheel.ts';

/** What each wheel of a job is, how sure that is, and what to measure next; all wheels, or the one named. */
export function identify(job: Job, options: { readonly wheelId?: string } = {}): IdentityReport {
  return {
    wheels: findWheels(job, options.wheelId).map((wheel) =>
      reportIdentity(identifyOne(job, wheel), wheel.name),
    ),
  };
}

/** One wheel's identity; a kind that is not covered ends at once, in words. */
function identifyOne(job: Job, wheel: Wheel): Identity {
  if (isCovered(wheel)) return identifyWheel(collectEvidence(job, wheel));
  return {
    ...withoutAnswer(wheel.id),
    ending: 'stop-here',
    notes: [`a ${wheel.kind} can't be worked out yet: external, internal and rack can`],
  };
}
