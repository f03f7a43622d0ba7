// Everything that must hold, in one line for people and CI alike: types, lint and layers, unused code, build, tests.
// Each step runs; the first that fails stops the rest and says so. Nothing is skipped.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';

mkdirSync('.cache', { recursive: true });
const results = '.cache/test-results.json';
const steps = [
  ['types of the pure rooms', ['node_modules/typescript/bin/tsc', '-p', 'tsconfig.pure.json']],
  ['types', ['node_modules/typescript/bin/tsc', '-p', 'tsconfig.json']],
  ['lint and layers', ['node_modules/@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '.']],
  ['unused code', ['node_modules/knip/bin/knip.js']],
  ['build: command line, page, page as one file', ['tools/build.mjs']],
  ['a Chromium for the page', ['tools/find-chromium.mjs']],
  [
    'tests',
    [
      'node_modules/vitest/vitest.mjs',
      'run',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${results}`,
    ],
  ],
  [
    'benches, briefly: building',
    ['node_modules/vite/bin/vite.js', 'build', '--config', 'vite.bench.config.ts', '--logLevel', 'warn'],
  ],
  ['benches, briefly', ['tools/bench.mjs', '--brief']],
];

for (const [name, args] of steps) {
  const start = performance.now();
  console.log(`\n— ${name}`);
  const { status } = spawnSync(process.execPath, args, { stdio: 'inherit' });
  console.log(`  ${((performance.now() - start) / 1000).toFixed(1)} s`);
  if (status !== 0) {
    console.error(`\nFailed: ${name}`);
    process.exit(status ?? 1);
  }
}

const { numPassedTests, numFailedTests, numPendingTests } = JSON.parse(readFileSync(results, 'utf8'));
if (numPassedTests === 0 || numPendingTests > 0) {
  console.error(`No test ran, or some were skipped (${numPendingTests}).`);
  process.exit(1);
}
console.log(`\n${numPassedTests} passed, ${numFailedTests} failed`);
