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
 * at all; without `force` nothing that is there is replaced, not even what appears meanwhile. What was put there
 * before a failure is taken away again, replaced files apart.
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
  const placed: string[] = [];
  let isNewFolder = false;
  try {
    isNewFolder = (await mkdir(folder, { recursive: true })) !== undefined;
    for (let k = 0; k < files.length; k++) await writeFile(temporary[k], files[k].bytes, { flag: 'wx' });
    for (let k = 0; k < files.length; k++) {
      await place(temporary[k], targets[k], force);
      if (!force) placed.push(targets[k]);
    }
    return targets;
  } catch (error) {
    await Promise.all([...temporary, ...placed].map((path) => rm(path, { force: true }).catch(() => {})));
    if (isNewFolder) await rmdir(folder).catch(() => {});
    throw error instanceof Fail ? error : explain(folder, error);
  }
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
async function place(from: string, to: string, force: boolean): Promise<void> {
  if (force) return await rename(from, to);
  try {
    await link(from, to);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') throw wouldOverwrite(to);
    await checkFree(to, force);
    return await rename(from, to);
  }
  await rm(from);
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
