import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { inventedJob } from './invented-job.ts';

let folder = '';
const text = JSON.stringify(inventedJob);

// Built here, as `npm run build` does, so that an old build can't stand in for the sources.
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'sparetooth-'));
  await build({
    configFile: 'vite.config.ts',
    logLevel: 'error',
    build: { ssr: 'src/cli/main.ts', outDir: join(folder, 'dist') },
  });
  writeFileSync(join(folder, 'package.json'), '{"type":"module"}');
  writeFileSync(join(folder, 'job.json'), text);
}, 120_000);
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

/** The built file as a process of its own, in a folder without node_modules. */
function run(words: readonly string[], input = ''): { code: number | null; out: string; err: string } {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(folder, 'dist', 'sparetooth.js'), ...words],
    {
      cwd: folder,
      input,
      encoding: 'utf8',
    },
  );
  return { code: status, out: stdout, err: stderr };
}

test('a job file gives an answer, exit code 0, nothing on standard error', () => {
  const { code, out, err } = run(['identify', 'job.json', '--json']);
  expect([code, err]).toEqual([0, '']);
  expect(JSON.parse(out).wheels).toHaveLength(2);
});

test('a job on standard input makes a part file', () => {
  const { code, err } = run(['make', '-', '--wheel', 'p1', '--out', 'parts', '--as', 'stl'], text);
  expect([code, err]).toEqual([0, '']);
  expect(existsSync(join(folder, 'parts'))).toBe(true);
});

test('a broken job is exit code 2, standard output empty', () => {
  const { code, out, err } = run(['identify', '-'], text.slice(0, 200));
  expect([code, out]).toEqual([2, '']);
  expect(err).toContain('ends before');
});

test('no answer is exit code 1', () => {
  expect(run(['identify', '-'], '{"format":"sparetooth-job","version":1}').code).toBe(1);
});

test('Ctrl-C on a search that never ends gives the best so far', async () => {
  const child = spawn(process.execPath, [
    join(folder, 'dist', 'sparetooth.js'),
    ...['train', '--ratio', '3.14159265', '--pairs', '5', '--teeth', '12-240', '--seconds', '3600', '--json'],
  ]);
  let out = '';
  let err = '';
  let isStopped = false;
  child.stdout.on('data', (chunk) => {
    out += chunk;
  });
  child.stderr.on('data', (chunk) => {
    err += chunk;
    if (!isStopped && err.includes('searched after')) {
      isStopped = true;
      child.kill('SIGINT');
    }
  });
  const code = await new Promise((resolve) => child.on('close', resolve));
  expect(err).toContain('Ctrl-C');
  expect(code).toBe(0);
  expect(JSON.parse(out).proven).toBe(false);
  expect(JSON.parse(out).trains).toHaveLength(20);
});
