import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb';
import type { Drafts, KeepCondition } from './keeper.ts';

/** What this browser keeps. `jobs` holds records of any format, so they are read through `readRecord` alone. */
export interface KeptSchema extends DBSchema {
  jobs: { key: string; value: unknown };
  /** By the job's id */
  drafts: { key: string; value: Drafts };
  /**
   * `settings`: those of this machine; `last-open`: a job's id; `parts`: files of the person's own parts; `machines`:
   * printers and cutters that were measured
   */
  machine: { key: 'settings' | 'last-open' | 'parts' | 'machines'; value: unknown };
}

export type KeptStore = StoreNames<KeptSchema>;
export type Failure = Exclude<KeepCondition, 'kept'>;
export type Ran<T> = { readonly value: T } | { readonly failure: Failure };

export interface Database {
  /** Why there is no storage at all; undefined while there is */
  readonly lack: () => Failure | undefined;
  /** One transaction, whole or not at all. Resolves once it is done and never rejects. */
  readonly run: <T>(
    stores: KeptStore[],
    mode: 'readonly' | 'readwrite',
    work: (transaction: KeptTransaction) => Promise<T>,
    durability?: 'strict' | 'relaxed',
  ) => Promise<Ran<T>>;
}

export type KeptTransaction = IDBPTransaction<KeptSchema, KeptStore[], 'readwrite'>;

export const databaseName = 'sparetooth';
const databaseVersion = 1;
/** A browser that has not opened a small database by then won't. */
const patience = 8000;

/** Opens when first used, and again after the browser closed it (data cleared, or a newer page took over). */
export function createDatabase(): Database {
  let connection: Promise<IDBPDatabase<KeptSchema>> | undefined;
  let lack: Failure | undefined;
  let isGivenUp = false;

  const connect = (): Promise<IDBPDatabase<KeptSchema>> => {
    connection ??= openInTime(() => {
      connection = undefined;
    });
    return connection;
  };
  return {
    lack: () => lack,
    async run(stores, mode, work, durability = 'relaxed') {
      if (isGivenUp) return { failure: 'refused' };
      for (let isRetry = false; ; isRetry = true) {
        let database: IDBPDatabase<KeptSchema>;
        try {
          database = await connect();
          lack = undefined;
        } catch (error) {
          connection = undefined;
          isGivenUp = error instanceof TookTooLong;
          lack = tellFailure(error);
          return { failure: lack };
        }
        try {
          return { value: await transact(database, stores, mode, work, durability) };
        } catch (error) {
          if (nameOf(error) !== 'InvalidStateError' || isRetry) return { failure: tellFailure(error) };
          // The connection was closed under us: one more try on a new one.
          connection = undefined;
        }
      }
    },
  };
}

class TookTooLong extends Error {}

async function openInTime(onClosed: () => void): Promise<IDBPDatabase<KeptSchema>> {
  const opening = openDB<KeptSchema>(databaseName, databaseVersion, {
    upgrade(database) {
      for (const store of ['drafts', 'machine'] as const) {
        if (!database.objectStoreNames.contains(store)) database.createObjectStore(store);
      }
      if (!database.objectStoreNames.contains('jobs')) database.createObjectStore('jobs', { keyPath: 'id' });
    },
    blocking(_current, _blocked, event) {
      // A newer page wants to bring the database forward: make way. What follows here is told as `newer`.
      (event.target as IDBDatabase).close();
      onClosed();
    },
    terminated: onClosed,
  });
  let isLate = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => {
      isLate = true;
      reject(new TookTooLong('the storage does not open'));
    }, patience);
  });
  opening.then(
    (database) => {
      if (isLate) database.close();
    },
    () => {},
  );
  try {
    return await Promise.race([opening, late]);
  } finally {
    clearTimeout(timer);
  }
}

async function transact<T>(
  database: IDBPDatabase<KeptSchema>,
  stores: KeptStore[],
  mode: 'readonly' | 'readwrite',
  work: (transaction: KeptTransaction) => Promise<T>,
  durability: 'strict' | 'relaxed',
): Promise<T> {
  const transaction = database.transaction(stores, mode, { durability }) as KeptTransaction;
  // Awaited below; said here so that a request that fails first leaves no unhandled rejection behind.
  transaction.done.catch(() => {});
  try {
    const value = await work(transaction);
    await transaction.done;
    return value;
  } catch (error) {
    try {
      transaction.abort();
    } catch {
      // It is over already.
    }
    throw (nameOf(error) === 'AbortError' ? transaction.error : undefined) ?? error;
  }
}

function tellFailure(error: unknown): Failure {
  switch (nameOf(error)) {
    case 'QuotaExceededError':
      return 'full';
    case 'VersionError':
      return 'newer';
    default:
      return 'refused';
  }
}

function nameOf(error: unknown): string {
  return typeof error === 'object' && error !== null && 'name' in error ? String(error.name) : '';
}
