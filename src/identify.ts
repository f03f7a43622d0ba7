import { openJoint } from './drive/joint-identity.ts';
import { collectEvidence, findWheels, isCovered } from './job/collect-evidence.ts';
import { collectJoint } from './job/collect-joint.ts';
import { type IdentityReport, reportIdentity } from './job/identity-report.ts';
import type { Job, Wheel } from './job/job-schema.ts';
import { type Identity, withoutAnswer } from './readings/conclude-identity.ts';
import { identifyWheel } from './readings/identify-wheel.ts';

/**
 * What each wheel of a job is, how sure that is, and what to measure next; all wheels, or the one named. Wheels that
 * run against each other speak for each other; a wheel that none runs against is worked out alone.
 */
export function identify(job: Job, options: { readonly wheelId?: string } = {}): IdentityReport {
  const drive = collectJoint(job);
  const identifyJoined = openJoint(drive);
  const joined = new Set(drive.joins.flatMap((join) => join.wheels));
  const lost = new Set(drive.wheels.filter((wheel) => wheel.isLost).map((wheel) => wheel.evidence.id));
  return {
    wheels: findWheels(job, options.wheelId).map((wheel) => {
      const isJoint = joined.has(wheel.id) || lost.has(wheel.id);
      return reportIdentity(isJoint ? identifyJoined(wheel.id) : identifyOne(job, wheel), wheel.name);
    }),
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
