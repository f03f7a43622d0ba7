import { Fail } from './fail.ts';
import { encodePart, type PartShape } from './formats/encode-part.ts';
import { type PartFormat, partFormats } from './formats/part-formats.ts';
import type { Job } from './job/job-schema.ts';
import { fieldsOfSpec } from './job/spec-fields.ts';
import { compensatePart, type DrawingChange } from './making/compensate-part.ts';
import type { Compensation, CompensationUncertainty } from './making/compensation.ts';
import { layTrialPlate } from './making/lay-trial-plate.ts';
import { noAllowance } from './making/plan-part.ts';
import type { DesignReport } from './making/report-design.ts';
import { namePartFile } from './name-part-file.ts';
import { type LastingOptions, type LastingPlan, planLasting } from './plan-lasting.ts';
import { planWholePart, type WholePartOptions } from './plan-whole-part.ts';
import { listRivals } from './readings/choose-ending.ts';
import { buildSolid } from './solid/build-solid.ts';
import { listSections, type WheelForm } from './solid/wheel-form.ts';

export interface MakeOptions extends WholePartOptions, LastingOptions {
  /** Keys of part formats; all where left out */
  readonly formats?: readonly string[];
  /** The part designed to last, where that is done already; worked out where left out */
  readonly lasting?: LastingPlan | undefined;
  /** Greatest stray of a chord from the exact curve, mm */
  readonly chordErrorMm?: number;
  /** What the machine does, to be taken back in the drawing; nothing is where left out */
  readonly compensation?: MakeCompensation | undefined;
}

export interface MakeCompensation {
  readonly figures: Compensation;
  readonly uncertainty?: CompensationUncertainty | undefined;
  /** Where the figures come from, as a sentence for the maker */
  readonly origin: string;
}

export interface MadeFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly format: PartFormat;
}

export interface MadePart {
  readonly wheelId: string;
  /** All wheels that the part carries, the asked one first */
  readonly wheelIds: readonly string[];
  readonly isTrial: boolean;
  readonly warnings: readonly string[];
  readonly spec: ReturnType<typeof fieldsOfSpec>;
  /** What was changed so that it lasts, and what proves it; none where it is the old wheel's copy */
  readonly design?: DesignReport;
  readonly files: readonly MadeFile[];
  /** What was changed in the drawing for the machine; `spec` is what the part is meant to be */
  readonly changes?: readonly DrawingChange[];
  /** What was taken back, as the job's `made` wants it */
  readonly compensation?: Compensation;
  readonly uncertainty?: CompensationUncertainty;
  /** Where rivals remain: thin gears to roll by hand, and how each is marked */
  readonly trialPlate?: { readonly marks: readonly { readonly mark: string; readonly what: string }[] };
}

/**
 * A thirtieth of the finest printer's pixel: nothing that a printer makes can show it. Below module 1 in proportion, so
 * that triangles hold what exact surfaces hold, to 0.05 %, on a pinion of 8 teeth of any size.
 */
function findUsualChordError(form: WheelForm): number {
  return 0.0015 * Math.min(1, ...listSections(form).map(({ spec }) => spec.module));
}

/**
 * The part file of a wheel, or of the compound gear that it is one wheel of: from the spec in the job where it has
 * one, else from the leading answer. An answer below `likely`, or with a suspect reading, makes a trial part; where two
 * to four rivals remain, a trial plate too. Throws Fail `not-identified` where there is no answer to make a part from.
 */
export function make(job: Job, options: MakeOptions): MadePart {
  const formats = chooseFormats(options.formats);
  const planned = planWholePart(job, options);
  const { wheel, answer, isTrial, planRival, wheelIds, name: called } = planned;
  const plan = options.lasting ?? planLasting(job, planned, options);
  const chordError = options.chordErrorMm ?? findUsualChordError(plan.form);
  const name = namePartFile(called, isTrial);
  const drawn = options.compensation ? compensatePart(plan.form, options.compensation.figures) : undefined;
  const form = drawn?.form ?? plan.form;
  const shape = { mesh: buildSolid(form, chordError), bodies: [{ form, x: 0 }] };
  const metadata = describePart(job, plan.form, isTrial, options.compensation);
  const warnings =
    options.compensation && drawn
      ? plan.warnings.flatMap((one) =>
          one === noAllowance ? [options.compensation?.origin ?? '', ...drawn.advice] : [one],
        )
      : plan.warnings;
  const part: MadePart = {
    wheelId: wheel.id,
    wheelIds,
    isTrial,
    warnings,
    spec: fieldsOfSpec(plan.form.spec),
    ...(plan.report === undefined ? {} : { design: plan.report }),
    files: writeShape(shape, name, metadata, formats),
    ...(drawn ? describeChanges(drawn.changes, options.compensation) : {}),
  };
  const rivals = answer && isTrial ? listRivals(answer.candidates).slice(0, 4) : [];
  if (rivals.length < 2 || plan.form.spec.kind !== 'external') return part;
  const plate = layTrialPlate(
    rivals.map((rival) => {
      const form = { ...planRival(rival.spec).form, hubs: [], chamfer: 0 };
      return options.compensation ? compensatePart(form, options.compensation.figures).form.spec : form.spec;
    }),
    form.bore,
    chordError,
  );
  return {
    ...part,
    files: [...part.files, ...writeShape(plate, `${namePartFile(wheel.id, true)}-plate`, metadata, formats)],
    trialPlate: {
      marks: plate.marks.map((mark, i) => ({
        mark,
        what: `${rivals[i].system} ${Number(rivals[i].size.toFixed(4))}, ${rivals[i].pressureAngleDeg}°, ${rivals[i].teeth} teeth`,
      })),
    },
  };
}

function chooseFormats(keys: readonly string[] | undefined): readonly PartFormat[] {
  if (!keys) return partFormats;
  return keys.map((key) => {
    const format = partFormats.find((one) => one.key === key);
    if (format) return format;
    throw new Fail(
      'bad-usage',
      'as',
      `"${key}" is not a format that parts are written in`,
      `Use: ${partFormats.map((one) => one.key).join(', ')}.`,
      { key },
    );
  });
}

function writeShape(
  shape: PartShape,
  name: string,
  metadata: Readonly<Record<string, string>>,
  formats: readonly PartFormat[],
): MadeFile[] {
  return formats.map((format) => ({
    name: `${name}.${format.extension}`,
    bytes: encodePart(format, shape, name, metadata),
    format,
  }));
}

function describeChanges(
  changes: readonly DrawingChange[],
  compensation: MakeCompensation | undefined,
): Pick<MadePart, 'changes' | 'compensation' | 'uncertainty'> {
  if (!compensation) return {};
  const { figures, uncertainty } = compensation;
  return { changes, compensation: figures, ...(uncertainty === undefined ? {} : { uncertainty }) };
}

function describePart(
  job: Job,
  form: WheelForm,
  isTrial: boolean,
  compensation: MakeCompensation | undefined,
): Record<string, string> {
  const allowance = compensation ? compensation.origin : 'No printer allowance.';
  return {
    Title: job.title ?? 'gear',
    Application: 'Sparetooth',
    Description: isTrial
      ? `Trial part: not sure enough to rely on. Unit mm. ${allowance}`
      : `Unit mm. ${allowance}`,
    spec: JSON.stringify({ ...fieldsOfSpec(form.spec), kind: form.spec.kind, faceWidthMm: form.faceWidth }),
  };
}
