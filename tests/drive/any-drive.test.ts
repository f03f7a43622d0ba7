import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { DriveModel } from '../../src/drive/drive-model.ts';
import { listRelations } from '../../src/drive/list-relations.ts';
import { reportDrive } from '../../src/drive/report-drive.ts';
import { solveSpeeds } from '../../src/drive/solve-speeds.ts';
import { add, multiply, zero } from '../../src/numeric/rational.ts';
import { makeSpec } from '../involute/make-spec.ts';
import { makeDrive } from './make-drive.ts';

const kinds = [
  'external',
  'external',
  'external',
  'internal',
  'rack',
  'worm',
  'worm-wheel',
  'pulley',
  'bevel',
  'crown',
  'ratchet',
  'other',
] as const;
const shafts = ['a', 'b', 'c', 'd', 'e'];
const maybe = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.option(arbitrary, { nil: undefined });
const shaft = fc.constantFrom(...shafts);
const ids = ['0', '1', '2', '3', '4', '5', '6'];

/** Drives as nobody would build them: any kinds on any shafts, meshing with anything, carried, held, wished for. */
const anyDrive: fc.Arbitrary<DriveModel> = fc
  .record({
    wheels: fc.array(
      fc.record({
        kind: fc.constantFrom(...kinds),
        shaft,
        part: maybe(fc.constantFrom('p', 'q')),
        post: maybe(fc.constantFrom('x', 'y')),
        teeth: maybe(fc.integer({ min: 1, max: 60 })),
        diameterMm: maybe(fc.integer({ min: 3, max: 40 })),
        isKnown: fc.boolean(),
      }),
      { minLength: ids.length, maxLength: ids.length },
    ),
    meshes: fc.array(
      fc.record({
        kind: fc.constantFrom('teeth', 'teeth', 'worm', 'belt'),
        driver: fc.constantFrom(...ids),
        driven: fc.constantFrom(...ids),
        center: maybe(fc.record({ mm: fc.integer({ min: 1, max: 40 }), uMm: fc.constant(0.05) })),
        carrier: maybe(shaft),
        isCrossed: fc.boolean(),
        slipPercent: fc.constantFrom(0, 0, 2, 100),
      }),
      { maxLength: 8 },
    ),
    fixed: fc.array(shaft, { maxLength: 1 }),
    from: maybe(shaft),
    to: maybe(fc.constantFrom(...shafts, ...ids)),
    ratio: maybe(fc.constantFrom(1, 12.5)),
  })
  .map(({ wheels, meshes, fixed, from, to, ratio }) =>
    makeDrive(
      wheels.map(({ isKnown, ...wheel }, k) => ({
        ...wheel,
        id: ids[k],
        spec:
          isKnown &&
          wheel.teeth !== undefined &&
          wheel.teeth >= 4 &&
          (wheel.kind === 'external' || wheel.kind === 'internal')
            ? makeSpec({ kind: wheel.kind, module: 0.5, teeth: wheel.teeth })
            : undefined,
      })),
      meshes,
      {
        fixed,
        wanted: {
          from,
          to,
          ratio,
          travelMmPerTurn: undefined,
          tolerancePercent: undefined,
          direction: undefined,
        },
        motor: { shaft: undefined, rpm: 100, stallTorqueNmm: 1, torqueNmm: undefined },
      },
    ),
  );

test('whatever stands in it, a drive is answered in words and figures', () => {
  fc.assert(
    fc.property(anyDrive, (model) => {
      const report = reportDrive(model);
      expect(report.meshes).toHaveLength(model.meshes.length);
      expect(JSON.stringify(report)).not.toMatch(/NaN|Infinity|undefined/);
      for (const { message, remedy } of report.troubles) expect(`${message} ${remedy}`).toMatch(/\w.* \w/);
      // Nothing to say, and no reason given, would leave a person standing.
      if (report.ratio === null && report.travelMmPerTurn === null) {
        expect([...report.troubles, ...report.notes].length, JSON.stringify(model)).toBeGreaterThan(0);
      }
    }),
    { seed: 31, numRuns: 500 },
  );
});

test('every mesh holds for the speeds that are given, to the last digit', () => {
  let checked = 0;
  fc.assert(
    fc.property(anyDrive, fc.constantFrom(...shafts), (model, input) => {
      const { speeds, contradictions } = solveSpeeds(model, input);
      if (contradictions.length > 0) return;
      for (const { terms, isSignKnown, isExact } of listRelations(model).relations) {
        const all = [...terms].map(([node, size]) => ({ size, speed: speeds.get(node) }));
        if (!isSignKnown || !isExact || all.some(({ speed }) => !speed?.isDirectionKnown)) continue;
        const sum = all.reduce(
          (total, { size, speed }) => add(total, multiply(size, speed?.turns ?? zero)),
          zero,
        );
        expect(sum, JSON.stringify(model)).toEqual(zero);
        checked++;
      }
    }),
    { seed: 32, numRuns: 800 },
  );
  expect(checked).toBeGreaterThan(150);
});
