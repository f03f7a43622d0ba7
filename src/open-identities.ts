import { openJoint } from './drive/joint-identity.ts';
import { collectEvidence, isCovered } from './job/collect-evidence.ts';
import { collectJoint } from './job/collect-joint.ts';
import type { Job, Wheel } from './job/job-schema.ts';
import { type Identity, withoutAnswer } from './readings/conclude-identity.ts';
import { identifyWheel } from './readings/identify-wheel.ts';

/**
 * What each wheel of a job is, worked out when it is first asked for and remembered. Wheels that run against each other
 * speak for each other; a wheel that none runs against is worked out alone; a kind that is not covered ends at once, in
 * words.
 */
export function openIdentities(job: Job): (wheel: Wheel) => Identity {
  const drive = collectJoint(job);
  const identifyJoined = openJoint(drive);
  const joined = new Set(drive.joins.flatMap((join) => join.wheels));
  const lost = new Set(drive.wheels.filter((wheel) => wheel.isLost).map((wheel) => wheel.evidence.id));
  const known = new Map<string, Identity>();
  const find = (wheel: Wheel): Identity => {
    if (joined.has(wheel.id) || lost.has(wheel.id)) return identifyJoined(wheel.id);
    if (isCovered(wheel)) return identifyWheel(collectEvidence(job, wheel));
    return {
      ...withoutAnswer(wheel.id),
      ending: 'stop-here',
      notes: [`a ${wheel.kind} can't be worked out yet: external, internal and rack can`],
    };
  };
  return (wheel) => {
    const found = known.get(wheel.id) ?? find(wheel);
    known.set(wheel.id, found);
    return found;
  };
}
