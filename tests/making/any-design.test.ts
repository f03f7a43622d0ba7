import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { processes } from '../../gear-library/processes.ts';
import { designWheel } from '../../src/design-wheel.ts';
import { changeKeys, Fail, parseJob } from '../../src/index.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { findWorkingPair } from '../../src/involute/working-pair.ts';
import { specOfFields } from '../../src/job/spec-fields.ts';
import { findWorsening } from '../../src/making/roll-with-mates.ts';
import { planWheel } from '../../src/plan-wheel.ts';
import { checkForm } from '../../src/solid/check-form.ts';

const drawn = fc.record({
  teeth: fc.integer({ min: 9, max: 40 }),
  mateTeeth: fc.integer({ min: 12, max: 70 }),
  moduleMm: fc.constantFrom(0.5, 0.8, 1),
  shift: fc.double({ min: 0, max: 0.4, noNaN: true }),
  rootRadius: fc.double({ min: 0.1, max: 0.38, noNaN: true }),
  /** Over the distance without play, in modules */
  apart: fc.double({ min: -0.03, max: 0.3, noNaN: true }),
  shaftMm: fc.constantFrom(1, 1.5, 2, 3),
  stall: fc.double({ min: 1, max: 200, noNaN: true }),
  roomMm: fc.double({ min: 0, max: 3, noNaN: true }),
  isSplit: fc.boolean(),
  isSacrificial: fc.boolean(),
  isDriver: fc.boolean(),
  process: fc.constantFrom(...processes.map(({ key }) => key)),
  off: fc.subarray([...changeKeys]),
});

describe('any drive of two', () => {
  test('gets a part that can be made, whose pair runs no worse than a copy, with every change told', () => {
    fc.assert(
      fc.property(drawn, (one) => {
        const own = {
          teeth: one.teeth,
          moduleMm: one.moduleMm,
          profileShift: one.shift,
          rootRadius: one.rootRadius,
          faceWidthMm: 4,
        };
        const other = { teeth: one.mateTeeth, moduleMm: one.moduleMm, faceWidthMm: 5 };
        const { centerDistance } = findWorkingPair(
          specOfFields(own, 'external', 'spec'),
          specOfFields(other, 'external', 'spec'),
        );
        const mesh = one.isDriver ? { driver: 'a', driven: 'b' } : { driver: 'b', driven: 'a' };
        const { job } = parseJob(
          JSON.stringify({
            format: 'sparetooth-job',
            version: 1,
            invented: true,
            wheels: [
              {
                id: 'a',
                shaft: 's',
                damage: one.isSplit ? [{ kind: 'split' }] : [{ kind: 'worn' }],
                readings: [{ of: 'shaft', mm: one.shaftMm }],
                spec: own,
                sacrificial: one.isSacrificial,
                making: { roomMm: one.roomMm },
              },
              { id: 'b', shaft: 't', spec: other, material: 'pom' },
            ],
            meshes: [
              { kind: 'teeth', ...mesh, centerMm: centerDistance + one.apart * one.moduleMm, uMm: 0.02 },
            ],
            motor: { shaft: 's', stallTorqueNmm: one.stall },
          }),
        );
        const options = { process: one.process, off: one.off };
        const planned = planWheel(job, { wheelId: 'a', process: one.process });
        try {
          const found = designWheel(job, planned, options);
          for (const { before, after } of found.rolled) expect(findWorsening(before, after)).toBeUndefined();
          checkForm(found.form);
          // Thinner at most, never thicker; shorter at most, never taller.
          expect(found.form.spec.thinning).toBeGreaterThanOrEqual(planned.plan.form.spec.thinning);
          expect(findDiameters(found.form.spec).tip).toBeLessThanOrEqual(
            findDiameters(planned.plan.form.spec).tip,
          );
          for (const { key, isOn, why } of found.changes) {
            expect(why).not.toMatch(/NaN|Infinity|undefined/);
            if (isOn) expect(one.off).not.toContain(key);
          }
        } catch (error) {
          if (!(error instanceof Fail)) throw error;
          expect(error.code).toBe('too-fine');
          expect(one.off).not.toContain('fineness');
        }
      }),
      { numRuns: 40, seed: 20261 },
    );
  }, 120_000);
});
