#!/usr/bin/env node
import { runCommandLine } from './run-command-line.ts';

// A reader that has seen enough (`| head`) closes the pipe: that is no failure of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

process.exitCode = await runCommandLine(process.argv.slice(2), {
  standardInput: process.stdin,
  print: (text) => process.stdout.write(text),
  printError: (text) => process.stderr.write(text),
});
