import { runCommandLine } from '../../src/cli/run-command-line.ts';

export interface Ran {
  readonly exitCode: 0 | 1 | 2;
  readonly out: string;
  readonly err: string;
}

/** Runs a command line in this process; `input` is what stands on standard input. */
export async function runWords(words: readonly string[], input: string | Uint8Array = ''): Promise<Ran> {
  let out = '';
  let err = '';
  const bytes = typeof input === 'string' ? new TextEncoder().encode(input) : input;
  const exitCode = await runCommandLine(words, {
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
  return { exitCode, out, err };
}
