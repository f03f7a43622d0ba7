import type { Database, Failure, Ran } from './database.ts';
import type { Drafts, Keeper, KeptMachine, KeptParts } from './keeper.ts';
import { mergeChanges } from './merge-changes.ts';

type Settings = Readonly<Record<string, unknown>>;
type MachineKey = 'settings' | 'last-open' | 'parts' | 'machines';

/** What is kept beside the jobs: half-typed fields, the job last open, small settings. */
export interface Notes
  extends Pick<
    Keeper,
    | 'keepDrafts'
    | 'loadDrafts'
    | 'lastOpen'
    | 'keepLastOpen'
    | 'loadSettings'
    | 'keepSettings'
    | 'loadParts'
    | 'keepParts'
    | 'loadMachines'
    | 'keepMachines'
  > {
  /** Forgets a removed job's drafts here; those in storage go with the job */
  readonly forget: (jobId: string) => void;
  /** Why the last of them could not be written */
  readonly failure: () => Failure | undefined;
}

/**
 * Notes in this browser's storage. Two windows that change different fields keep both changes. What can't be written
 * stays in memory.
 */
export function createNotes(database: Database): Notes {
  const knownDrafts = new Map<string, Drafts>();
  const unkeptDrafts = new Map<string, Drafts>();
  let knownSettings: Settings = {};
  let unkeptSettings: Settings | undefined;
  let unkeptLastOpen: string | undefined;
  let unkeptParts: readonly KeptParts[] | undefined;
  let unkeptMachines: readonly KeptMachine[] | undefined;
  let failure: Failure | undefined;

  const isKept = (ran: Ran<unknown>): boolean => {
    failure = 'failure' in ran ? ran.failure : undefined;
    return failure === undefined;
  };
  const keepOnMachine = async (key: MachineKey, change: (stored: unknown) => unknown): Promise<boolean> =>
    isKept(
      await database.run(['machine'], 'readwrite', async (transaction) => {
        const machine = transaction.objectStore('machine');
        await machine.put(change(await machine.get(key)), key);
      }),
    );
  const loadFromMachine = async (key: MachineKey): Promise<unknown> => {
    const ran = await database.run(['machine'], 'readonly', (transaction) =>
      transaction.objectStore('machine').get(key),
    );
    return 'value' in ran ? ran.value : undefined;
  };
  return {
    failure: () => failure,
    forget(jobId) {
      knownDrafts.delete(jobId);
      unkeptDrafts.delete(jobId);
    },
    async keepDrafts(jobId, drafts) {
      const ran = await database.run(['drafts'], 'readwrite', async (transaction) => {
        const store = transaction.objectStore('drafts');
        const stored = (await store.get(jobId)) ?? {};
        const merged = mergeChanges(stored, knownDrafts.get(jobId) ?? {}, drafts);
        if (Object.keys(merged).length > 0) await store.put(merged, jobId);
        else await store.delete(jobId);
      });
      if (isKept(ran)) {
        knownDrafts.set(jobId, drafts);
        unkeptDrafts.delete(jobId);
      } else unkeptDrafts.set(jobId, drafts);
    },
    async loadDrafts(jobId) {
      const waiting = unkeptDrafts.get(jobId);
      if (waiting) return waiting;
      const ran = await database.run(['drafts'], 'readonly', (transaction) =>
        transaction.objectStore('drafts').get(jobId),
      );
      const drafts = ('value' in ran ? ran.value : undefined) ?? {};
      knownDrafts.set(jobId, drafts);
      return drafts;
    },
    async lastOpen() {
      const stored = unkeptLastOpen ?? (await loadFromMachine('last-open'));
      return typeof stored === 'string' ? stored : undefined;
    },
    async keepLastOpen(id) {
      unkeptLastOpen = (await keepOnMachine('last-open', () => id)) ? undefined : id;
    },
    async loadParts() {
      return unkeptParts ?? partsOf(await loadFromMachine('parts'));
    },
    async keepParts(parts) {
      const kept = await keepOnMachine('parts', () => parts);
      unkeptParts = kept ? undefined : parts;
      return kept;
    },
    async loadMachines() {
      return unkeptMachines ?? machinesOf(await loadFromMachine('machines'));
    },
    async keepMachines(machines) {
      const kept = await keepOnMachine('machines', () => machines);
      unkeptMachines = kept ? undefined : machines;
      return kept;
    },
    async loadSettings() {
      if (unkeptSettings) return unkeptSettings;
      knownSettings = settingsOf(await loadFromMachine('settings'));
      return knownSettings;
    },
    async keepSettings(settings) {
      const kept = await keepOnMachine('settings', (stored) =>
        mergeChanges(settingsOf(stored), knownSettings, settings),
      );
      if (kept) knownSettings = settings;
      unkeptSettings = kept ? undefined : settings;
    },
  };
}

function partsOf(stored: unknown): readonly KeptParts[] {
  if (!Array.isArray(stored)) return [];
  return stored.filter(
    (one): one is KeptParts => typeof one?.name === 'string' && one.bytes instanceof Uint8Array,
  );
}

function machinesOf(stored: unknown): readonly KeptMachine[] {
  if (!Array.isArray(stored)) return [];
  return stored.filter(
    (one): one is KeptMachine =>
      typeof one?.name === 'string' &&
      one.file?.format === 'sparetooth-compensation' &&
      Array.isArray(one.past),
  );
}

function settingsOf(stored: unknown): Settings {
  return typeof stored === 'object' && stored !== null ? (stored as Settings) : {};
}
