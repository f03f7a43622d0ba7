// Builds all of dist/: the command line, the page beside it, and the page as one file. With --if-stale only where a
// source changed since the last build; with --cli the command line alone.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const stampFile = '.cache/built-from';
const outputs = ['dist/sparetooth.js', 'dist/page/index.html', 'dist/sparetooth.html'];
const steps = [
  ['--ssr', 'src/cli/main.ts'],
  ['--config', 'vite.page.config.ts'],
  ['--config', 'vite.single.config.ts'],
];

if (process.argv.includes('--cli')) {
  build(steps[0]);
} else {
  const from = hashSources();
  const isBuilt = outputs.every((path) => existsSync(path)) && existsSync(stampFile);
  if (!process.argv.includes('--if-stale') || !isBuilt || readFileSync(stampFile, 'utf8') !== from) {
    // A build that is stopped halfway must not pass for a whole one.
    rmSync(stampFile, { force: true });
    rmSync('dist', { recursive: true, force: true });
    for (const args of steps) build(args);
    mkdirSync('.cache', { recursive: true });
    writeFileSync(stampFile, from);
  }
}

function build(args) {
  const { status } = spawnSync(
    process.execPath,
    ['node_modules/vite/bin/vite.js', 'build', ...args, '--logLevel', 'warn'],
    // Inside a test run NODE_ENV is `test`, and the page would be built with the slow, talkative React.
    { stdio: 'inherit', env: { ...process.env, NODE_ENV: 'production' } },
  );
  if (status !== 0) process.exit(status ?? 1);
}

/** One hash over the name and content of everything that a build reads. */
function hashSources() {
  const files = [
    'package.json',
    'package-lock.json',
    'tsconfig.json',
    ...list('.', /^vite\..*config\.ts$|^vite\.config\.ts$/),
  ];
  for (const folder of ['src', 'gear-library']) {
    for (const entry of readdirSync(folder, { withFileTypes: true, recursive: true })) {
      if (entry.isFile()) files.push(join(entry.parentPath, entry.name));
    }
  }
  const hash = createHash('sha256').update(process.version);
  for (const file of files.sort()) hash.update(`\n${file}\n`).update(readFileSync(file));
  return hash.digest('hex');
}

function list(folder, pattern) {
  return readdirSync(folder).filter((name) => pattern.test(name));
}
