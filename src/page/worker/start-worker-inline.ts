import AnswerWorker from './answer.worker.ts?worker&inline';

/** A worker from text that the page carries: the single-file page is built with this one, as it can't fetch any. */
export function startWorker(): Worker {
  return new AnswerWorker({ name: 'answers' });
}
