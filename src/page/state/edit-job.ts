import type { Job, Wheel } from '../../index.ts';

export type JobReading = NonNullable<Wheel['readings']>[number];

/** A new job: one gear, nothing known of it yet. */
export function startJob(title: string): Job {
  return { format: 'sparetooth-job', version: 1, title, wheels: [{ id: 'gear-1', readings: [] }] };
}

/** The job with one wheel changed; the same job where `edit` gives the same wheel or there is none of that id. */
export function editWheel(job: Job, wheelId: string, edit: (wheel: Wheel) => Wheel): Job {
  const at = (job.wheels ?? []).findIndex((wheel) => wheel.id === wheelId);
  const before = job.wheels?.[at];
  if (!before) return job;
  const after = edit(before);
  return after === before
    ? job
    : { ...job, wheels: (job.wheels ?? []).map((one, i) => (i === at ? after : one)) };
}

/** One more gear with an id that is free. */
export function addWheel(job: Job): Job {
  const taken = new Set((job.wheels ?? []).map((wheel) => wheel.id));
  let number = taken.size + 1;
  while (taken.has(`gear-${number}`)) number++;
  return { ...job, wheels: [...(job.wheels ?? []), { id: `gear-${number}`, readings: [] }] };
}

/** The job without a wheel, and without what names it: its meshes, and readings of other wheels against it. */
export function removeWheel(job: Job, wheelId: string): Job {
  const names = (reading: JobReading): boolean =>
    (reading.of === 'center-distance' && reading.mate === wheelId) ||
    (reading.of === 'hand-roll' && reading.with === wheelId);
  return {
    ...job,
    wheels: (job.wheels ?? [])
      .filter((wheel) => wheel.id !== wheelId)
      .map((wheel) =>
        (wheel.readings ?? []).some(names)
          ? { ...wheel, readings: (wheel.readings ?? []).filter((one) => !names(one)) }
          : wheel,
      ),
    ...(job.meshes
      ? { meshes: job.meshes.filter((mesh) => mesh.driver !== wheelId && mesh.driven !== wheelId) }
      : {}),
  };
}

/** The wheel with a reading put in place of the one at `index`, or added behind the others. */
export function putReading(wheel: Wheel, reading: JobReading, index?: number): Wheel {
  const readings = wheel.readings ?? [];
  const isThere = index !== undefined && index >= 0 && index < readings.length;
  return {
    ...wheel,
    readings: isThere ? readings.map((one, i) => (i === index ? reading : one)) : [...readings, reading],
  };
}

export function dropReading(wheel: Wheel, index: number): Wheel {
  return { ...wheel, readings: (wheel.readings ?? []).filter((_, i) => i !== index) };
}
