import { type DesignOptions, designWheel } from './design-wheel.ts';
import type { Job } from './job/job-schema.ts';
import { roundNumbers } from './job/round-numbers.ts';
import type { PartDesign } from './making/part-design.ts';
import { type DesignReport, reportDesign } from './making/report-design.ts';
import { tellDesign } from './making/tell-design.ts';
import type { WheelPlan } from './plan-wheel.ts';
import type { WheelForm } from './solid/wheel-form.ts';

export interface LastingOptions extends DesignOptions {
  /** Whether the part is designed to last; left out: where the job says how the wheel is to be made */
  readonly isLasting?: boolean | undefined;
}

/** The part as it is to be made: as planned, or designed to last. */
export interface LastingPlan {
  readonly form: WheelForm;
  readonly warnings: readonly string[];
  /** None where the part is the old wheel's copy */
  readonly design: PartDesign | undefined;
  readonly report: DesignReport | undefined;
}

/** Designs a planned part to last where that is asked for; else gives the plan back. Throws what `designWheel` does. */
export function planLasting(
  job: Job,
  planned: Pick<WheelPlan, 'wheel' | 'evidence' | 'plan'>,
  options: LastingOptions,
): LastingPlan {
  const { plan, wheel } = planned;
  if (!(options.isLasting ?? wheel.making !== undefined))
    return { form: plan.form, warnings: plan.warnings, design: undefined, report: undefined };
  const design = designWheel(job, planned, options);
  const report = roundNumbers(reportDesign(design));
  const isOn = (key: string): boolean => design.changes.some((one) => one.key === key && one.isOn);
  const outdated = [...(isOn('bore') ? plan.about.bore : []), ...(isOn('spur-pair') ? plan.about.helix : [])];
  return {
    form: design.form,
    warnings: [
      ...tellDesign(report).warnings,
      ...plan.warnings.filter((warning) => !outdated.includes(warning)),
    ],
    design,
    report,
  };
}
