import type { Job, Wheel } from '../../index.ts';
import { editWheel } from '../state/edit-job.ts';

/** The made part as a wheel of its own, whole and with its own readings: what acts and drawings are about. */
export function asMadeWheel(wheel: Wheel): Wheel {
  const { id, name, kind, made } = wheel;
  const teeth = made?.spec?.teeth ?? countOf(wheel);
  return {
    id,
    ...(name === undefined ? {} : { name }),
    ...(kind === undefined ? {} : { kind }),
    ...(made?.material === undefined ? {} : { material: made.material }),
    state: 'sound',
    readings: [
      // Nobody has to count again what the file has: it says which jaws an odd count wants.
      ...(teeth === undefined ? [] : [{ of: 'teeth' as const, count: teeth }]),
      ...(made?.readings ?? []),
    ],
  };
}

/** An edit of the made part's wheel as an edit of the job that holds both. */
export function editMade(job: Job, wheelId: string, edit: (job: Job) => Job): Job {
  const wheel = job.wheels?.find((one) => one.id === wheelId);
  if (!wheel) return job;
  const edited = edit({ ...job, wheels: [asMadeWheel(wheel)] }).wheels?.[0];
  if (!edited) return job;
  return editWheel(job, wheelId, (one) => ({
    ...one,
    made: { ...one.made, readings: (edited.readings ?? []).filter(({ of }) => of !== 'teeth') },
  }));
}

function countOf(wheel: Wheel): number | undefined {
  for (const reading of wheel.readings ?? []) if (reading.of === 'teeth') return reading.count;
  return undefined;
}
