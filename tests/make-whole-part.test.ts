import { describe, expect, test } from 'vitest';
import { Fail, type Job, make, parseJob, shapePart } from '../src/index.ts';
import { checkMesh } from '../src/solid/check-mesh.ts';
import { readStl } from './formats/read-stl.ts';

const wheel = { teeth: 30, moduleMm: 0.5, faceWidthMm: 3 };
const pinion = { teeth: 10, moduleMm: 0.5, profileShift: 0.4, faceWidthMm: 5 };

/** An invented compound gear: a wheel with a pinion above it, and what a test changes. */
function jobWith(
  first: object = {},
  second: object = {},
  more: readonly object[] = [],
  mate: object = {},
): Job {
  return parseJob(
    JSON.stringify({
      format: 'sparetooth-job',
      version: 1,
      invented: true,
      wheels: [
        { id: 'big', part: 'cluster', spec: { ...wheel, ...first } },
        { id: 'small', part: 'cluster', spec: { ...pinion, ...second }, ...mate },
        ...more,
      ],
    }),
  ).job;
}

const volumeOf = (job: Job, wheelId: string, isAlone = false): number => {
  const { files } = make(job, { wheelId, formats: ['stl'], isAlone });
  return checkMesh(readStl(files[0].bytes).mesh).volume;
};

const failOf = (work: () => unknown): unknown => {
  try {
    work();
  } catch (error) {
    return error;
  }
  return undefined;
};

describe('a wheel of a compound gear', () => {
  const bore = { shape: 'round', diameterMm: 2 };
  const job = jobWith({ bore, offsetMm: 0 }, { offsetMm: 3 });

  test('is made with the others that are one piece with it, and the file has the part’s name', () => {
    const part = make(job, { wheelId: 'small', formats: ['stl', 'step'] });
    expect(part.wheelIds).toEqual(['small', 'big']);
    expect(part.files.map(({ name }) => name)).toEqual(['cluster.stl', 'cluster.step']);
    expect(part.warnings[0]).toBe('One piece: small and big are in this file together.');
    const { mesh } = readStl(part.files[0].bytes);
    expect(checkMesh(mesh)).toMatchObject({ isClosed: true, genus: 1 });
    // The asked wheel's lower face lies at 0: the other one below it.
    const heights = mesh.positions.filter((_, k) => k % 3 === 2);
    expect([Math.min(...heights), Math.max(...heights)]).toEqual([-3, 5]);
  });

  test('holds as much from whichever wheel it is asked for, and as much as its wheels hold', () => {
    const whole = volumeOf(job, 'big');
    expect(Math.abs(volumeOf(job, 'small') / whole - 1)).toBeLessThan(1e-6);
    const hole = Math.PI * 5;
    expect(
      Math.abs((volumeOf(job, 'big', true) + volumeOf(job, 'small', true) - hole) / whole - 1),
    ).toBeLessThan(1e-4);
  });

  test('can be made alone, and the maker is told what is missing', () => {
    const part = make(job, { wheelId: 'big', formats: ['stl'], isAlone: true });
    expect(part.wheelIds).toEqual(['big']);
    expect(part.files[0].name).toBe('big.stl');
    expect(part.warnings).toContain('small is one piece with this wheel, and not in this file.');
  });

  test('is shown whole', () => {
    const heights = shapePart(job, { wheelId: 'big' }).mesh.positions.filter((_, k) => k % 3 === 2);
    expect(Math.max(...heights)).toBe(8);
  });

  test('stands where it was read to stand, with a neck where nothing else joins it', () => {
    const apart = jobWith({ bore, offsetMm: 0 }, {}, [], { readings: [{ of: 'face-offset', mm: 4.5 }] });
    const { warnings, files } = make(apart, { wheelId: 'big', formats: ['stl'] });
    expect(warnings.join(' ')).toContain('What joins big and small was not measured: a neck of 3.');
    const heights = readStl(files[0].bytes).mesh.positions.filter((_, k) => k % 3 === 2);
    expect(Math.max(...heights)).toBe(9.5);
  });

  test('without any height stands on the others, and that is said', () => {
    const { warnings } = make(jobWith({ bore }), { wheelId: 'big', formats: ['stl'] });
    expect(warnings.join(' ')).toContain('How high the teeth of small stand on the part was not measured');
  });

  test('has the bore that was measured on the other', () => {
    const read = jobWith({ offsetMm: 0 }, { offsetMm: 3 }, [], { readings: [{ of: 'shaft', mm: 2 }] });
    const part = make(read, { wheelId: 'big', formats: ['stl'] });
    expect(checkMesh(readStl(part.files[0].bytes).mesh).genus).toBe(1);
    expect(part.warnings.join(' ')).not.toContain('has no bore');
  });

  test('leaves out a wheel that nothing is known of, and says so first', () => {
    const lacking = jobWith({ bore }, { teeth: undefined, moduleMm: undefined });
    const counted = jobWith({ bore }, { moduleMm: undefined });
    for (const one of [lacking, counted]) {
      const { warnings, wheelIds, files } = make(one, { wheelId: 'big', formats: ['stl'] });
      expect(wheelIds).toEqual(['big']);
      expect(files[0].name).toBe('big.stl');
      expect(warnings[0]).toBe('small is one piece with this wheel, and not in this file.');
    }
  });

  test('leaves out what can not be made, and says so', () => {
    const belted = jobWith({ bore }, {}, [{ id: 'pulley', part: 'cluster', kind: 'pulley' }]);
    const { warnings, wheelIds } = make(belted, { wheelId: 'big', formats: ['stl'] });
    expect(wheelIds).toEqual(['big', 'small']);
    expect(warnings).toContain('pulley is one piece with this wheel, and not in this file.');
  });

  test('is refused by the other wheel’s place in the job where that one is at fault', () => {
    const wide = jobWith({ bore }, { hubs: [{ side: 'top', diameterMm: 9, lengthMm: 2 }] });
    const fail = failOf(() => make(wide, { wheelId: 'big' }));
    expect(fail).toBeInstanceOf(Fail);
    expect(fail).toMatchObject({ code: 'bad-geometry', field: 'wheels[1].spec.hubs' });
  });
});

describe('features of a spec', () => {
  const all = {
    bore: { shape: 'spline', diameterMm: 3, count: 6, depthMm: 0.3, widthMm: 0.6 },
    hubs: [{ side: 'top', diameterMm: 6, lengthMm: 3 }],
    web: { thicknessMm: 1.2, hubDiameterMm: 6, rimDiameterMm: 12 },
    holes: { count: 5, diameterMm: 2, circleDiameterMm: 9 },
    sector: { teeth: 20 },
    phaseDeg: 15,
    phaseMark: { side: 'bottom', diameterMm: 0.4, depthMm: 0.3 },
    chamferMm: 0.1,
  };
  const jobOf = (spec: object): Job =>
    parseJob(
      JSON.stringify({
        format: 'sparetooth-job',
        version: 1,
        invented: true,
        wheels: [{ id: 'one', spec: { ...wheel, ...spec } }],
      }),
    ).job;

  test('reach the part: five lightening holes and the bore go through', () => {
    const { files } = make(jobOf(all), { wheelId: 'one', formats: ['stl'] });
    expect(checkMesh(readStl(files[0].bytes).mesh)).toMatchObject({
      isClosed: true,
      degenerate: 0,
      genus: 6,
    });
  });

  test('a set-screw hole and a flange do too', () => {
    const spec = {
      bore: { shape: 'd', diameterMm: 3, flatMm: 2.5 },
      hubs: [{ side: 'top', diameterMm: 8, lengthMm: 5 }],
      crossHole: { diameterMm: 1.5 },
      flanges: [{ side: 'bottom', diameterMm: 18, thicknessMm: 1 }],
    };
    const { files } = make(jobOf(spec), { wheelId: 'one', formats: ['stl'] });
    expect(checkMesh(readStl(files[0].bytes).mesh)).toMatchObject({ isClosed: true, genus: 2 });
  });

  test.each([
    [{ web: { hubDiameterMm: 6, rimDiameterMm: 12 } }, 'web.thicknessMm'],
    [{ holes: { count: 5, diameterMm: 2 } }, 'holes.circleDiameterMm'],
    [{ sector: {} }, 'sector.teeth'],
    [{ crossHole: { side: 'top' } }, 'crossHole.diameterMm'],
    [{ phaseMark: { diameterMm: 1 } }, 'phaseMark.depthMm'],
    [{ flanges: [{ diameterMm: 18, thicknessMm: 1 }] }, 'flanges[0].side'],
    [{ bore: { shape: 'spline', diameterMm: 3, count: 6, depthMm: 0.3 } }, 'bore.widthMm'],
    [{ bore: { shape: 'knurl', diameterMm: 3, depthMm: 0.3 } }, 'bore.count'],
  ])('%j lacks a size, and is refused by its place', (spec, key) => {
    expect(failOf(() => make(jobOf(spec), { wheelId: 'one' }))).toMatchObject({
      code: 'bad-value',
      field: `wheels[0].spec.${key}`,
    });
  });
});
