import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { checkPartsSize, checkSize, Fail } from '../index.ts';

/**
 * The bytes of a job file; `-` is standard input. A file that is too large is refused by its size, before it is
 * read, and a stream without end as soon as it has given more than a job holds.
 *
 * Throws Fail `no-such-file` or `too-large`.
 */
export async function readInput(path: string, standardInput: AsyncIterable<Uint8Array>): Promise<Uint8Array> {
  if (path === '-') return await readAll(standardInput, checkSize);
  return await readFile(path, 'JOB', checkSize);
}

/** The bytes of a parts file, which may be larger than a job. Throws Fail `no-such-file` or `too-large`. */
export async function readParts(path: string): Promise<Uint8Array> {
  return await readFile(path, '--parts', checkPartsSize);
}

async function readFile(path: string, field: string, check: (bytes: number) => void): Promise<Uint8Array> {
  try {
    const found = await stat(path);
    if (found.isDirectory()) throw noFile(path, field, 'is a folder', 'Name the file in it.');
    check(found.size);
    return await readAll(createReadStream(path), check);
  } catch (error) {
    throw error instanceof Fail ? error : explain(path, field, error);
  }
}

async function readAll(
  stream: AsyncIterable<Uint8Array>,
  check: (bytes: number) => void,
): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of stream) {
    chunks.push(chunk);
    length += chunk.length;
    check(length);
  }
  const bytes = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

function explain(path: string, field: string, error: unknown): Fail {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'ENOENT' || code === 'ENOTDIR') {
    return noFile(
      path,
      field,
      'is not there',
      field === 'JOB' ? 'Check the name, or give - to read the job from standard input.' : 'Check the name.',
    );
  }
  if (code === 'EACCES' || code === 'EPERM') {
    return noFile(path, field, 'may not be read', 'Allow reading it, or copy it to a folder of yours.');
  }
  return noFile(
    path,
    field,
    `can't be read (${code ?? String(error)})`,
    'Copy it to another place and try again.',
  );
}

function noFile(path: string, field: string, message: string, remedy: string): Fail {
  return new Fail('no-such-file', field, `${path} ${message}`, remedy, { path });
}
