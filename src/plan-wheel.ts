import { Fail } from './fail.ts';
import { identify } from './identify.ts';
import { collectEvidence, findWheels, isCovered } from './job/collect-evidence.ts';
import type { WheelReport } from './job/identity-report.ts';
import type { Job, Wheel } from './job/job-schema.ts';
import { knownForm } from './job/known-form.ts';
import { specOfFields } from './job/spec-fields.ts';
import type { SpecFields } from './job/spec-schema.ts';
import { type PartPlan, planPart } from './making/plan-part.ts';
import type { WheelEvidence } from './readings/wheel-evidence.ts';

export interface PlanOptions {
  readonly wheelId: string;
  readonly process?: string | undefined;
  /** What `identify` said of this wheel in this job, where that is known already; worked out where left out */
  readonly answer?: WheelReport | undefined;
}

/** The part that replaces a wheel, and what it was planned from. */
export interface WheelPlan {
  readonly wheel: Wheel;
  readonly evidence: WheelEvidence;
  /** None where the job's spec says what the wheel is */
  readonly answer: WheelReport | undefined;
  readonly isTrial: boolean;
  readonly plan: PartPlan;
  /** The same for another candidate of this wheel, as a trial part */
  readonly planRival: (spec: SpecFields) => PartPlan;
}

/**
 * Plans the part of a wheel: from the spec in the job where it has one, else from the leading answer. An answer below
 * `likely`, or with a suspect reading, gives a trial part. Throws Fail `not-identified` where there is no answer to
 * plan from.
 */
export function planWheel(job: Job, options: PlanOptions): WheelPlan {
  const [wheel] = findWheels(job, options.wheelId);
  const at = (job.wheels ?? []).indexOf(wheel);
  if (!isCovered(wheel))
    throw noAnswer(`a ${wheel.kind} can't be made yet`, 'External wheels, internal wheels and racks can.');
  const evidence = collectEvidence(job, wheel);
  const given = wheel.spec?.moduleMm !== undefined && wheel.spec.teeth !== undefined ? wheel.spec : undefined;
  const answer = given ? undefined : (options.answer ?? identify(job, { wheelId: wheel.id }).wheels[0]);
  if (answer && answer.id !== wheel.id) throw new Error(`the answer is ${answer.id}'s, not ${wheel.id}'s`);
  const field = `wheels[${at}].spec`;
  const spec = specOfFields(given ?? leadingSpec(answer), evidence.kind, field);
  const isTrial = answer !== undefined && !isReliable(answer);
  const known = knownForm(wheel.spec, field);
  const process = options.process ?? wheel.making?.process;
  return {
    wheel,
    evidence,
    answer,
    isTrial,
    plan: planPart(evidence, spec, known, isTrial, process),
    planRival: (rival) => planPart(evidence, specOfFields(rival, evidence.kind, field), known, true, process),
  };
}

function isReliable(answer: WheelReport): boolean {
  return (answer.verdict === 'certain' || answer.verdict === 'likely') && answer.suspect.length === 0;
}

function leadingSpec(answer: WheelReport | undefined): SpecFields {
  const lead = answer?.candidates[0];
  if (lead) return lead.spec;
  throw noAnswer(
    'there is no answer to make a part from',
    'Count the teeth and measure across the tips first.',
  );
}

function noAnswer(message: string, remedy: string): Fail {
  return new Fail('not-identified', 'wheel', message, remedy);
}
