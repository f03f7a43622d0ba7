import { fileURLToPath } from 'node:url';
import { Fail } from '../index.ts';
import type { CommandOutput } from './command-output.ts';
import { servePage } from './serve-page.ts';

export interface ServeOptions {
  readonly port: string;
}

/** Always the same, so that a browser finds its work again. */
export const defaultPort = 8437;

/**
 * The verb `serve`: gives the page to this machine until it is stopped (Ctrl-C). The page lies in `page/` beside the
 * program. Says where it is as soon as it is.
 */
export async function serveCommand(
  options: ServeOptions,
  print: (text: string) => void,
): Promise<CommandOutput> {
  const port = readPort(options.port);
  const served = await servePage(fileURLToPath(new URL('page', import.meta.url)), port);
  print(`Sparetooth is at ${served.address}\nOnly this machine can see it. Ctrl-C stops it.\n`);
  await new Promise<void>((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
  await served.stop();
  return { json: null, lines: ['Stopped.'], notes: [], exitCode: 0 };
}

function readPort(typed: string): number {
  const port = /^\d{1,5}$/.test(typed) ? Number(typed) : 0;
  if (port >= 1 && port <= 65_535) return port;
  throw new Fail(
    'bad-usage',
    '--port',
    `${typed.slice(0, 40)} is no port`,
    `Give a whole number from 1 to 65535, or leave --port out for ${defaultPort}.`,
  );
}
