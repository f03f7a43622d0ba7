import type { ParsedJob } from '../index.ts';

/** What was noticed in a job, ten lines at most. */
export function tellNotices(notices: ParsedJob['notices']): string[] {
  const lines = notices.slice(0, most).map(({ field, message }) => `${field}: ${message}`);
  return notices.length > most ? [...lines, `and ${notices.length - most} more of these`] : lines;
}

const most = 10;
