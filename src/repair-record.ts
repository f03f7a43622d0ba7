import { type Material, materials } from '../gear-library/materials.ts';
import { processes, usualProcess } from '../gear-library/processes.ts';
import { checkStrength } from './check-strength.ts';
import { readWish } from './design-wheel.ts';
import { Fail } from './fail.ts';
import type { Job } from './job/job-schema.ts';
import { roundNumbers } from './job/round-numbers.ts';
import { fieldsOfSpec } from './job/spec-fields.ts';
import { findLookAgain } from './making/find-look-again.ts';
import type { PartChange } from './making/part-design.ts';
import { reportDesign } from './making/report-design.ts';
import { type LastingOptions, planLasting } from './plan-lasting.ts';
import { planWheel, type WheelPlan } from './plan-wheel.ts';
import type { StrengthReport } from './strength/strength-report.ts';
import { namePitch } from './words/name-pitch.ts';
import { nameReading } from './words/name-reading.ts';

export interface RecordOptions extends Omit<LastingOptions, 'isLasting'> {
  readonly wheelId: string;
  /** When the part was put in, as 2026-11-25; left out: the day to look again is told in months alone */
  readonly date?: string | undefined;
}

/** What was found, made and proven, and when to look again: one page, as plain data. */
export interface RepairRecord {
  readonly title: string;
  readonly wheel: { readonly id: string; readonly name: string };
  readonly date: string | null;
  readonly failed: {
    readonly seen: readonly string[];
    readonly material: string | null;
    /** The likeliest first; those of a chance of at least 0.15, and always the first */
    readonly causes: readonly Pick<
      StrengthReport['broke'][number],
      'cause' | 'name' | 'likelihood' | 'probability' | 'test'
    >[];
  };
  readonly readings: readonly { readonly what: string; readonly read: string }[];
  readonly identity: {
    readonly from: 'spec' | 'readings';
    readonly what: string;
    readonly verdict: 'given' | 'certain' | 'likely' | 'undecided' | 'nothing-fits';
    readonly probability: number | null;
  };
  readonly made: {
    readonly process: string;
    readonly material: string;
    readonly isTrial: boolean;
    readonly spec: ReturnType<typeof fieldsOfSpec>;
    readonly faceWidthMm: number;
    readonly changes: readonly PartChange[];
  };
  readonly check: {
    /** By rolling the outlines, before anything was made */
    readonly rolled: ReturnType<typeof reportDesign>['rolled'];
    readonly strength: ReturnType<typeof reportDesign>['strength']['after'];
  };
  readonly lookAgain: {
    readonly on: string | null;
    readonly months: number;
    readonly isStopgap: boolean;
    readonly reason: string;
  };
  readonly cautions: readonly string[];
}

/**
 * The record of a repair, as the job has it: the part designed to last for the process and material given, else for
 * the job's own. Nothing in it says that the part was made or measured: that is for the hand that makes it. Throws Fail
 * `bad-value` for a date that is none; else what `make` throws.
 */
export function repairRecord(job: Job, asked: RecordOptions): RepairRecord {
  const date = checkDate(asked.date);
  const planned = planWheel(job, asked);
  const { wheel, answer, isTrial } = planned;
  const options = { ...asked, process: asked.process ?? wheel.making?.process ?? chooseProcess(planned) };
  const wish = readWish(wheel, options);
  const { form, design } = planLasting(job, planned, { ...options, isLasting: true });
  if (!design) throw new Error('no design was made');
  const report = reportDesign(design);
  const strength = checkStrength(job, wheel.id, {
    process: wish.process.key,
    material: design.material.key,
  });
  const lead = answer?.candidates[0];
  const { spec } = form;
  const { months, isStopgap, reason } = findLookAgain(design.material.key);
  return roundNumbers({
    title: job.title ?? 'Repair',
    wheel: { id: wheel.id, name: wheel.name ?? wheel.id },
    date: date ?? null,
    failed: {
      seen: (wheel.damage ?? []).flatMap(({ kind }) => kind ?? []),
      material: nameMaterial(wheel.material),
      causes: strength.broke
        .filter(({ probability }, i) => i === 0 || probability >= 0.15)
        .map(({ cause, name, likelihood, probability, test }) => ({
          cause,
          name,
          likelihood,
          probability,
          test,
        })),
    },
    readings: (wheel.readings ?? []).flatMap((reading) => {
      const read = tellRead(reading);
      return read === undefined || reading.of === undefined
        ? []
        : [{ what: nameReading({ ...reading, of: reading.of }), read }];
    }),
    identity: {
      from: lead ? 'readings' : 'spec',
      what: lead
        ? `${lead.teeth} teeth, ${namePitch(lead)}, ${lead.pressureAngleDeg} degrees`
        : `${planned.plan.form.spec.teeth} teeth, ${namePitch({ system: 'module', size: planned.plan.form.spec.module })}`,
      verdict: answer?.verdict ?? 'given',
      probability: lead?.probability ?? null,
    },
    made: {
      process: report.process.name,
      material: report.material.name,
      isTrial,
      spec: fieldsOfSpec(spec),
      faceWidthMm: form.faceWidth,
      changes: report.changes,
    },
    check: { rolled: report.rolled, strength: report.strength.after },
    lookAgain: {
      on: date === undefined ? null : addMonths(date, months),
      months,
      isStopgap,
      reason,
    },
    cautions: report.cautions,
  });
}

/** Where nobody said how it is made: the usual way, or the first one that makes teeth so fine. */
function chooseProcess({ plan }: Pick<WheelPlan, 'plan'>): string {
  const { module } = plan.form.spec;
  const usual = processes.find(({ key }) => key === usualProcess);
  if (usual && usual.leastModuleMm <= module) return usual.key;
  return processes.find(({ leastModuleMm }) => leastModuleMm <= module)?.key ?? usualProcess;
}

function checkDate(date: string | undefined): string | undefined {
  if (date === undefined) return undefined;
  const time = /^\d{4}-\d{2}-\d{2}$/.test(date) ? Date.parse(`${date}T00:00:00Z`) : Number.NaN;
  // A day that a month has not is moved on to the next month, or refused, by engine.
  if (Number.isFinite(time) && new Date(time).toISOString().startsWith(date)) return date;
  throw new Fail('bad-value', 'date', `"${date}" is no date`, 'Write it as 2026-11-25.', { date });
}

/** The same day so many months on, the month's last where it has no such day. */
function addMonths(date: string, months: number): string {
  const [year, month, day] = date.split('-').map(Number);
  const last = new Date(Date.UTC(year, month + months, 0)).getUTCDate();
  return new Date(Date.UTC(year, month - 1 + months, Math.min(day, last))).toISOString().slice(0, 10);
}

function nameMaterial(text: string | undefined): string | null {
  const found: Material | undefined = materials.find(({ key }) => key === text);
  return found?.name ?? text ?? null;
}

type JobReading = NonNullable<NonNullable<Job['wheels']>[number]['readings']>[number];

/** What was read, in words; undefined for one that says nothing yet. */
function tellRead(reading: JobReading): string | undefined {
  // Readings of a kind share fields, so each is asked for by its name.
  const { mm, count, left, pitches, overDeg, deg, felt, goesMm, stopsMm, overPostsMm, betweenPostsMm } =
    reading as ReadFields;
  if (mm !== undefined) return `${(typeof mm === 'number' ? [mm] : mm).join(', ')} mm`;
  if (count !== undefined) return String(count);
  if (left !== undefined) return `${left} whole, the rest gone`;
  if (pitches !== undefined && overDeg !== undefined) return `${pitches} pitches over ${overDeg} degrees`;
  if (deg !== undefined) return `${deg} degrees`;
  if (felt !== undefined) return felt;
  if (goesMm !== undefined) return `${goesMm} mm goes${stopsMm === undefined ? '' : `, ${stopsMm} mm stops`}`;
  if (overPostsMm !== undefined) return `${overPostsMm} mm over the posts`;
  if (betweenPostsMm !== undefined) return `${betweenPostsMm} mm between the posts`;
  return undefined;
}

interface ReadFields {
  readonly mm?: number | readonly number[];
  readonly count?: number;
  readonly left?: number;
  readonly pitches?: number;
  readonly overDeg?: number;
  readonly deg?: number;
  readonly felt?: string;
  readonly goesMm?: number;
  readonly stopsMm?: number;
  readonly overPostsMm?: number;
  readonly betweenPostsMm?: number;
}
