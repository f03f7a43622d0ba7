// Installs from the lock file when node_modules is missing or older than the lock. Node built-ins only,
// because it runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';

const stampFile = 'node_modules/.sparetooth-lock';
const wanted = createHash('sha256')
  .update(readFileSync('package-lock.json'))
  .update(process.version)
  .digest('hex');

if (!existsSync(stampFile) || readFileSync(stampFile, 'utf8') !== wanted) {
  console.error('Installing what is needed (npm ci) …');
  // --include=dev: with NODE_ENV=production npm would leave the build tools out and the stamp would hide it.
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund'];
  const npm = process.env.npm_execpath;
  const run = npm
    ? spawnSync(process.execPath, [npm, ...args], { stdio: 'inherit' })
    : spawnSync('npm', args, { stdio: 'inherit', shell: process.platform === 'win32' });
  if (run.status !== 0) {
    console.error('Could not install. Is the npm registry reachable? Then try again.');
    process.exit(run.status ?? 1);
  }
  writeFileSync(stampFile, wanted);
}
