import { warmPlaces } from '../gear-library/lasting.ts';
import type { Material } from '../gear-library/materials.ts';
import { type Process, processes, usualProcess } from '../gear-library/processes.ts';
import { checkDriveUnrolled } from './check-drive.ts';
import { usualCycles, usualTemperature } from './check-strength.ts';
import type { DriveReport, ShaftReport } from './drive/drive-report.ts';
import { Fail } from './fail.ts';
import { findMates, isIdler } from './find-mates.ts';
import type { Job, Wheel } from './job/job-schema.ts';
import { chooseUsualMaterial, readMaterial } from './making/choose-material.ts';
import { designPart } from './making/design-part.ts';
import { findProcess } from './making/find-process.ts';
import { type ChangeKey, changeKeys, type DesignMate, type PartDesign } from './making/part-design.ts';
import type { WheelPlan } from './plan-wheel.ts';
import { findMaterial } from './strength/find-material.ts';
import { tryPlanWheel } from './try-plan-wheel.ts';

export interface DesignOptions {
  /** A key of the processes; left out: the job's own, else the usual one */
  readonly process?: string | undefined;
  /** A key of the materials; left out: the job's own for making, else chosen */
  readonly material?: string | undefined;
  /** Keys of changes that are not made, beside the job's own */
  readonly off?: readonly string[] | undefined;
}

/** What a person asked for, of a process and a material that exist. */
export interface DesignWish {
  readonly process: Process;
  readonly material: Material;
  readonly isMaterialChosen: boolean;
  readonly off: readonly ChangeKey[];
}

/**
 * The part of a planned wheel, designed to last: loads, warmth and mates come from the job, the loads through its
 * drive. Throws Fail `bad-usage` for a process that is none, `bad-value` for a material, an `off` key that is none, or
 * a material that the process does not make gears of; else as `designPart` does.
 */
export function designWheel(
  job: Job,
  planned: Pick<WheelPlan, 'wheel' | 'evidence' | 'plan'>,
  options: DesignOptions,
): PartDesign {
  const { wheel, evidence, plan } = planned;
  const wish = readWish(wheel, options);
  const making = wheel.making ?? {};
  const drive = checkDriveUnrolled(job);
  const torque = findTorque(drive, wheel);
  const warm = findWarmth(job, wheel);
  return designPart({
    form: plan.form,
    evidence,
    oldMaterial: findMaterial(wheel.material),
    ...wish,
    mates: listMates(job, wheel, drive),
    runningTorque: torque?.runningTorqueNmm ?? undefined,
    stallTorque: torque?.torqueNmm ?? undefined,
    ...warm,
    cycles: usualCycles,
    isReversed: isIdler(job, wheel.id),
    isWet: making.wet ?? false,
    wantsSpur: making.spur ?? false,
    isSacrificial: wheel.sacrificial ?? false,
    hold: making.hold,
    room: making.roomMm ?? 0,
  });
}

/** The process, material and switched off changes that hold for a wheel. */
export function readWish(wheel: Wheel, options: DesignOptions): DesignWish {
  const making = wheel.making ?? {};
  const process = findProcess(options.process ?? making.process ?? usualProcess);
  const key = options.material ?? making.material;
  const off = [...new Set([...(making.off ?? []), ...(options.off ?? [])])].map(checkKey);
  if (key !== undefined)
    return { process, material: checkMaterial(key, process), isMaterialChosen: true, off };
  const material = chooseUsualMaterial(findMaterial(wheel.material), process);
  return { process, material, isMaterialChosen: false, off };
}

function checkMaterial(key: string, process: Process): Material {
  const found = readMaterial(key);
  if (process.materials.includes(found.key)) return found;
  const others = processes.filter(({ materials: makes }) => makes.includes(found.key));
  throw new Fail(
    'bad-value',
    'material',
    `a ${process.name} does not make gears of ${found.name}`,
    `Use one of ${process.materials.join(', ')}${others.length > 0 ? `; or --process ${others.map((one) => one.key).join(' or ')}` : ''}.`,
    { key },
  );
}

function checkKey(key: string): ChangeKey {
  const found = changeKeys.find((one) => one === key);
  if (found) return found;
  throw new Fail(
    'bad-value',
    'off',
    `no change is called "${key}"`,
    `Use one of: ${changeKeys.join(', ')}.`,
    { key },
  );
}

function findTorque(drive: DriveReport, wheel: Wheel): ShaftReport | undefined {
  const shaft = drive.wheels.find(({ id }) => id === wheel.id)?.shaft;
  return drive.shafts.find(({ id }) => id === shaft);
}

/** As given; else by what is near, a motor on its own shaft among it; else a room. */
function findWarmth(
  job: Job,
  wheel: Wheel,
): { readonly temperatureC: number; readonly warmBecause: string | undefined } {
  const { temperatureC, near } = wheel.making ?? {};
  if (temperatureC !== undefined) return { temperatureC, warmBecause: undefined };
  const isOnMotor = job.motor?.shaft !== undefined && wheel.shaft === job.motor.shaft;
  const place = warmPlaces.find(({ key }) => key === (near ?? (isOnMotor ? 'motor' : 'neither')));
  return { temperatureC: place?.temperatureC ?? usualTemperature, warmBecause: place?.name };
}

/** Every wheel that a mesh of teeth joins to this one and whose teeth are known. */
function listMates(job: Job, wheel: Wheel, drive: DriveReport): DesignMate[] {
  return findMates(job, wheel.id).flatMap(({ mesh, mate, isDriver }): DesignMate[] => {
    const planned = mate.id === wheel.id ? undefined : tryPlanWheel(job, mate.id);
    if (!planned) return [];
    const known = findMaterial(mate.material);
    const report = drive.meshes.find(
      ({ driver, driven }) => driver === mesh.driver && driven === mesh.driven,
    );
    const isKept = mate.state === 'sound' || mate.state === undefined;
    return [
      {
        id: mate.id,
        wheel: {
          spec: planned.plan.form.spec,
          ...(isKept && mate.tipWearMm ? { tipWear: mate.tipWearMm } : {}),
        },
        material: known ?? readMaterial('steel'),
        isMaterialAssumed: !known,
        faceWidth: mate.spec?.faceWidthMm,
        center:
          report?.centerMm === null || report?.centerMm === undefined
            ? undefined
            : { mm: report.centerMm, u: report.centerUMm ?? 0 },
        isDriven: !isDriver,
        turnsSpur: mate.making?.spur ?? false,
        isSacrificial: mate.sacrificial ?? false,
      },
    ];
  });
}
