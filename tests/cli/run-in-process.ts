import { runCommandLine } from '../../src/cli/run-command-line.ts';

export interface Ran {
  readonly code: 0 | 1 | 2;
  readonly out: string;
  readonly err: string;
}

/** Runs one command line inside the test, with a text or bytes as standard input. */
export async function runInProcess(words: readonly string[], input: string | Uint8Array = ''): Promise<Ran> {
  let out = '';
  let err = '';
  const bytes = typeof input === 'string' ? new TextEncoder().encode(input) : input;
  const code = await runCommandLine(words, {
    standardInput: (async function* () {
      yield bytes;
    })(),
    print: (text) => {
      out += text;
    },
    printError: (text) => {
      err += text;
    },
  });
  return { code, out, err };
}
