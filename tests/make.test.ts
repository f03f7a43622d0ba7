import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { identify, type Job, make, parseJob } from '../src/index.ts';
import { identifyWheel } from '../src/readings/identify-wheel.ts';
import { checkMesh } from '../src/solid/check-mesh.ts';
import { readStl } from './formats/read-stl.ts';
import { makeSpec } from './involute/make-spec.ts';
import { exactVolume } from './solid/exact-volume.ts';

vi.mock('../src/readings/identify-wheel.ts', async (load) => {
  const real = await load<{ identifyWheel: typeof identifyWheel }>();
  return { ...real, identifyWheel: vi.fn(real.identifyWheel) };
});

describe('an answer that is there already', () => {
  test.each(readdirSync('demo-data').filter((name) => name.endsWith('.json')))(
    '%s: makes the same part, and nothing is identified again',
    (name) => {
      const { job } = parseJob(readFileSync(`demo-data/${name}`));
      for (const answer of identify(job).wheels.filter((wheel) => wheel.candidates.length > 0)) {
        const afresh = make(job, { wheelId: answer.id, formats: ['stl'], chordErrorMm: 0.05 });
        vi.mocked(identifyWheel).mockClear();
        expect(make(job, { wheelId: answer.id, formats: ['stl'], chordErrorMm: 0.05, answer })).toEqual(
          afresh,
        );
        expect(identifyWheel).not.toHaveBeenCalled();
      }
    },
  );

  test('must be that of the wheel: else it is a mistake of the program', () => {
    const { job } = parseJob(readFileSync('demo-data/film-splicer.json'));
    const [answer] = identify(job).wheels;
    expect(() => make(job, { wheelId: answer.id, answer: { ...answer, id: 'another' } })).toThrow('another');
  });
});

describe('a bore in the spec that lacks a length', () => {
  const jobWith = (bore: object): Job =>
    parseJob(
      JSON.stringify({
        format: 'sparetooth-job',
        version: 1,
        invented: true,
        wheels: [{ id: 'a' }, { id: 'b', spec: { teeth: 20, moduleMm: 1, bore } }],
      }),
    ).job;
  test.each([
    [{ shape: 'round' }, 'diameterMm'],
    [{ shape: 'd', diameterMm: 5 }, 'flatMm'],
    [{ shape: 'hex' }, 'acrossFlatsMm'],
  ])('%j is refused by its place in the job', (bore, key) => {
    expect(() => make(jobWith(bore), { wheelId: 'b' })).toThrow(
      expect.objectContaining({ code: 'bad-value', field: `wheels[1].spec.bore.${key}` }),
    );
  });
});

test.each([0.2, 0.3, 0.5, 1])(
  'triangles of a pinion hold what exact surfaces hold, to 0.05 percent: module %d',
  (module) => {
    const spec = { teeth: 8, moduleMm: module, profileShift: 0.4, faceWidthMm: 4, bore: { shape: 'none' } };
    const { job } = parseJob(
      JSON.stringify({ format: 'sparetooth-job', version: 1, invented: true, wheels: [{ id: 'a', spec }] }),
    );
    const { files } = make(job, { wheelId: 'a', formats: ['stl'] });
    const exact = exactVolume(
      {
        spec: makeSpec({ teeth: 8, module, profileShift: 0.4 }),
        faceWidth: 4,
        bore: { shape: 'none' },
        hubs: [],
        chamfer: 0,
      },
      1e-6,
    );
    expect(Math.abs(checkMesh(readStl(files[0].bytes).mesh).volume / exact - 1)).toBeLessThan(5e-4);
  },
);
