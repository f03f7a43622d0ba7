// Builds, then serves the page until Ctrl-C; options (--port N) go to the server. With a job file it says what the wheels
// are and what to measure next instead, and writes the part file.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';

const [file] = process.argv.slice(2);
if (file === undefined || file.startsWith('-')) await servePage(process.argv.slice(2));
else workOut(file, 'out');

async function servePage(options) {
  run(['tools/build.mjs', '--if-stale']);
  console.log('The same page as one file, opened by double click: dist/sparetooth.html\n');
  // In this process, so that Ctrl-C reaches the server and nothing else has to die first.
  process.argv.splice(2, process.argv.length, 'serve', ...options);
  await import('../dist/sparetooth.js');
}

function workOut(path, folder) {
  run(['tools/build.mjs', '--cli']);
  console.log(`${path}\n`);
  run(['dist/sparetooth.js', 'identify', path]);
  const wheel = chooseWheel(path);
  if (wheel !== undefined) {
    console.log('');
    // Only this script's own folder is written over: a second start must not stop at the first one's files.
    run(['dist/sparetooth.js', 'make', path, '--wheel', wheel, '--out', folder, '--force']);
  }
  console.log('\nThe command by itself: node dist/sparetooth.js --help');
}

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
