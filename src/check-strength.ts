import type { Material } from '../gear-library/materials.ts';
import { processes } from '../gear-library/processes.ts';
import { Fail } from './fail.ts';
import { findMates, isIdler } from './find-mates.ts';
import { findDiameters } from './involute/gear-diameters.ts';
import type { GearSpec } from './involute/gear-spec.ts';
import type { Job } from './job/job-schema.ts';
import { roundNumbers } from './job/round-numbers.ts';
import { checkHub } from './making/check-hub.ts';
import { chooseUsualMaterial, readMaterial } from './making/choose-material.ts';
import { findProcess } from './making/find-process.ts';
import { planWheel, type WheelPlan } from './plan-wheel.ts';
import { checkTooth, type Load, type ToothDuty, type ToothStrength } from './strength/check-tooth.ts';
import { explainBreak } from './strength/explain-break.ts';
import type { FormFactor } from './strength/find-form-factor.ts';
import { findMaterial } from './strength/find-material.ts';
import { exactly, multiply, type Range } from './strength/range.ts';
import type { StrengthReport } from './strength/strength-report.ts';
import { tryPlanWheel } from './try-plan-wheel.ts';

export interface StrengthOptions {
  /** A key of the materials; left out: the job's own where it is one, else the first that the process makes gears of */
  readonly material?: string | undefined;
  /** A key of the processes */
  readonly process?: string | undefined;
  /** Of the teeth while they run, °C; a room where left out */
  readonly temperatureC?: number | undefined;
  /** How often each tooth meshes in its life; ten million where left out */
  readonly cycles?: number | undefined;
  /** On the wheel's shaft while it runs, N mm */
  readonly torqueNmm?: number | undefined;
  /** On the wheel's shaft in a stall; left out: the motor's own, where the wheel sits on its shaft */
  readonly stallTorqueNmm?: number | undefined;
  /** Of a rack, in place of the torques: along it, N */
  readonly forceN?: number | undefined;
  readonly stallForceN?: number | undefined;
  /** Printed with its axis lying, so that teeth bend across layers */
  readonly isAcrossLayers?: boolean | undefined;
}

/** Of the teeth, °C: a room. */
export const usualTemperature = 23;
/** How often each tooth meshes in its life. */
export const usualCycles = 1e7;

/**
 * Whether a wheel of a job lasts in a material and process: what governs, by what margin and how unsure; what its
 * teeth carry; the wall over the bore; what a press fit would allow; and, of a broken wheel, why it broke. The old
 * wheel is judged by the same loads as a molded or cut wheel of the job's material.
 *
 * The mate is the first wheel that a mesh of teeth joins to this one and that is known; without one the load is taken
 * at the tip and the flanks aren't judged. Throws Fail `bad-value` for an unknown material, a torque that isn't above
 * 0, a temperature or a count of cycles out of range; else as `planWheel` does.
 */
export function checkStrength(job: Job, wheelId: string, options: StrengthOptions): StrengthReport {
  const process = findProcess(options.process);
  const plan = planWheel(job, { wheelId, process: process.key });
  const { form } = plan.plan;
  const oldMaterial = findMaterial(plan.wheel.material);
  const material =
    options.material === undefined
      ? chooseUsualMaterial(oldMaterial, process)
      : readMaterial(options.material);
  const loads = findLoads(job, plan, options);
  const mate = findMate(job, wheelId);
  const hub = checkHub({ form, evidence: plan.evidence, material, process, oldMaterial });
  const duty: ToothDuty = {
    spec: form.spec,
    faceWidth: form.faceWidth,
    material,
    process,
    temperatureC: checkNumber('temperatureC', options.temperatureC ?? usualTemperature, -60, 500),
    cycles: checkNumber('cycles', options.cycles ?? usualCycles, 1, 1e12),
    isAcrossLayers: process.isLayered && options.isAcrossLayers === true,
    isReversed: isIdler(job, wheelId),
    running: loads.running,
    stall: loads.stall,
    rim: hub.wall?.mm,
    mate: mate && { spec: mate.spec, material: mate.material, centerDistance: mate.centerDistance },
  };
  const strength = checkTooth(duty);
  const heat = judgeHeat(material, duty.temperatureC);
  return roundNumbers({
    wheel: wheelId,
    material: { key: material.key, name: material.name },
    process: { key: process.key, name: process.name },
    isMaterialOfProcess: process.materials.includes(material.key),
    temperatureC: duty.temperatureC,
    cycles: duty.cycles,
    faceWidthMm: form.faceWidth,
    isTrial: plan.isTrial,
    load: {
      runningN: loads.running ? toForce(form.spec, loads.running) : null,
      stallN: loads.stall ? toForce(form.spec, loads.stall) : null,
      stallFrom: loads.stallFrom,
    },
    ...settle(strength, heat, hub.wall),
    criteria: strength.criteria.map(({ kind, stress, allowable, margin, wanted, verdict }) => ({
      kind,
      stressMpa: stress,
      allowableMpa: allowable,
      margin,
      wanted,
      verdict,
    })),
    carries: listCarried(form.spec, strength),
    form: reportForm(strength),
    allowableBasis: strength.allowableBasis,
    heat,
    ...hub,
    broke: explainBreak({
      seen: [...new Set(plan.evidence.damage.map(({ kind }) => kind))],
      material: oldMaterial,
      boreStrain: hub.stretch?.strain,
      ...findOldMargins(duty, oldMaterial),
      temperatureC: options.temperatureC,
    }),
    mate: mate
      ? { id: mate.id, material: mate.material.key, isMaterialAssumed: mate.isMaterialAssumed }
      : null,
  });
}

function checkNumber(field: string, value: number, least: number, greatest: number): number {
  if (value >= least && value <= greatest) return value;
  throw new Fail(
    'bad-value',
    field,
    `${field} of ${value} is out of range`,
    `Give ${least} to ${greatest}.`,
    { value },
  );
}

interface Loads {
  readonly running: Load | undefined;
  readonly stall: Load | undefined;
  readonly stallFrom: 'given' | 'motor' | null;
}

function findLoads(job: Job, { wheel, evidence }: WheelPlan, options: StrengthOptions): Loads {
  const isRack = evidence.kind === 'rack';
  const take = (
    torqueKey: 'torqueNmm' | 'stallTorqueNmm',
    forceKey: 'forceN' | 'stallForceN',
  ): Load | undefined => {
    const [wanted, other] = isRack ? [forceKey, torqueKey] : [torqueKey, forceKey];
    if (options[other] !== undefined) {
      throw new Fail(
        'bad-value',
        other,
        isRack ? 'a rack is pushed by a force, not turned by a torque' : 'a wheel is loaded by a torque here',
        `Give ${wanted} instead.`,
        { value: options[other] },
      );
    }
    const value = options[wanted];
    if (value === undefined) return undefined;
    checkNumber(wanted, value, 1e-6, 1e9);
    return isRack ? { force: value } : { torque: value };
  };
  const running = take('torqueNmm', 'forceN');
  const given = take('stallTorqueNmm', 'stallForceN');
  if (given) return { running, stall: given, stallFrom: 'given' };
  const motor = job.motor?.stallTorqueNmm;
  const isOnMotor = job.motor?.shaft !== undefined && wheel.shaft === job.motor.shaft && !isRack;
  if (isOnMotor && motor !== undefined && motor > 0)
    return { running, stall: { torque: motor }, stallFrom: 'motor' };
  return { running, stall: undefined, stallFrom: null };
}

interface KnownMate {
  readonly id: string;
  readonly spec: GearSpec;
  readonly material: Material;
  readonly isMaterialAssumed: boolean;
  readonly centerDistance: number | undefined;
}

/** The first wheel that teeth join to this one and whose spec is given or can be worked out. */
function findMate(job: Job, wheelId: string): KnownMate | undefined {
  for (const { mesh, mate } of findMates(job, wheelId)) {
    const known = findMaterial(mate.material);
    const spec = tryPlanWheel(job, mate.id)?.plan.form.spec;
    if (!spec) continue;
    return {
      id: mate.id,
      spec,
      material: known ?? readMaterial('steel'),
      isMaterialAssumed: !known,
      centerDistance: mesh.centerMm,
    };
  }
  return undefined;
}

function judgeHeat({ warmLimitC }: Material, temperatureC: number): StrengthReport['heat'] {
  const leftC = warmLimitC.value - temperatureC;
  const verdict = leftC < 0 ? 'too-warm' : temperatureC > warmLimitC.low ? 'near' : 'cool';
  return { warmLimitC: toRange(warmLimitC), leftC, verdict };
}

function toRange({ value, low, high }: Range): Range {
  return { value, low, high };
}

/** What stands first against the wheel: heat and a missing wall before any margin. */
function settle(
  { governs }: ToothStrength,
  heat: StrengthReport['heat'],
  wall: StrengthReport['wall'],
): Pick<StrengthReport, 'governs' | 'verdict'> {
  if (heat.verdict === 'too-warm') return { governs: 'heat', verdict: 'fails' };
  if (wall?.verdict === 'too-thin') return { governs: 'wall', verdict: 'fails' };
  if (!governs) return { governs: null, verdict: 'no-load' };
  return { governs: governs.kind, verdict: governs.verdict };
}

function toForce(spec: GearSpec, load: Load): number {
  return 'force' in load ? load.force : (2 * load.torque) / findDiameters(spec).reference;
}

function listCarried(spec: GearSpec, { carries }: ToothStrength): StrengthReport['carries'] {
  const asTorque = (force: Range): Range | null =>
    spec.kind === 'rack' ? null : multiply(force, exactly(findDiameters(spec).reference / 2));
  return {
    runningN: carries.running,
    stallN: carries.stall,
    runningNmm: asTorque(carries.running),
    stallNmm: asTorque(carries.stall),
  };
}

function reportForm({ factors, contactRatio }: ToothStrength): StrengthReport['form'] {
  const isoOf = ({ tangent }: FormFactor) => ({
    formFactor: tangent.form,
    stressCorrection: tangent.concentration,
  });
  return {
    lewisY: factors.tip.lewis.Y,
    lewisYOverPi: factors.tip.lewis.Y / Math.PI,
    atTip: isoOf(factors.tip),
    atSingleContact: factors.single ? isoOf(factors.single) : null,
    contactRatio: contactRatio ?? null,
    filletRadiusMm: factors.tip.tangent.filletRadius,
    isConcentrationInRange: factors.tip.tangent.isConcentrationInRange,
  };
}

/** The old wheel under the same loads: molded or cut, of the job's material. */
function findOldMargins(
  duty: ToothDuty,
  material: Material | undefined,
): { readonly stallMargin?: number | undefined; readonly runningMargin?: number | undefined } {
  const process = processes.find(({ key }) => key === 'machine-shop');
  if (!material || !process) return {};
  const { criteria } = checkTooth({ ...duty, material, process, isAcrossLayers: false });
  const marginOf = (kind: string): number | undefined =>
    criteria.find((one) => one.kind === kind)?.margin.value;
  return { stallMargin: marginOf('root-stall'), runningMargin: marginOf('root-running') };
}
