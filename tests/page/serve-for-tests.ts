import { execFileSync, spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { TestProject } from 'vitest/node';
import { servePage } from '../../src/cli/serve-page.ts';
import { findFreePort } from './find-free-port.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** The built page, served by the built program */
    readonly pageAddress: string;
    /** The keeper by itself */
    readonly keepAddress: string;
    /** The whole page as one file on disk */
    readonly singleAddress: string;
    readonly chromium: string;
  }
}

/**
 * Builds what is stale, serves it with the real program, finds a browser. Builds are processes of their own: inside a
 * test run NODE_ENV is `test`, which would give another page than people get.
 */
export default async function serveForTests(project: TestProject): Promise<() => Promise<void>> {
  const env = { ...process.env, NODE_ENV: 'production' };
  const node = (...args: string[]): string =>
    execFileSync(process.execPath, args, { encoding: 'utf8', env, stdio: ['ignore', 'pipe', 'inherit'] });
  node('tools/build.mjs', '--if-stale');
  node('tools/build.mjs', '--if-stale');
  node(
    'node_modules/vite/bin/vite.js',
    ...['build', '--config', 'tests/page/keep-harness/vite.config.ts', '--logLevel', 'warn'],
  );
  const keep = await servePage('.cache/keep-harness', await findFreePort());
  const page = await serveDist(await findFreePort());
  project.provide('chromium', node('tools/find-chromium.mjs').trim());
  project.provide('keepAddress', keep.address);
  project.provide('pageAddress', page.address);
  project.provide('singleAddress', pathToFileURL(resolve('dist/sparetooth.html')).href);
  return async () => {
    await keep.stop();
    page.stop();
  };
}

async function serveDist(port: number): Promise<{ address: string; stop: () => void }> {
  const server = spawn(process.execPath, ['dist/sparetooth.js', 'serve', '--port', String(port)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const address = await new Promise<string>((found, lost) => {
    server.once('exit', (code) => lost(new Error(`serve ended with ${code}`)));
    server.stdout.on('data', (said: Buffer) => {
      const [named] = /http:\S+/.exec(said.toString()) ?? [];
      if (named) found(named);
    });
  });
  return { address, stop: () => server.kill('SIGTERM') };
}
