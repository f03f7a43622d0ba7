import { expect, test } from 'vitest';
import { rollPair } from '../../src/rolling/roll-pair.ts';
import { makeSpec } from '../involute/make-spec.ts';
import { cutWheel, findFreeAngles } from './roll-polygons.ts';

const pinion = makeSpec({ module: 0.5, teeth: 11, thinning: 0.04, profileShift: 0.35 });
const wheel = makeSpec({ module: 0.5, teeth: 16, thinning: 0.04 });
const mm = 6.96;

/** Bounds of the product's curve against polygons that turn about their shafts, at some steps of every meeting. */
function strayFromPolygons(
  one: { readonly missing?: readonly number[]; readonly runout?: number },
  two: { readonly missing?: readonly number[]; readonly runout?: number },
): number {
  const { mean } = rollPair({ spec: pinion, ...one }, { spec: wheel, ...two }, { mm, u: 0 });
  const cutOne = { ...cutWheel(pinion), offset: (one.runout ?? 0) / 2, missing: one.missing ?? [] };
  const cutTwo = {
    ...cutWheel(wheel),
    offset: (two.runout ?? 0) / 2,
    // Seen from the wheel's own axis its teeth come past clockwise.
    missing: (two.missing ?? []).map((tooth) => (wheel.teeth - tooth) % wheel.teeth),
  };
  const radius = (mm * 16) / 27;
  let worst = 0;
  let seen = 0;
  const { driverAngle, low, high } = mean.curve;
  for (let k = 0; k < driverAngle.length; k += 29) {
    const free = findFreeAngles(cutOne, cutTwo, mm, driverAngle[k]);
    if (!free) throw new Error(`the polygons jam at ${driverAngle[k]}`);
    worst = Math.max(worst, Math.abs(free[0] - low[k]) * radius, Math.abs(free[1] - high[k]) * radius);
    seen++;
  }
  expect(seen).toBeGreaterThan(100);
  return worst;
}

test('a driver with a missing tooth and a driven wheel with two: both bounds as the polygons have them', () => {
  expect(strayFromPolygons({ missing: [4] }, { missing: [7, 8] })).toBeLessThan(0.002);
});

test('runout of both wheels: both bounds as the polygons have them', () => {
  expect(strayFromPolygons({ runout: 0.05 }, { runout: 0.03 })).toBeLessThan(0.002);
});
