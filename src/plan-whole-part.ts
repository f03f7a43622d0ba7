import { Fail } from './fail.ts';
import { isCovered, kindOf } from './job/collect-evidence.ts';
import type { Job, Wheel } from './job/job-schema.ts';
import { joinParts, type PartWheel } from './making/join-parts.ts';
import { type PlanOptions, planWheel, type WheelPlan } from './plan-wheel.ts';

export interface WholePartOptions extends PlanOptions {
  /** This wheel alone, though others stand on the same part */
  readonly isAlone?: boolean | undefined;
}

/** The part that a wheel belongs to. */
export interface WholePart extends WheelPlan {
  /** Ids of the wheels that are on it, the asked one first */
  readonly wheelIds: readonly string[];
  /** What the part is called: its name in the job where it has several wheels, else the wheel's id */
  readonly name: string;
}

/**
 * Plans the whole piece that a wheel belongs to: all external wheels with its `part` in the job, as one. The asked
 * wheel's teeth come first, with its lower face at 0. A wheel that can't be made, or of which no teeth are known, is
 * left out, and the first warning says so. Throws as `planWheel` does.
 */
export function planWholePart(job: Job, options: WholePartOptions): WholePart {
  const { isAlone, ...plain } = options;
  const wheel = job.wheels?.find(({ id }) => id === options.wheelId);
  const mates = (job.wheels ?? []).filter(
    (one) => one.id !== wheel?.id && one.part !== undefined && one.part === wheel?.part,
  );
  const candidates = wheel && !isAlone && isExternal(wheel) ? mates.filter(isExternal) : [];
  const shared = candidates.length > 0 && wheel ? shareBore(job, wheel, candidates) : job;
  const first = planWheel(shared, plain);
  const plans = candidates.flatMap((one) => tryPlan(shared, { wheelId: one.id, process: options.process }));
  const left = mates.filter((one) => !plans.some((plan) => plan.wheel.id === one.id));
  const notes = left.map((one) => `${nameOf(one)} is one piece with this wheel, and not in this file.`);
  if (plans.length === 0) {
    return {
      ...first,
      plan: { ...first.plan, warnings: [...notes, ...first.plan.warnings] },
      wheelIds: [first.wheel.id],
      name: first.wheel.id,
    };
  }
  const joined = joinParts(
    asPartWheel(job, first),
    plans.map((one) => asPartWheel(job, one)),
  );
  const isTrial = first.isTrial || plans.some((one) => one.isTrial);
  const own = new Set(first.plan.warnings);
  return {
    ...first,
    isTrial,
    plan: {
      form: joined.form,
      isTrial,
      about: first.plan.about,
      warnings: [
        `One piece: ${[first, ...plans].map((one) => nameOf(one.wheel)).join(' and ')} are in this file together.`,
        ...notes,
        ...first.plan.warnings,
        ...plans.flatMap(({ wheel: one, plan }) =>
          plan.warnings.filter((warning) => !own.has(warning)).map((warning) => `${nameOf(one)}: ${warning}`),
        ),
        ...joined.warnings,
      ],
    },
    wheelIds: [first.wheel.id, ...plans.map((one) => one.wheel.id)],
    name: first.wheel.part ?? first.wheel.id,
  };
}

function isExternal(wheel: Wheel): boolean {
  return isCovered(wheel) && kindOf(wheel) === 'external';
}

/** Nothing where too little is known of a wheel to make it; without a count there is never an answer. */
function tryPlan(job: Job, options: PlanOptions): WheelPlan[] {
  const wheel = job.wheels?.find(({ id }) => id === options.wheelId);
  if (wheel?.spec?.teeth === undefined && !wheel?.readings?.some(({ of }) => of === 'teeth')) return [];
  try {
    return [planWheel(job, options)];
  } catch (error) {
    if (error instanceof Fail && error.code === 'not-identified') return [];
    throw error;
  }
}

function nameOf(wheel: Wheel): string {
  return wheel.name ?? wheel.id;
}

/** One hole runs through the whole piece: what was read or is known of it on any wheel is the first one's. */
function shareBore(job: Job, first: Wheel, others: readonly Wheel[]): Job {
  const bore = [first, ...others].find(({ spec }) => spec?.bore?.shape !== undefined)?.spec?.bore;
  const readings = others.flatMap((one) =>
    (one.readings ?? []).filter(({ of }) => of === 'bore' || of === 'shaft'),
  );
  return {
    ...job,
    wheels: (job.wheels ?? []).map((one): Wheel => {
      if (one.id === first.id) {
        return {
          ...one,
          ...(readings.length > 0 ? { readings: [...(one.readings ?? []), ...readings] } : {}),
          ...(bore ? { spec: { ...one.spec, bore } } : {}),
        };
      }
      return others.some(({ id }) => id === one.id)
        ? { ...one, spec: { ...one.spec, bore: { shape: 'none' } } }
        : one;
    }),
  };
}

function asPartWheel(job: Job, { wheel, evidence, plan }: WheelPlan): PartWheel {
  const at = (job.wheels ?? []).findIndex(({ id }) => id === wheel.id);
  const read = evidence.readings.find(({ of }) => of === 'face-offset');
  const mm = read && 'mm' in read ? read.mm : undefined;
  const takings = mm === undefined ? [] : typeof mm === 'number' ? [mm] : mm;
  const mean = takings.reduce((sum, value) => sum + value, 0) / takings.length;
  return {
    name: nameOf(wheel),
    form: plan.form,
    height: wheel.spec?.offsetMm ?? (takings.length > 0 ? mean : undefined),
    hasGivenHubs: wheel.spec?.hubs !== undefined,
    place: `wheels[${at}].spec`,
  };
}
