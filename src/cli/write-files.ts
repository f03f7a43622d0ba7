import { link, lstat, mkdir, rename, rm, rmdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Fail } from '../index.ts';

interface NamedBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/**
 * Writes files into a folder, making it where it is missing, and returns their paths. All names are checked before
 * any is written; every file is written beside its place first and then given its name, so it is there whole or not
 * at all; without `force` nothing that is there is replaced, not even what appears meanwhile. After a failure the
 * folder is as it was: what was put there is taken away again, what was replaced is put back.
 *
 * Throws Fail `would-overwrite` or `cannot-write`; a plain Error where a name is not a plain file name.
 */
export async function writeFiles(
  folder: string,
  files: readonly NamedBytes[],
  force: boolean,
): Promise<string[]> {
  const targets = files.map(({ name }) => join(folder, checkName(name)));
  if (new Set(targets).size < targets.length) throw new Error(`one name twice: ${targets.join(', ')}`);
  for (const target of targets) await checkFree(target, force);
  const temporary = targets.map((_, index) => join(folder, `.sparetooth-${process.pid}-${index}.part`));
  const placed: Placed[] = [];
  let isNewFolder = false;
  try {
    isNewFolder = (await mkdir(folder, { recursive: true })) !== undefined;
    for (let k = 0; k < files.length; k++) await writeFile(temporary[k], files[k].bytes, { flag: 'wx' });
    for (let k = 0; k < files.length; k++) {
      if (force) await replace(temporary[k], targets[k], placed);
      else await placeNew(temporary[k], targets[k], placed);
    }
  } catch (error) {
    await removeAll(temporary);
    const stranded = await takeBack(placed);
    if (isNewFolder) await rmdir(folder).catch(() => {});
    if (stranded) throw cannotRestore(stranded);
    throw error instanceof Fail ? error : explain(folder, error);
  }
  await removeAll(placed.flatMap(({ kept }) => kept ?? []));
  return targets;
}

/** A file that was given its name, and under which name the one that it replaced is kept until all is done. */
interface Placed {
  readonly target: string;
  readonly kept: string | undefined;
}

/** Undoes what was placed, last first. Returns the first that could not be put back: its old file stays kept. */
async function takeBack(placed: readonly Placed[]): Promise<Placed | undefined> {
  let stranded: Placed | undefined;
  for (const one of [...placed].reverse()) {
    const { target, kept } = one;
    try {
      if (kept === undefined) await rm(target, { force: true });
      else {
        await rename(kept, target);
        // Two names of one file: then renaming leaves both.
        await rm(kept, { force: true });
      }
    } catch {
      if (kept !== undefined) stranded = one;
    }
  }
  return stranded;
}

async function removeAll(paths: readonly string[]): Promise<void> {
  await Promise.all(paths.map((path) => rm(path, { force: true }).catch(() => {})));
}

function checkName(name: string): string {
  if (/^[^/\\:\0]+$/.test(name) && name !== '.' && name !== '..') return name;
  throw new Error(`not a file name: ${JSON.stringify(name)}`);
}

async function checkFree(target: string, force: boolean): Promise<void> {
  const found = await lstat(target).catch(() => undefined);
  if (found?.isDirectory()) throw cannotWrite(target, 'is a folder', 'Choose another --out folder.');
  if (found && !force) throw wouldOverwrite(target);
}

/** A link refuses a name that is taken, in one step; where a disk has no links, look first, then rename. */
async function placeNew(from: string, to: string, placed: Placed[]): Promise<void> {
  try {
    await link(from, to);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') throw wouldOverwrite(to);
    await checkFree(to, false);
    await rename(from, to);
  }
  placed.push({ target: to, kept: undefined });
  await rm(from, { force: true });
}

/** Puts a new file in the place of what is there, which stays kept under a second name; never of a folder. */
async function replace(from: string, to: string, placed: Placed[]): Promise<void> {
  await checkFree(to, true);
  const kept = `${from}.kept`;
  const isKept = await keep(to, kept);
  if (isKept) placed.push({ target: to, kept });
  await rename(from, to);
  if (!isKept) placed.push({ target: to, kept: undefined });
}

/** Gives a file a second name; where a disk has no links, it moves out of the way. False where there is no file. */
async function keep(path: string, kept: string): Promise<boolean> {
  try {
    await link(path, kept).catch(() => rename(path, kept));
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return false;
    throw error;
  }
}

function wouldOverwrite(target: string): Fail {
  return new Fail(
    'would-overwrite',
    '--out',
    `${target} is there already; nothing was written`,
    'Choose another --out folder, or add --force to replace it.',
    { path: target },
  );
}

function explain(folder: string, error: unknown): Fail {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'EEXIST' || code === 'ENOTDIR') {
    return cannotWrite(folder, 'is not a folder', 'Name a folder after --out.');
  }
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') {
    return cannotWrite(folder, 'may not be written to', 'Name a folder of yours after --out.');
  }
  if (code === 'ENOSPC')
    return cannotWrite(folder, 'is on a full disk', 'Make room, or choose another disk.');
  return cannotWrite(
    folder,
    `can't be written to (${code ?? String(error)})`,
    'Choose another --out folder.',
  );
}

function cannotWrite(path: string, message: string, remedy: string): Fail {
  return new Fail('cannot-write', '--out', `${path} ${message}; nothing was written`, remedy, { path });
}

function cannotRestore({ target, kept }: Placed): Fail {
  return new Fail(
    'cannot-write',
    '--out',
    `${target} was being replaced when the disk failed`,
    `What it was is kept as ${kept}: rename it back, then choose another --out folder.`,
    { path: target, kept },
  );
}
