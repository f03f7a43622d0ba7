import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkMade, Fail, parseJob, tellMade } from '../src/index.ts';

const length = fc.oneof(
  fc.double({ min: 0.001, max: 100, noNaN: true }),
  fc.array(fc.double({ min: 0.01, max: 60, noNaN: true }), { minLength: 1, maxLength: 4 }),
);
const reading = fc.oneof(
  fc.record({
    of: fc.constantFrom('outside', 'root', 'tooth-depth', 'hub-diameter', 'bore', 'face-width'),
    mm: length,
  }),
  fc.record({ of: fc.constant('span'), teeth: fc.integer({ min: 1, max: 30 }), mm: length }),
  fc.record({
    of: fc.constant('over-pins'),
    pinMm: fc.double({ min: 0.1, max: 9, noNaN: true }),
    mm: length,
  }),
  fc.record({ of: fc.constant('rack-pitch'), pitches: fc.integer({ min: 1, max: 9 }), mm: length }),
  fc.record({ of: fc.constant('bore'), goesMm: fc.double({ min: 1, max: 3, noNaN: true }) }),
);
const figures = fc.dictionary(
  fc.constantFrom(
    'scalePercent',
    'outsidePerSideMm',
    'teethPerSideMm',
    'holesPerSideMm',
    'firstLayerPerSideMm',
  ),
  fc.double({ min: -3, max: 3, noNaN: true }),
);

test('whatever is read of a part, the check answers or refuses with a Fail', () => {
  let answered = 0;
  fc.assert(
    fc.property(
      fc.array(reading, { maxLength: 6 }),
      fc.record({
        kind: fc.constantFrom('external', 'internal', 'rack'),
        teeth: fc.integer({ min: 5, max: 60 }),
        moduleMm: fc.double({ min: 0.2, max: 3, noNaN: true }),
        profileShift: fc.double({ min: -0.5, max: 0.8, noNaN: true }),
        helixAngleDeg: fc.constantFrom(0, 15),
        thinningMm: fc.constantFrom(0, 0.1),
      }),
      figures,
      fc.option(figures, { nil: undefined }),
      // Rolling takes most of the time; a few are enough.
      fc.integer({ min: 0, max: 9 }),
      (readings, { kind, ...spec }, compensation, uncertainty, roll) => {
        try {
          const { job } = parseJob(
            JSON.stringify({
              format: 'sparetooth-job',
              version: 1,
              wheels: [
                {
                  id: 'p',
                  kind,
                  spec: { ...spec, bore: { shape: kind === 'external' ? 'round' : 'none', diameterMm: 1 } },
                  made: { readings, compensation, uncertainty },
                },
                { id: 'w', spec: { teeth: 70, moduleMm: spec.moduleMm } },
              ],
              meshes: roll === 9 ? [{ driver: 'p', driven: 'w', centerMm: 20 }] : [],
            }),
          );
          const report = checkMade(job, 'p');
          answered++;
          expect(tellMade(report).join(' ')).not.toMatch(/NaN|undefined|Infinity/);
          for (const one of report.dimensions) expect(Number.isFinite(one.madeMm) && one.uMm >= 0).toBe(true);
        } catch (error) {
          if (!(error instanceof Fail)) throw error;
        }
      },
    ),
    { numRuns: 100, seed: 6 },
  );
  expect(answered).toBeGreaterThan(30);
});
