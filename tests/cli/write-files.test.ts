import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import * as disk from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { writeFiles } from '../../src/cli/write-files.ts';

vi.mock('node:fs/promises', async (load) => {
  const real = await load<typeof disk>();
  return { ...real, link: vi.fn(real.link), rename: vi.fn(real.rename) };
});

const file = (name: string, text: string) => ({ name, bytes: new TextEncoder().encode(text) });
let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'sparetooth-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

test('files appear whole in a folder made for them, and nothing else does', async () => {
  const out = join(folder, 'a', 'b');
  const paths = await writeFiles(out, [file('one.stl', '1'), file('two.3mf', '22')], false);
  expect(paths).toEqual([join(out, 'one.stl'), join(out, 'two.3mf')]);
  expect(readdirSync(out).sort()).toEqual(['one.stl', 'two.3mf']);
  expect(readFileSync(paths[1], 'utf8')).toBe('22');
});

test('one name that is taken stops all, before any is written', async () => {
  writeFileSync(join(folder, 'two.3mf'), 'mine');
  const files = [file('one.stl', '1'), file('two.3mf', '22')];
  await expect(writeFiles(folder, files, false)).rejects.toMatchObject({ code: 'would-overwrite' });
  expect(readdirSync(folder)).toEqual(['two.3mf']);
  expect(readFileSync(join(folder, 'two.3mf'), 'utf8')).toBe('mine');
});

test('with force, what is there is replaced', async () => {
  writeFileSync(join(folder, 'one.stl'), 'mine');
  await writeFiles(folder, [file('one.stl', '1')], true);
  expect(readFileSync(join(folder, 'one.stl'), 'utf8')).toBe('1');
  expect(readdirSync(folder)).toEqual(['one.stl']);
});

test('a folder of that name is never replaced', async () => {
  mkdirSync(join(folder, 'one.stl'));
  await expect(writeFiles(folder, [file('one.stl', '1')], true)).rejects.toMatchObject({
    code: 'cannot-write',
  });
});

test('a failure half way leaves nothing behind, the new folder neither', async () => {
  const out = join(folder, 'new');
  const broken = { name: 'two.3mf', bytes: 7 as unknown as Uint8Array };
  await expect(writeFiles(out, [file('one.stl', '1'), broken], false)).rejects.toThrow();
  expect(existsSync(out)).toBe(false);
});

describe('with force, a failure half way leaves what was there as it was', () => {
  /** A file in whose place a folder appears while the others are being written. */
  const blocked = (name: string) => ({
    name,
    get bytes() {
      mkdirSync(join(folder, name), { recursive: true });
      return new Uint8Array(1);
    },
  });
  const refuse = (code: string) => Object.assign(new Error(code), { code });
  const files = () => [file('one.stl', 'new'), file('also.stl', 'new'), blocked('two.3mf')];
  beforeEach(() => writeFileSync(join(folder, 'one.stl'), 'mine'));
  const expectUntouched = (): void => {
    expect(readFileSync(join(folder, 'one.stl'), 'utf8')).toBe('mine');
    expect(readdirSync(folder).sort()).toEqual(['one.stl', 'two.3mf']);
  };

  test('where a folder stands in the way of the last file', async () => {
    await expect(writeFiles(folder, files(), true)).rejects.toThrow('two.3mf is a folder');
    expectUntouched();
  });

  test('where the disk knows no links', async () => {
    const reject = async (): Promise<void> => Promise.reject(refuse('EPERM'));
    vi.mocked(disk.link).mockImplementationOnce(reject).mockImplementationOnce(reject);
    await expect(writeFiles(folder, files(), true)).rejects.toThrow('two.3mf is a folder');
    expectUntouched();
  });

  test('where a file can not be given its name', async () => {
    const { rename } = await vi.importActual<typeof disk>('node:fs/promises');
    vi.mocked(disk.rename).mockImplementationOnce(rename).mockRejectedValueOnce(refuse('ENOSPC'));
    const two = [file('one.stl', 'new'), file('two.3mf', 'new')];
    await expect(writeFiles(folder, two, true)).rejects.toThrow('full disk; nothing was written');
    expect(readFileSync(join(folder, 'one.stl'), 'utf8')).toBe('mine');
    expect(readdirSync(folder)).toEqual(['one.stl']);
  });

  test('and where even that fails, says under which name the old file is kept', async () => {
    const { rename } = await vi.importActual<typeof disk>('node:fs/promises');
    vi.mocked(disk.rename)
      .mockImplementationOnce(rename)
      .mockRejectedValueOnce(refuse('EIO'))
      .mockRejectedValueOnce(refuse('EIO'));
    const two = [file('one.stl', 'new'), file('two.3mf', 'new')];
    const fail = await writeFiles(folder, two, true).catch((error) => error);
    expect(fail.code).toBe('cannot-write');
    expect(fail.remedy).toContain(fail.details.kept);
    expect(readFileSync(fail.details.kept, 'utf8')).toBe('mine');
  });
});

test('a file in the place of the folder is said so', async () => {
  const taken = join(folder, 'taken');
  writeFileSync(taken, 'mine');
  for (const out of [taken, join(taken, 'deeper')]) {
    await expect(writeFiles(out, [file('one.stl', '1')], false)).rejects.toMatchObject({
      code: 'cannot-write',
    });
  }
});

test.each(['../up.stl', 'a/b.stl', '..', 'a\\b.stl'])(
  '%s is no file name, and a mistake of ours',
  async (name) => {
    await expect(writeFiles(folder, [file(name, '1')], false)).rejects.toThrow('not a file name');
  },
);
