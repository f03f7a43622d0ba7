// Runs the built benches: `npm run bench`, one of them with `npm run bench -- identity 5000 500`, briefly with --brief.
import { readdirSync } from 'node:fs';

const args = process.argv.slice(2).filter((arg) => arg !== '--brief');
const brief = process.argv.includes('--brief');
const folder = new URL('../.cache/bench/', import.meta.url);
const [wanted, ...rest] = args;
let ran = 0;
for (const name of readdirSync(folder)
  .filter((file) => file.endsWith('.js'))
  .sort()) {
  if (wanted && name !== `${wanted}.js`) continue;
  const bench = await import(new URL(name, folder));
  if (typeof bench.run !== 'function') continue;
  ran++;
  await bench.run(brief, rest);
}
if (ran === 0) {
  console.error(wanted ? `no bench is called ${wanted}` : 'no benches were built');
  process.exit(2);
}
