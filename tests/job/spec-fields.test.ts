import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { fieldsOfSpec, specOfFields } from '../../src/job/spec-fields.ts';

test('teeth and module are enough: the rest is a spur wheel of 20° on the rack of ISO 53 profile A', () => {
  // ISO 53:1998, table 1, profile A: 20°, 1, 1.25, 0.38.
  const spec = specOfFields({ teeth: 23, moduleMm: 0.5 }, 'external', 'spec');
  expect(spec.pressureAngle).toBeCloseTo((20 * Math.PI) / 180, 15);
  expect([spec.addendum, spec.dedendum, spec.rootRadius]).toEqual([1, 1.25, 0.38]);
  expect([spec.helixAngle, spec.profileShift, spec.thinning, spec.tipDiameter]).toEqual([0, 0, 0, null]);
});

test.each(['teeth', 'moduleMm'])('without %s there is no spec', (key) => {
  const fields = { teeth: 23, moduleMm: 0.5, [key]: undefined };
  expect(() => specOfFields(fields, 'external', 'wheels[0].spec')).toThrow(Fail);
});

test('degrees that a job holds come back as the same degrees', () => {
  fc.assert(
    fc.property(fc.integer({ min: 500, max: 4500 }), fc.integer({ min: -8000, max: 8000 }), (alpha, beta) => {
      const fields = { teeth: 30, moduleMm: 1, pressureAngleDeg: alpha / 100, helixAngleDeg: beta / 100 };
      expect(fieldsOfSpec(specOfFields(fields, 'external', 'spec'))).toMatchObject(fields);
    }),
    { seed: 3, numRuns: 300 },
  );
});

test('every field that shapes the teeth comes back as it went', () => {
  const fields = {
    teeth: 40,
    moduleMm: 0.8,
    pressureAngleDeg: 14.5,
    helixAngleDeg: -12,
    profileShift: 0.2,
    addendum: 0.8,
    dedendum: 1,
    rootRadius: 0.3,
    thinningMm: 0.04,
    tipDiameterMm: 31.2,
    cutterTeeth: 18,
  };
  expect(fieldsOfSpec(specOfFields(fields, 'internal', 'spec'))).toEqual(fields);
});
