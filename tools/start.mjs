// The main job on one job file: builds, says what the wheels are and what to measure next, writes the part file.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';

const file = process.argv[2] ?? 'demo-data/slide-projector.json';
const isDemo = process.argv[2] === undefined;
const folder = 'out';

run(['node_modules/vite/bin/vite.js', 'build', '--ssr', 'src/cli/main.ts', '--logLevel', 'warn']);
console.log(isDemo ? `An invented demo job: ${file}\n` : `${file}\n`);
run(['dist/sparetooth.js', 'identify', file]);

const wheel = chooseWheel(file);
if (wheel !== undefined) {
  console.log('');
  // Only this script's own folder is written over: a second start must not stop at the first one's files.
  run(['dist/sparetooth.js', 'make', file, '--wheel', wheel, '--out', folder, '--force']);
}
console.log(
  isDemo
    ? `
With your own readings: copy ${file}, change its numbers, and run
  npm start -- YOUR-FILE.json`
    : `
The command by itself: node dist/sparetooth.js --help`,
);

function run(args) {
  const { status } = spawnSync(process.execPath, args, { stdio: 'inherit' });
  if (status !== 0) process.exit(status ?? 1);
}

/** The first damaged or lost wheel with a tooth count, else the first counted one: identify has checked the file. */
function chooseWheel(path) {
  if (!existsSync(path)) return undefined;
  const wheels = JSON.parse(readFileSync(path, 'utf8').replace(/^\uFEFF/, '')).wheels ?? [];
  const counted = wheels.filter((one) => (one.readings ?? []).some((reading) => reading.of === 'teeth'));
  const chosen = counted.find((one) => one.state === 'damaged' || one.state === 'lost') ?? counted[0];
  return chosen?.id;
}
