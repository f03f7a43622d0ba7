import type { Job } from '../../index.ts';
import type { OpenJob, Step } from '../state/open-job.ts';
import type { KeptSummary } from './keeper.ts';

/** The format that this page writes. A new version of the job file raises it too, so that both migrate in one place. */
export const recordFormat = 1;

/** One job as it lies in this browser's storage, with its undo history. */
export interface KeptRecord {
  readonly id: string;
  readonly format: typeof recordFormat;
  /** One more with every save */
  readonly revision: number;
  /** When it was saved, milliseconds since 1970 */
  readonly changed: number;
  readonly job: Job;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

/** What was found: nothing, a record brought forward to `recordFormat`, or one that this page must leave as it is. */
export type FoundRecord =
  | { readonly kind: 'none' }
  | { readonly kind: 'record'; readonly record: KeptRecord }
  | { readonly kind: 'newer'; readonly id: string; readonly value: Readonly<Record<string, unknown>> };

/**
 * Reads what storage holds under a job's id. Older formats are brought forward step by step, in memory: what is
 * stored changes with the next save. A newer format, or a record without the fields of its own, is not understood
 * and therefore never written over.
 */
export function readRecord(value: unknown): FoundRecord {
  if (!isGroup(value)) return { kind: 'none' };
  const id = typeof value.id === 'string' ? value.id : '';
  const current = value.format === undefined ? fromFormat0(value) : value;
  return isRecord(current) ? { kind: 'record', record: current } : { kind: 'newer', id, value };
}

export function recordOf(open: OpenJob, revision: number, changed: number): KeptRecord {
  const { id, job, past, future } = open;
  return { id, format: recordFormat, revision, changed, job, past, future };
}

export function openJobOf({ id, revision, job, past, future }: KeptRecord): OpenJob {
  return { id, revision, job, past, future };
}

export function summaryOf(found: FoundRecord): KeptSummary[] {
  switch (found.kind) {
    case 'none':
      return [];
    case 'record': {
      const { id, changed, job } = found.record;
      return [{ id, title: job.title ?? '', changed, gears: job.wheels?.length ?? 0 }];
    }
    case 'newer': {
      const job = isGroup(found.value.job) ? found.value.job : {};
      return [
        {
          id: found.id,
          title: typeof job.title === 'string' ? job.title : '',
          changed: typeof found.value.changed === 'number' ? found.value.changed : 0,
          gears: Array.isArray(job.wheels) ? job.wheels.length : 0,
          isNewer: true,
        },
      ];
    }
  }
}

/** Format 0 was a bare `{ id, job }`: no history, no revision, no time. */
function fromFormat0(value: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return {
    id: value.id,
    format: recordFormat,
    revision: 0,
    changed: 0,
    job: value.job,
    past: [],
    future: [],
  };
}

function isRecord(value: unknown): value is KeptRecord {
  return (
    isGroup(value) &&
    value.format === recordFormat &&
    typeof value.id === 'string' &&
    typeof value.revision === 'number' &&
    typeof value.changed === 'number' &&
    isGroup(value.job) &&
    Array.isArray(value.past) &&
    Array.isArray(value.future)
  );
}

function isGroup(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
