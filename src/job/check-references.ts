import { Fail } from '../fail.ts';
import type { Job, Wheel } from './job-schema.ts';
import { type Limit, limits } from './limits.ts';

/**
 * Checks what no single field shows: every wheel's id stands once, what names a wheel names one of the job, a
 * toothed wheel has teeth enough, and a hole that a drill goes into is smaller than one that stops it.
 *
 * Throws Fail `bad-value` or `no-such-wheel`.
 */
export function checkReferences(job: Job): void {
  const wheels = job.wheels ?? [];
  const ids = new Map<string, number>();
  wheels.forEach(({ id }, index) => {
    const first = ids.get(id);
    if (first !== undefined) {
      throw new Fail(
        'bad-value',
        `wheels[${index}].id`,
        `wheels[${first}] is called "${id}" already`,
        'Give every wheel an id of its own.',
        { id },
      );
    }
    ids.set(id, index);
  });
  wheels.forEach((wheel, index) => {
    checkWheel(wheel, `wheels[${index}]`, ids);
  });
  (job.meshes ?? []).forEach(({ driver, driven }, index) => {
    checkWheelExists(driver, `meshes[${index}].driver`, ids);
    checkWheelExists(driven, `meshes[${index}].driven`, ids);
  });
}

function checkWheel(wheel: Wheel, place: string, ids: ReadonlyMap<string, number>): void {
  if (isToothed(wheel)) {
    checkTeeth(wheel.spec?.teeth, `${place}.spec.teeth`);
    checkTeeth(wheel.made?.spec?.teeth, `${place}.made.spec.teeth`);
  }
  (wheel.touched ?? []).forEach((one, k) => {
    checkMate(one.wheel, wheel.id, `${place}.touched[${k}].wheel`, ids);
  });
  checkReadings(wheel, wheel.readings, `${place}.readings`, ids);
  checkReadings(wheel, wheel.made?.readings, `${place}.made.readings`, ids);
}

function isToothed({ kind }: Wheel): boolean {
  return kind === undefined || kind === 'external' || kind === 'internal';
}

function checkReadings(
  wheel: Wheel,
  readings: Wheel['readings'],
  list: string,
  ids: ReadonlyMap<string, number>,
): void {
  (readings ?? []).forEach((reading, k) => {
    const field = `${list}[${k}]`;
    if (reading.of === 'teeth' && isToothed(wheel)) checkTeeth(reading.count, `${field}.count`);
    if (reading.of === 'center-distance') checkMate(reading.mate, wheel.id, `${field}.mate`, ids);
    if (reading.of === 'hand-roll') {
      checkMate(reading.with, wheel.id, `${field}.with`, ids);
      checkTeeth(reading.spec?.teeth, `${field}.spec.teeth`);
    }
    if (reading.of === 'bore' && reading.goesMm !== undefined && reading.stopsMm !== undefined) {
      if (reading.goesMm >= reading.stopsMm) {
        throw new Fail(
          'bad-value',
          `${field}.stopsMm`,
          `a drill of ${reading.goesMm} mm goes in, so one of ${reading.stopsMm} mm can't stop`,
          'Give in goesMm the largest that goes in, in stopsMm the smallest that does not.',
        );
      }
    }
  });
}

function checkTeeth(teeth: number | undefined, field: string): void {
  const { least, greatest, reason, what }: Limit = limits.teeth;
  if (teeth === undefined || (teeth >= least && teeth <= greatest)) return;
  throw new Fail(
    'bad-value',
    field,
    `${teeth} is outside ${least} to ${greatest}: ${reason}`,
    `Give ${what} of ${least} to ${greatest}, or leave the field out.`,
  );
}

function checkMate(
  mate: string | undefined,
  own: string,
  field: string,
  ids: ReadonlyMap<string, number>,
): void {
  checkWheelExists(mate, field, ids);
  if (mate !== own) return;
  throw new Fail(
    'bad-value',
    field,
    `"${own}" is the wheel itself`,
    'Name the other wheel, the one it runs against.',
  );
}

function checkWheelExists(id: string | undefined, field: string, ids: ReadonlyMap<string, number>): void {
  if (id === undefined || ids.has(id)) return;
  const known = [...ids.keys()];
  const list = known.slice(0, 8).join(', ') + (known.length > 8 ? ', …' : '');
  throw new Fail(
    'no-such-wheel',
    field,
    `the job has no wheel "${id}"`,
    known.length > 0 ? `Name one of these, or add the wheel: ${list}.` : 'Add the wheel.',
    { id, known },
  );
}
