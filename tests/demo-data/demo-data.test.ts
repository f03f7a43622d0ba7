import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { identify, make, parseJob } from '../../src/index.ts';

const load = (name: string) => parseJob(readFileSync(`demo-data/${name}.json`, 'utf8')).job;
const wheelOf = (name: string, at = 0) => identify(load(name)).wheels[at];

describe('the demo jobs', () => {
  test('are all marked as invented and parse without notices', () => {
    const names = readdirSync('demo-data').filter((name) => name.endsWith('.json'));
    expect(names.length).toBeGreaterThanOrEqual(5);
    for (const name of names) {
      const { job, notices } = parseJob(readFileSync(`demo-data/${name}`, 'utf8'));
      expect(job.invented, name).toBe(true);
      expect(notices, name).toEqual([]);
    }
  });

  test('chart recorder: a third of the teeth gone, and still 60 teeth of module 0.5', () => {
    const wheel = wheelOf('chart-recorder');
    expect(wheel.candidates[0]).toMatchObject({ system: 'module', size: 0.5, teeth: 60 });
  });

  test('slide projector: outside over teeth plus two says 0.54, the answer is a shifted 0.5', () => {
    const wheel = wheelOf('slide-projector');
    expect(wheel.candidates[0]).toMatchObject({ system: 'module', size: 0.5 });
    expect(wheel.candidates[0].spec.profileShift).toBeGreaterThan(0.35);
  });

  test('label printer: 32 DP, though it looks like module 0.8', () => {
    expect(wheelOf('label-printer').pitch[0]).toMatchObject({ system: 'diametral-pitch', size: 32 });
  });

  test('weather drum: the mistyped span is found, with what was meant', () => {
    const wheel = wheelOf('weather-drum');
    expect(wheel.pitch[0]).toMatchObject({ system: 'module', size: 0.6 });
    expect(wheel.suspect[0]).toMatchObject({ reading: 4, repair: { kind: 'swapped-digits', value: 6.37 } });
    expect(make(load('weather-drum'), { wheelId: 'drum-gear' }).isTrial).toBe(true);
  });

  test('coin counter: the open outside points to 0.4, the split explains it', () => {
    const job = load('coin-counter');
    expect(wheelOf('coin-counter').pitch[0]).toMatchObject({ system: 'diametral-pitch', size: 64 });
    const unsplit = { ...job, wheels: job.wheels?.map((one) => ({ ...one, damage: [] })) };
    expect(identify(unsplit as typeof job).wheels[0].pitch[0]).toMatchObject({ system: 'module', size: 0.4 });
    const part = make(job, { wheelId: 'sorter' });
    expect(part.warnings.join(' ')).toContain("don't copy the bore");
    expect(part.files.map((file) => file.name)).toEqual([
      'sorter.stl',
      'sorter.3mf',
      'sorter.step',
      'sorter.dxf',
      'sorter.svg',
    ]);
  });

  test('film splicer: undecided, so what is made is a trial, with a plate of rivals', () => {
    const wheel = wheelOf('film-splicer');
    expect(wheel.verdict).toBe('undecided');
    const part = make(load('film-splicer'), { wheelId: 'feed' });
    expect(part.isTrial).toBe(true);
    expect(part.trialPlate?.marks.length).toBeGreaterThanOrEqual(2);
    expect(part.files.some((file) => file.name === 'feed-trial-plate.stl')).toBe(true);
  });
});
