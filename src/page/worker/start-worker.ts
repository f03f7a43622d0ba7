/** A worker of the page's own file. The single-file page has one that starts from the text it carries instead. */
export function startWorker(): Worker {
  return new Worker(new URL('./answer.worker.ts', import.meta.url), { type: 'module', name: 'answers' });
}
