import { Fail } from './fail.ts';
import { encodePart, type PartShape } from './formats/encode-part.ts';
import { type PartFormat, partFormats } from './formats/part-formats.ts';
import type { Job } from './job/job-schema.ts';
import { fieldsOfSpec } from './job/spec-fields.ts';
import { layTrialPlate } from './making/lay-trial-plate.ts';
import { planWholePart, type WholePartOptions } from './plan-whole-part.ts';
import { listRivals } from './readings/choose-ending.ts';
import { buildSolid } from './solid/build-solid.ts';
import { listSections, type WheelForm } from './solid/wheel-form.ts';

export interface MakeOptions extends WholePartOptions {
  /** Keys of part formats; all where left out */
  readonly formats?: readonly string[];
  /** Greatest stray of a chord from the exact curve, mm */
  readonly chordErrorMm?: number;
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
  readonly files: readonly MadeFile[];
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
  const { wheel, answer, isTrial, plan, planRival, wheelIds, name: called } = planWholePart(job, options);
  const chordError = options.chordErrorMm ?? findUsualChordError(plan.form);
  const name = `${fileName(called)}${isTrial ? '-trial' : ''}`;
  const shape = { mesh: buildSolid(plan.form, chordError), bodies: [{ form: plan.form, x: 0 }] };
  const metadata = describePart(job, plan.form, isTrial);
  const files = writeShape(shape, name, metadata, formats);
  const rivals = answer && isTrial ? listRivals(answer.candidates).slice(0, 4) : [];
  if (rivals.length < 2 || plan.form.spec.kind !== 'external') {
    return {
      wheelId: wheel.id,
      wheelIds,
      isTrial,
      warnings: plan.warnings,
      spec: fieldsOfSpec(plan.form.spec),
      files,
    };
  }
  const plate = layTrialPlate(
    rivals.map((rival) => planRival(rival.spec).form.spec),
    plan.form.bore,
    chordError,
  );
  return {
    wheelId: wheel.id,
    wheelIds,
    isTrial,
    warnings: plan.warnings,
    spec: fieldsOfSpec(plan.form.spec),
    files: [...files, ...writeShape(plate, `${fileName(wheel.id)}-trial-plate`, metadata, formats)],
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

/** Letters, digits, dots and dashes; what else an id holds becomes a dash. */
function fileName(id: string): string {
  return id.replace(/[^A-Za-z0-9.-]+/g, '-').replace(/^[.-]+/, '') || 'wheel';
}

function describePart(job: Job, form: WheelForm, isTrial: boolean): Record<string, string> {
  return {
    Title: job.title ?? 'gear',
    Application: 'Sparetooth',
    Description: isTrial
      ? 'Trial part: not sure enough to rely on. Unit mm. No printer allowance.'
      : 'Unit mm. No printer allowance.',
    spec: JSON.stringify({ ...fieldsOfSpec(form.spec), kind: form.spec.kind, faceWidthMm: form.faceWidth }),
  };
}
