import type { Job, Wheel } from '../../index.ts';

/** What stands in the title block of a sheet; `note` over it, where the sheet is not what it seems. */
export function titleBlockOf(job: Job, wheel: Wheel, note: string | undefined) {
  return {
    job: job.title ?? 'Untitled',
    gear: wheel.name ?? wheel.id,
    material: wheel.material,
    note,
  };
}
