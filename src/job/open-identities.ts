import { openJoint } from '../drive/joint-identity.ts';
import { type Identity, withoutAnswer } from '../readings/conclude-identity.ts';
import { identifyWheel } from '../readings/identify-wheel.ts';
import { collectEvidence, isCovered } from './collect-evidence.ts';
import { collectJoint } from './collect-joint.ts';
import type { Job, Wheel } from './job-schema.ts';

/** An identity as a job gives it. */
export interface JobIdentity extends Identity {
  /** The wheels that were weighed together with it, where any were */
  readonly jointWith?: readonly string[];
}

/**
 * Identifies wheels of one job: those that run against each other speak for each other, one that none runs against
 * is worked out alone. What the wheels say to each other is worked out once for all that are asked about.
 */
export function openIdentities(job: Job): (wheel: Wheel) => JobIdentity {
  let joint: { identify: (id: string) => JobIdentity; ids: ReadonlySet<string> } | undefined;
  return (wheel) => {
    if (!isCovered(wheel)) {
      return {
        ...withoutAnswer(wheel.id),
        ending: 'stop-here',
        notes: [`a ${wheel.kind} can't be worked out yet: external, internal and rack can`],
      };
    }
    joint ??= openJobJoint(job);
    return joint.ids.has(wheel.id) ? joint.identify(wheel.id) : identifyWheel(collectEvidence(job, wheel));
  };
}

function openJobJoint(job: Job): { identify: (id: string) => JobIdentity; ids: ReadonlySet<string> } {
  const drive = collectJoint(job);
  const lost = drive.wheels.flatMap(({ evidence, isLost }) => (isLost ? [evidence.id] : []));
  return {
    identify: openJoint(drive),
    ids: new Set([...drive.joins.flatMap(({ wheels }) => wheels), ...lost]),
  };
}
