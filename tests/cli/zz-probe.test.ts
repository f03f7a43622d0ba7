import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { test } from 'vitest';
import { startRandom } from '../../src/numeric/random.ts';
import { fullJob } from '../job/full-job.ts';
import { listPlaces, valueAt } from '../job/mutate-job.ts';
import { runWords } from './run-words.ts';

test('probe', async () => {
  const jobs = [fullJob, ...readdirSync('demo-data').map((n) => JSON.parse(readFileSync(`demo-data/${n}`, 'utf8')))];
  const random = startRandom(5);
  const seen = new Map<string, number>();
  const slow: string[] = [];
  const dir = mkdtempSync('.cache/probe-');
  for (let k = 0; k < 260; k++) {
    const job = structuredClone(jobs[k % jobs.length]) as Record<string, unknown>;
    const places = listPlaces(job).filter((p) => typeof valueAt(job, p) === 'number' && p[0] === 'wheels');
    const n = 1 + Math.floor(random.uniform() * 3);
    for (let i = 0; i < n; i++) {
      const p = places[Math.floor(random.uniform() * places.length)];
      const old = valueAt(job, p) as number;
      const next = Number.isInteger(old) && /teeth|count|pitches|missing/.test(p.join()) ? Math.floor(1 + 10 ** (random.uniform() * 3)) : Number(((old || 1) * 10 ** (random.uniform() * 8 - 4)).toPrecision(4));
      (valueAt(job, p.slice(0, -1)) as Record<string, unknown>)[String(p.at(-1))] = next;
    }
    const text = JSON.stringify(job);
    const id = ((job.wheels as { id: string }[])[0]).id;
    for (const words of [['identify', '-'], ['identify', '-', '--json'], ['make', '-', '--wheel', id, '--out', dir, '--force']]) {
      const t = performance.now();
      try {
        const r = await runWords(words, text);
        const key = `${words[0]} ${r.exitCode}`;
        seen.set(key, (seen.get(key) ?? 0) + 1);
        if (r.exitCode === 0 && !words.includes('--json')) {
          const wide = r.out.split('\n').filter((l) => l.length > 80);
          if (wide.length) console.log('WIDE', wide[0]);
          if (/NaN|undefined|Infinity/.test(r.out)) console.log('NAN', r.out.slice(0, 800), text.slice(0, 100));
        }
        if (words.includes('--json') && r.exitCode < 2) { if (/null/.test(r.out.replace(/"(tipDiameterMm|rootDiameterMm|referenceDiameterMm|baseDiameterMm)": null/g, ''))) console.log('NULL', k, r.out.split('\n').filter((l) => /null/.test(l)).slice(0, 3)); }
        if (words[0]==='make' && r.exitCode === 2 && !/limit|outside/.test(r.err)) console.log('MAKE2', r.err.slice(0, 300));
      } catch (e) {
        const m = `THROW ${words[0]} ${(e as Error).stack?.split('\n').slice(0, 4).join(' | ')}`;
        seen.set(m, (seen.get(m) ?? 0) + 1);
      }
      const ms = performance.now() - t;
      if (ms > 400) slow.push(`${words[0]} ${ms.toFixed(0)}`);
    }
  }
  rmSync(dir, { recursive: true });
  console.log([...seen].join('\n'));
  console.log(slow.length, slow.slice(0, 20).join(', '));
}, 500000);
