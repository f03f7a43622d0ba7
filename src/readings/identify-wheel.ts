import { concludeIdentity, type Identity, withoutAnswer } from './conclude-identity.ts';
import { buildSpace } from './hypothesis-space.ts';
import { weighWheel } from './weigh-wheel.ts';
import type { WheelEvidence } from './wheel-evidence.ts';

/**
 * Identifies a wheel from its readings: every size, angle, rack and count weighed by every reading with its
 * uncertainty, one slip among the readings allowed.
 *
 * Conditional on what is discrete, readings are linear in the unknowns (shift, tip loss, thinning, tip land, size
 * scale, helix, the caliper's zero), so those are integrated in closed form; slips are rank-one changes
 * (evidence/weigher). Probabilities are meant: of all answers given at 90 %, nine in ten are right, on wheels drawn
 * from the priors in gear-library.
 *
 * Without a tooth count nothing is weighed: the answer is undecided and the next reading is the count.
 */
export function identifyWheel(wheel: WheelEvidence): Identity {
  const space = buildSpace(wheel);
  if (space.counts.length === 0) {
    const why = 'every other reading is understood through the tooth count';
    return { ...withoutAnswer(wheel.id), next: [{ of: 'teeth', gainBits: 0, why }] };
  }
  return concludeIdentity(weighWheel(wheel, space));
}
