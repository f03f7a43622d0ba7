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
 * wheel's teeth come first, with its lower face at 0. Throws as `planWheel` does, for any of the wheels.
 */
export function planWholePart(job: Job, options: WholePartOptions): WholePart {
  const { isAlone, ...plain } = options;
  const wheel = job.wheels?.find(({ id }) => id === options.wheelId);
  const mates = (job.wheels ?? []).filter(
    (one) => one.id !== wheel?.id && one.part !== undefined && one.part === wheel?.part,
  );
  const isFirst = wheel !== undefined && isCovered(wheel) && kindOf(wheel) === 'external';
  const others =
    isAlone || !isFirst ? [] : mates.filter((one) => isCovered(one) && kindOf(one) === 'external');
  const left = mates.filter((one) => !others.includes(one)).map((one) => nameOf(one));
  const notes = left.map((name) => `${name} is one piece with this wheel, and not in this file.`);
  const shared = others.length > 0 && wheel ? shareBore(job, wheel, others) : job;
  const first = planWheel(shared, plain);
  if (others.length === 0) {
    return {
      ...first,
      plan: { ...first.plan, warnings: [...first.plan.warnings, ...notes] },
      wheelIds: [first.wheel.id],
      name: first.wheel.id,
    };
  }
  const plans = others.map((one) => planWheel(shared, { wheelId: one.id, process: options.process }));
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
      warnings: [
        `One piece: ${[first, ...plans].map((one) => nameOf(one.wheel)).join(' and ')} are in this file together.`,
        ...first.plan.warnings,
        ...plans.flatMap(({ wheel: one, plan }) =>
          plan.warnings.filter((warning) => !own.has(warning)).map((warning) => `${nameOf(one)}: ${warning}`),
        ),
        ...joined.warnings,
        ...notes,
      ],
    },
    wheelIds: [first.wheel.id, ...plans.map((one) => one.wheel.id)],
    name: first.wheel.part ?? first.wheel.id,
  };
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
