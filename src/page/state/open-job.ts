import type { Job } from '../../index.ts';

/** One job on this machine with everything that undo and redo need. The job is the only truth; all else follows. */
export interface OpenJob {
  readonly id: string;
  /** Grows with every save; a window that saves over a newer one is refused */
  readonly revision: number;
  readonly job: Job;
  /** Earlier jobs, oldest first, each with what was done to it next */
  readonly past: readonly Step[];
  /** Undone jobs, the next to redo last */
  readonly future: readonly Step[];
}

export interface Step {
  readonly job: Job;
  /** What was done, as it follows "Undo: " */
  readonly what: string;
}

/** A job that nothing was done to yet and that is not kept yet. */
export function freshJob(id: string, job: Job): OpenJob {
  return { id, revision: 0, job, past: [], future: [] };
}

/** A hundred steps back reach further than an evening; more would make every save slower. */
const mostSteps = 100;

/** The job changed by `edit`, with the step to undo it; the same job where nothing changed. */
export function changeJob(open: OpenJob, what: string, edit: (job: Job) => Job): OpenJob {
  const job = edit(open.job);
  if (job === open.job) return open;
  return { ...open, job, past: [...open.past, { job: open.job, what }].slice(-mostSteps), future: [] };
}

/** One step back; the same where there is none. */
export function undoStep(open: OpenJob): OpenJob {
  const last = open.past.at(-1);
  if (!last) return open;
  return {
    ...open,
    job: last.job,
    past: open.past.slice(0, -1),
    future: [...open.future, { job: open.job, what: last.what }],
  };
}

/** One step forward again; the same where there is none. */
export function redoStep(open: OpenJob): OpenJob {
  const next = open.future.at(-1);
  if (!next) return open;
  return {
    ...open,
    job: next.job,
    past: [...open.past, { job: open.job, what: next.what }],
    future: open.future.slice(0, -1),
  };
}
