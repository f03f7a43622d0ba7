import { Fail } from './fail.ts';
import { encodePart } from './formats/encode-part.ts';
import { type PartFormat, partFormats } from './formats/part-formats.ts';
import { identify } from './identify.ts';
import { collectEvidence, findWheels, isCovered } from './job/collect-evidence.ts';
import type { WheelReport } from './job/identity-report.ts';
import type { Job, Wheel } from './job/job-schema.ts';
import { fieldsOfSpec, specOfFields } from './job/spec-fields.ts';
import type { SpecFields } from './job/spec-schema.ts';
import { layTrialPlate } from './making/lay-trial-plate.ts';
import { type KnownForm, planPart } from './making/plan-part.ts';
import { listRivals } from './readings/choose-ending.ts';
import { buildSolid } from './solid/build-solid.ts';
import type { Mesh } from './solid/mesh.ts';
import type { Bore, WheelForm } from './solid/wheel-form.ts';

export interface MakeOptions {
  readonly wheelId: string;
  /** Keys of part formats; all where left out */
  readonly formats?: readonly string[];
  readonly process?: string;
  /** What `identify` said of this wheel in this job, where that is known already; worked out where left out */
  readonly answer?: WheelReport | undefined;
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
  readonly isTrial: boolean;
  readonly warnings: readonly string[];
  readonly spec: ReturnType<typeof fieldsOfSpec>;
  readonly files: readonly MadeFile[];
  /** Where rivals remain: thin gears to roll by hand, and how each is marked */
  readonly trialPlate?: { readonly marks: readonly { readonly mark: string; readonly what: string }[] };
}

/** A fiftieth of the finest printer's pixel: nothing that a printer makes can show it. */
const usualChordError = 0.002;

/**
 * The part file of a wheel: from the spec in the job where it has one, else from the leading answer. An answer below
 * `likely`, or with a suspect reading, makes a trial part; where two to four rivals remain, a trial plate too. Throws
 * Fail `not-identified` where there is no answer to make a part from.
 */
export function make(job: Job, options: MakeOptions): MadePart {
  const [wheel] = findWheels(job, options.wheelId);
  const at = (job.wheels ?? []).indexOf(wheel);
  if (!isCovered(wheel))
    throw noAnswer(`a ${wheel.kind} can't be made yet`, 'External wheels, internal wheels and racks can.');
  const formats = chooseFormats(options.formats);
  const evidence = collectEvidence(job, wheel);
  const given = wheel.spec?.moduleMm !== undefined && wheel.spec.teeth !== undefined ? wheel.spec : undefined;
  const answer = given ? undefined : (options.answer ?? identify(job, { wheelId: wheel.id }).wheels[0]);
  if (answer && answer.id !== wheel.id) throw new Error(`the answer is ${answer.id}'s, not ${wheel.id}'s`);
  const field = `wheels[${at}].spec`;
  const spec = specOfFields(given ?? leadingSpec(answer), evidence.kind, field);
  const isTrial = answer !== undefined && !isReliable(answer);
  const known = knownForm(wheel, field);
  const plan = planPart(evidence, spec, known, isTrial, options.process);
  const chordError = options.chordErrorMm ?? usualChordError;
  const name = `${fileName(wheel.id)}${isTrial ? '-trial' : ''}`;
  const mesh = buildSolid(plan.form, chordError);
  const metadata = describePart(job, plan.form, isTrial);
  const files = writeMesh(mesh, name, metadata, formats);
  const rivals = answer && isTrial ? listRivals(answer.candidates).slice(0, 4) : [];
  if (rivals.length < 2 || plan.form.spec.kind !== 'external') {
    return { wheelId: wheel.id, isTrial, warnings: plan.warnings, spec: fieldsOfSpec(plan.form.spec), files };
  }
  const plans = rivals.map((rival) =>
    planPart(evidence, specOfFields(rival.spec, evidence.kind, field), known, true, options.process),
  );
  const plate = layTrialPlate(
    plans.map((one) => one.form.spec),
    plan.form.bore,
    chordError,
  );
  return {
    wheelId: wheel.id,
    isTrial,
    warnings: plan.warnings,
    spec: fieldsOfSpec(plan.form.spec),
    files: [...files, ...writeMesh(plate.mesh, `${fileName(wheel.id)}-trial-plate`, metadata, formats)],
    trialPlate: {
      marks: plate.marks.map((mark, i) => ({
        mark,
        what: `${rivals[i].system} ${Number(rivals[i].size.toFixed(4))}, ${rivals[i].pressureAngleDeg}°, ${rivals[i].teeth} teeth`,
      })),
    },
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

function writeMesh(
  mesh: Mesh,
  name: string,
  metadata: Readonly<Record<string, string>>,
  formats: readonly PartFormat[],
): MadeFile[] {
  return formats.map((format) => ({
    name: `${name}.${format.extension}`,
    bytes: encodePart(format, mesh, name, metadata),
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

function knownForm(wheel: Wheel, field: string): KnownForm {
  const spec = wheel.spec;
  if (!spec) return {};
  return {
    faceWidth: spec.faceWidthMm,
    bore: spec.bore ? boreOf(spec.bore, `${field}.bore`) : undefined,
    hubs: spec.hubs?.flatMap((hub) =>
      hub.side && hub.diameterMm && hub.lengthMm
        ? [{ side: hub.side, diameter: hub.diameterMm, length: hub.lengthMm }]
        : [],
    ),
    chamfer: spec.chamferMm,
    rimDiameter: spec.rimDiameterMm,
  };
}

function boreOf(bore: NonNullable<SpecFields['bore']>, field: string): Bore | undefined {
  const { shape, diameterMm: diameter, flatMm: flat, acrossFlatsMm: acrossFlats } = bore;
  const missing = (key: string): Fail =>
    new Fail('bad-value', `${field}.${key}`, `a ${shape} bore needs ${key}`, `Add "${key}" to the bore.`);
  switch (shape) {
    case undefined:
      return undefined;
    case 'none':
      return { shape };
    case 'round':
      if (diameter === undefined) throw missing('diameterMm');
      return { shape, diameter };
    case 'd':
    case 'double-d':
      if (diameter === undefined) throw missing('diameterMm');
      if (flat === undefined) throw missing('flatMm');
      return { shape, diameter, flat };
    case 'hex':
    case 'square':
      if (acrossFlats === undefined) throw missing('acrossFlatsMm');
      return { shape, acrossFlats };
  }
}
