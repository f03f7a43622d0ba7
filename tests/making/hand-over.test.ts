import { describe, expect, test } from 'vitest';
import { makers } from '../../gear-library/makers.ts';
import { materials } from '../../gear-library/materials.ts';
import { processes } from '../../gear-library/processes.ts';
import { handOver, partFormats } from '../../src/index.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { findSpan } from '../../src/involute/span.ts';
import { specOfFields } from '../../src/job/spec-fields.ts';
import { makeLastingJob } from './lasting-job.ts';

const quick = { wheelId: 'p1', chordErrorMm: 0.05, off: ['fineness'] };

describe('what a maker is handed', () => {
  test.each(makers.map((maker) => [maker.key, maker] as const))(
    '%s: just their files, a message, a list',
    (key, maker) => {
      const {
        part,
        handOver: handed,
        texts,
        hasSheet,
      } = handOver(makeLastingJob(), { ...quick, maker: key });
      const written = new Set(partFormats.map((format): string => format.key));
      const wanted = maker.formats.filter((format) => written.has(format));
      const isMade = maker.processes.length > 0;
      expect(part.files.map(({ format }) => format.key)).toEqual(
        isMade && wanted.length === 0 ? ['stl'] : wanted,
      );
      expect(hasSheet).toBe(key !== 'buy-one');
      expect(texts.map(({ name }) => name)).toEqual(['message.txt', 'shopping-list.txt']);
      const message = handed.message.join('\n');
      expect(message).toContain(`${maker.count} of motor pinion`);
      for (const { name } of part.files) expect(message).toContain(name);
      if (isMade) {
        expect(message).toMatch(/millimeters/);
        expect(message).toMatch(/not scale/);
        expect(message).toMatch(/not repair/);
        expect(part.design).toBeDefined();
      }
      expect(message).not.toMatch(/NaN|undefined|null/);
      for (const { what, mm, toleranceMm } of handed.dimensions) {
        expect(message).toContain(`${what}: ${mm.toFixed(2)} mm, give or take ${toleranceMm}`);
      }
      // Glue and grease each with one that does and one that doesn't, of the very material.
      const glue = handed.shopping.filter(({ kind }) => kind === 'glue');
      const grease = handed.shopping.filter(({ kind }) => kind === 'grease');
      for (const items of [glue, grease]) {
        expect(items.some(({ isGood }) => isGood)).toBe(true);
        expect(items.some(({ isGood }) => !isGood)).toBe(true);
      }
      const list = new TextDecoder().decode(texts[1].bytes);
      const material = materials.find(({ glue: one }) => one.holds === glue[0].what);
      expect(material).toBeDefined();
      for (const { what } of handed.shopping) expect(list).toContain(what);
    },
  );

  test('has outside, span and bore of the part in the file, to a micrometer', () => {
    const { part, handOver: handed } = handOver(makeLastingJob(), {
      ...quick,
      maker: 'my-filament',
      material: 'abs',
    });
    const spec = specOfFields(part.spec, 'external', 'spec');
    const of = (what: string) => handed.dimensions.find((one) => one.what.startsWith(what));
    expect(of('outside')?.mm).toBeCloseTo(findDiameters(spec).tip, 3);
    const k = Number(/over (\d+)/.exec(of('span')?.what ?? '')?.[1]);
    expect(of('span')?.mm).toBeCloseTo(findSpan(spec, k), 3);
    expect(of('bore')).toMatchObject({ mm: 2.1, how: expect.stringContaining('slips on by hand') });
  });

  test('names the bush by its three sizes, and the drill that opens the seat', () => {
    const job = makeLastingJob({ making: { hold: 'bush' } });
    const { handOver: handed } = handOver(job, { ...quick, maker: 'my-resin', material: 'resin-tough' });
    const bush = handed.shopping.find(({ kind }) => kind === 'bush');
    expect(bush?.size).toBe('3 mm outside, 2 mm inside, 4 mm long');
    expect(handed.shopping.find(({ what }) => what.includes('reamer'))?.size).toBe('3.1 mm');
  });

  test('is refused for nobody, for a process that they do not have, and for slanted teeth at a laser', () => {
    const job = makeLastingJob();
    const fail = (options: object) => () => handOver(job, { ...quick, maker: 'my-resin', ...options });
    expect(fail({ maker: 'a-friend' })).toThrow(expect.objectContaining({ code: 'bad-usage', field: 'for' }));
    expect(fail({ process: 'machine-shop' })).toThrow(expect.objectContaining({ field: 'process' }));
    const helical = makeLastingJob({ spec: { teeth: 12, moduleMm: 0.8, helixAngleDeg: 15, faceWidthMm: 4 } });
    expect(() => handOver(helical, { ...quick, maker: 'laser-cutter' })).toThrow(/slanted/);
  });

  test('keeps the nozzle of the job where that maker has it', () => {
    const job = makeLastingJob({ making: { process: 'filament-0.25' } });
    expect(handOver(job, { ...quick, maker: 'my-filament' }).part.design?.process.key).toBe('filament-0.25');
    expect(handOver(job, { ...quick, maker: 'my-resin' }).part.design?.process.key).toBe('resin');
  });
});

describe('the makers', () => {
  test('have processes and formats that exist, in a list without doubles', () => {
    const keys = processes.map(({ key }) => key);
    for (const maker of makers) for (const process of maker.processes) expect(keys).toContain(process);
    expect(new Set(makers.map(({ key }) => key)).size).toBe(6);
  });
});
