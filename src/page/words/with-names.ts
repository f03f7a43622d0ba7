import type { Job } from '../../index.ts';
import { shaftOf } from '../state/edit-train.ts';
import { nameShaft } from './name-wheel.ts';

/** A sentence of the core with the ids in it, "p1" or with p1, put as the person calls those gears. */
export function withNames(text: string, job: Job): string {
  const wheels = job.wheels ?? [];
  const names = new Map(wheels.map((wheel) => [wheel.id, wheel.name ?? wheel.id]));
  const shafts = new Set(wheels.map(shaftOf));
  return text
    .replaceAll('`identify`', 'What is it?')
    .replace(/"([^"]+)"/g, (whole, id: string) => {
      const name = names.get(id);
      if (name !== undefined) return name;
      return shafts.has(id) ? nameShaft(job, id) : whole;
    })
    .replace(/\bwith ([^\s:;,.]+)/g, (whole, id: string) => {
      const name = names.get(id);
      return name === undefined ? whole : `with ${name}`;
    });
}
