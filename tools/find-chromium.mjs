// Prints the path of a Chromium for the page's tests. Where there is none it installs Debian's if it may (as root,
// with apt-get), else it says what to install and fails.
import { spawnSync } from 'node:child_process';
import { accessSync, constants, statSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const names = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'chrome'];
const places = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files\\Chromium\\Application\\chrome.exe',
];

let path = find();
if (!path && process.getuid?.() === 0 && run('apt-get', ['--version'])) {
  console.error('No Chromium is here: installing Debian’s (apt-get install chromium) …');
  run('apt-get', ['update']);
  run('apt-get', ['install', '--yes', '--no-install-recommends', 'chromium']);
  path = find();
}
if (!path) {
  console.error(
    'The page is tested in a real Chromium, and none was found. Install one (Debian: apt-get install chromium), or' +
      ' put the path of yours into CHROMIUM, and try again.',
  );
  process.exit(1);
}
console.log(path);

function find() {
  const named = process.env.CHROMIUM;
  if (named) return isProgram(named) ? named : undefined;
  const onPath = (process.env.PATH ?? '')
    .split(delimiter)
    .filter((folder) => folder !== '')
    .flatMap((folder) => names.map((name) => join(folder, name)));
  return [...onPath, ...places].find(isProgram);
}

function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

/** Its output goes to standard error: standard output is the answer. */
function run(program, args) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const quiet = args[0] === '--version';
  return (
    spawnSync(program, args, { env, stdio: ['ignore', quiet ? 'ignore' : 2, quiet ? 'ignore' : 2] })
      .status === 0
  );
}
