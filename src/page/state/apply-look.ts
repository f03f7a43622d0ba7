import type { Job, Wheel } from '../../index.ts';
import { addWheel, editWheel } from './edit-job.ts';

/** The job with what a gear looks like, and all that follows: its kind, a second gear on the same piece. */
export function applyLook(job: Job, wheelId: string, look: string): Job {
  const kind = kindOfLook[look];
  const looked = editWheel(job, wheelId, (wheel) => ({ ...wheel, look, ...(kind ? { kind } : {}) }));
  if (look !== 'two-rows') return looked;
  const wheel = looked.wheels?.find((one) => one.id === wheelId);
  if (!wheel || wheel.part !== undefined) return looked;
  // Two rows are two gears that are one piece: each is worked out by itself, and they turn together.
  const grown = addWheel(looked);
  const second = grown.wheels?.at(-1);
  if (!second) return looked;
  const part = `piece-${wheelId}`;
  const first = editWheel(grown, wheelId, (one) => ({ ...one, part, name: one.name ?? 'first row' }));
  return editWheel(first, second.id, (one) => ({
    ...one,
    part,
    kind: 'external',
    look: 'straight',
    name: 'second row',
    ...(wheel.state ? { state: wheel.state } : {}),
  }));
}

const kindOfLook: Readonly<Record<string, NonNullable<Wheel['kind']>>> = {
  straight: 'external',
  'slanted-left': 'external',
  'slanted-right': 'external',
  'two-rows': 'external',
  'part-rim': 'external',
  inside: 'internal',
  bar: 'rack',
  cone: 'bevel',
  crown: 'crown',
  worm: 'worm',
  'clock-teeth': 'other',
  ratchet: 'ratchet',
  'belt-wheel': 'pulley',
};
