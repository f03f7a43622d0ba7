#!/usr/bin/env node
import { runCommandLine } from './run-command-line.ts';

// A reader that has seen enough (`| head`) closes the pipe: that is no failure of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

// Not awaited here: what `make` loads later shares code with this file, and would wait for its end.
void runCommandLine(process.argv.slice(2), {
  standardInput: process.stdin,
  print: (text) => process.stdout.write(text),
  printError: (text) => process.stderr.write(text),
}).then((exitCode) => {
  process.exitCode = exitCode;
});
