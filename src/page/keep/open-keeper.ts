import type { OpenJob } from '../state/open-job.ts';
import { createDatabase, type Failure } from './database.ts';
import type { Keeper, KeptSummary, SaveOutcome } from './keeper.ts';
import { openJobOf, readRecord, recordOf, summaryOf } from './kept-record.ts';
import { createNotes } from './notes.ts';
import { createOwnSaves } from './own-saves.ts';

interface Unkept {
  readonly open: OpenJob;
  readonly since: number;
  readonly failure: Failure;
}

/**
 * Opens this browser's storage. Where there is none, or what lies there was written by a newer page, the keeper
 * works in memory for as long as the window lives, and its condition says so. A job that could not be written stays
 * in memory in the same way and is tried again after the next save or removal.
 *
 * Everything happens in the order it was asked for; a save is one transaction that is on the disk before it counts.
 */
export async function openKeeper(): Promise<Keeper> {
  const database = createDatabase();
  const notes = createNotes(database);
  const own = createOwnSaves();
  const unkept = new Map<string, Unkept>();
  let isNewerMet = false;
  let isLastingAsked = false;
  let turn: Promise<unknown> = Promise.resolve();
  const listeners = new Set<(id: string) => void>();
  const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('sparetooth');
  if (channel) {
    channel.onmessage = ({ data }: MessageEvent<{ readonly id: string }>) => {
      for (const listener of listeners) listener(data.id);
    };
  }

  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const done = turn.then(work);
    turn = done.catch(() => {});
    return done;
  };
  const saveOne = async (open: OpenJob): Promise<SaveOutcome> => {
    const base = own.baseOf(open.id, open.revision);
    const ran = await database.run(
      ['jobs'],
      'readwrite',
      async (transaction): Promise<SaveOutcome> => {
        const jobs = transaction.objectStore('jobs');
        const found = readRecord(await jobs.get(open.id));
        if (found.kind === 'newer') return { outcome: 'not-kept', condition: 'newer' };
        if (found.kind === 'record' && found.record.revision > base) {
          return { outcome: 'elsewhere', theirs: openJobOf(found.record) };
        }
        await jobs.put(recordOf(open, base + 1, Date.now()));
        return { outcome: 'saved', revision: base + 1 };
      },
      'strict',
    );
    const outcome: SaveOutcome = 'value' in ran ? ran.value : { outcome: 'not-kept', condition: ran.failure };
    if (outcome.outcome === 'saved') {
      unkept.delete(open.id);
      own.note(open.id, base, outcome.revision);
      channel?.postMessage({ id: open.id });
    } else if (outcome.outcome === 'not-kept') {
      unkept.set(open.id, { open, since: Date.now(), failure: outcome.condition });
    }
    return outcome;
  };
  const retry = async (): Promise<void> => {
    for (const { open } of [...unkept.values()]) {
      if ((await saveOne(open)).outcome !== 'saved') return;
    }
  };

  await database.run(['jobs'], 'readonly', async () => {});

  return {
    condition() {
      const [first] = unkept.values();
      return database.lack() ?? first?.failure ?? notes.failure() ?? (isNewerMet ? 'newer' : 'kept');
    },
    list: () =>
      inTurn(async () => {
        const ran = await database.run(['jobs'], 'readonly', (transaction) =>
          transaction.objectStore('jobs').getAll(),
        );
        const summaries = new Map<string, KeptSummary>();
        for (const value of 'value' in ran ? ran.value : []) {
          for (const summary of summaryOf(readRecord(value))) summaries.set(summary.id, summary);
        }
        for (const { open, since } of unkept.values()) {
          const record = recordOf(open, open.revision, since);
          for (const summary of summaryOf({ kind: 'record', record })) summaries.set(summary.id, summary);
        }
        return [...summaries.values()].sort((a, b) => b.changed - a.changed || (a.id < b.id ? -1 : 1));
      }),
    load: (id) =>
      inTurn(async () => {
        const waiting = unkept.get(id);
        if (waiting) return waiting.open;
        const ran = await database.run(['jobs'], 'readonly', (transaction) =>
          transaction.objectStore('jobs').get(id),
        );
        const found = readRecord('value' in ran ? ran.value : undefined);
        isNewerMet = found.kind === 'newer';
        return found.kind === 'record' ? openJobOf(found.record) : undefined;
      }),
    save: (open) =>
      inTurn(async () => {
        const outcome = await saveOne(open);
        if (outcome.outcome === 'saved') {
          await retry();
          if (!isLastingAsked) void askToLast();
          isLastingAsked = true;
        }
        return outcome;
      }),
    remove: (id) =>
      inTurn(async () => {
        unkept.delete(id);
        notes.forget(id);
        const ran = await database.run(
          ['jobs', 'drafts'],
          'readwrite',
          async (transaction) => {
            const jobs = transaction.objectStore('jobs');
            // What a newer page wrote is not this one's to throw away.
            if (readRecord(await jobs.get(id)).kind === 'newer') return false;
            await jobs.delete(id);
            await transaction.objectStore('drafts').delete(id);
            return true;
          },
          'strict',
        );
        if ('value' in ran && ran.value) channel?.postMessage({ id });
        await retry();
      }),
    keepDrafts: (jobId, drafts) => inTurn(() => notes.keepDrafts(jobId, drafts)),
    loadDrafts: (jobId) => inTurn(() => notes.loadDrafts(jobId)),
    lastOpen: () => inTurn(notes.lastOpen),
    keepLastOpen: (id) => inTurn(() => notes.keepLastOpen(id)),
    loadParts: () => inTurn(notes.loadParts),
    keepParts: (parts) => inTurn(() => notes.keepParts(parts)),
    loadMachines: () => inTurn(notes.loadMachines),
    keepMachines: (machines) => inTurn(() => notes.keepMachines(machines)),
    loadSettings: () => inTurn(notes.loadSettings),
    keepSettings: (settings) => inTurn(() => notes.keepSettings(settings)),
    onSavedElsewhere(listener) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}

/** Asks the browser not to throw the work away when the disk runs short. It may say no; nothing else changes then. */
async function askToLast(): Promise<void> {
  try {
    if (!(await navigator.storage.persisted())) await navigator.storage.persist();
  } catch {
    // Some browsers have no such question.
  }
}
