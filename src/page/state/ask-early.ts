import type { Job } from '../../index.ts';
import type { AnswerWorker } from '../worker/ask-worker.ts';
import type { Asks } from '../worker/asks.ts';
import { askIdentity } from './ask-identity.ts';

/** What a gear is, asked before anything is on the page. */
export interface EarlyAnswer {
  readonly job: Job;
  readonly wheelId: string;
  readonly answer: Promise<Asks['identify']['answer']>;
}

/**
 * Asks about a job's first gear at once, while storage is being opened and the page drawn for the first time: a first
 * visit shows the example. An answer that nobody comes for costs its time alone.
 */
export function askEarly(worker: AnswerWorker, job: Job): EarlyAnswer | undefined {
  const wheel = job.wheels?.[0];
  if (!wheel) return undefined;
  const answer = askIdentity(worker, job, wheel, 'identify early');
  // Whoever comes for it hears of a failure; nobody may come.
  answer.catch(() => {});
  return { job, wheelId: wheel.id, answer };
}
