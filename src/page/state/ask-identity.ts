import type { Job, Wheel } from '../../index.ts';
import type { AnswerWorker } from '../worker/ask-worker.ts';
import type { Asks } from '../worker/asks.ts';
import { listPossibleSlots } from './possible-slots.ts';

/** Asks what a gear of a job is. Questions of one lane overtake each other. */
export function askIdentity(
  worker: AnswerWorker,
  job: Job,
  wheel: Wheel,
  lane: string,
): Promise<Asks['identify']['answer']> {
  return worker.ask('identify', { job, wheelId: wheel.id, slots: listPossibleSlots(wheel) }, lane);
}
