import type { Candidate } from '../readings/build-candidates.ts';
import type { JobIdentity } from './open-identities.ts';
import { roundNumbers } from './round-numbers.ts';
import { fieldsOfSpec } from './spec-fields.ts';

/** What `identify --json` prints: every wheel asked for. */
export interface IdentityReport {
  readonly wheels: readonly WheelReport[];
}

export type WheelReport = ReturnType<typeof reportIdentity>;
export type CandidateReport = WheelReport['candidates'][number];

/**
 * An identity with its specs as the job file writes them: mm and degrees, every number to nine decimals, of gears in mesh to
 * seven.
 * Engines differ in the last bits of exp and log (IEEE 754 doesn't fix them), so more digits would differ between the
 * page and the command line, and mean nothing.
 */
export function reportIdentity(identity: JobIdentity, name: string | undefined) {
  const report = {
    id: identity.id,
    ...(name === undefined ? {} : { name }),
    pitch: identity.pitch,
    candidates: identity.candidates.map(reportCandidate),
    restProbability: identity.restProbability,
    verdict: identity.verdict,
    angleVerdict: identity.angleVerdict,
    sameTeeth: identity.sameTeeth,
    suspect: identity.suspect,
    next: identity.next,
    ...(identity.ending === undefined ? {} : { ending: identity.ending }),
    ...(identity.countInferred ? { countInferred: true } : {}),
    ...(identity.jointWith === undefined ? {} : { jointWith: identity.jointWith }),
    notes: identity.notes,
  };
  return roundNumbers(report, identity.jointWith === undefined ? 9 : jointDecimals);
}

function reportCandidate(candidate: Candidate) {
  const { spec, uncertainty, rackName, ...rest } = candidate;
  return { ...rest, rack: rackName, spec: fieldsOfSpec(spec), specU: uncertainty };
}

/** What gears say to each other passes through many sums: engines were seen to differ in the ninth decimal. */
const jointDecimals = 7;
