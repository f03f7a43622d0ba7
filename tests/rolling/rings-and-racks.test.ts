import { expect, test } from 'vitest';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { rollPair } from '../../src/rolling/roll-pair.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';
import { type CutWheel, findFreeAngles } from './roll-polygons.ts';

/** A tooth of the traced outline: what is rolled is the product's, how it is rolled is not. */
function takeTooth(spec: GearSpec): CutWheel {
  const { points, perTooth } = traceOutline(spec, 2e-5);
  return {
    teeth: spec.teeth,
    tip: findDiameters(spec).tip / 2,
    tooth: points.slice(0, 2 * perTooth + 2),
    isInternal: spec.kind === 'internal',
  };
}

const ring = makeSpec({
  kind: 'internal',
  module: 0.5,
  teeth: 48,
  thinning: 0.03,
  addendum: 0.9,
  rootRadius: 0.1,
});

test.each([
  ['one module', { module: 0.5 }, 8],
  ['a module 2 % larger', { module: 0.51 }, 7.8],
  ['a module 3 % smaller', { module: 0.485 }, 8],
  ['14.5° in 20°', { module: 0.5, pressureAngle: rad(14.5) }, 7.9],
  ['runout', { module: 0.5, runout: 0.04 }, 7.9],
] as const)('a pinion in a ring, %s: both bounds as overlapping polygons have them', (_, given, mm) => {
  const { runout, ...differs } = { runout: 0, ...given };
  const pinion = makeSpec({ teeth: 16, thinning: 0.03, ...differs });
  const { mean } = rollPair({ spec: pinion, runout }, { spec: ring }, { mm, u: 0 }, { seeksDistance: false });
  const one = { ...takeTooth(pinion), offset: runout / 2 };
  const two = takeTooth(ring);
  const radius = (mm * 48) / (48 - 16);
  let worst = 0;
  let free = 0;
  const { driverAngle, low, high } = mean.curve;
  for (let k = 0; k < driverAngle.length; k += runout > 0 ? 13 : 4) {
    const found = findFreeAngles(one, two, mm, driverAngle[k]);
    // What isn't found free is so nearly jammed that the search steps over it.
    expect(found !== undefined || (high[k] - low[k]) * radius < 0.002).toBe(true);
    if (!found) continue;
    free++;
    worst = Math.max(worst, Math.abs(found[0] - low[k]) * radius, Math.abs(found[1] - high[k]) * radius);
  }
  expect(free).toBeGreaterThan(10);
  expect(worst).toBeLessThan(0.001);
});

test('a rack is a wheel of very many teeth, driven or driving, of the same module or another', () => {
  for (const module of [0.5, 0.51]) {
    const pinion = { spec: makeSpec({ module: 0.5, teeth: 18, thinning: 0.03 }) };
    const rack = { spec: makeSpec({ kind: 'rack', module, teeth: 20, thinning: 0.03, rootRadius: 0.2 }) };
    const large = { spec: makeSpec({ module, teeth: 40_000, thinning: 0.03, rootRadius: 0.2 }) };
    const lift = 4.5 + 0.12;
    const onRack = { mm: lift, u: 0 };
    const onLarge = { mm: lift + (40_000 * module) / 2, u: 0 };
    for (const [one, two] of [
      [rollPair(pinion, rack, onRack).mean, rollPair(pinion, large, onLarge).mean],
      [rollPair(rack, pinion, onRack).mean, rollPair(large, pinion, onLarge).mean],
    ]) {
      expect(one.backlashLeast).toBeCloseTo(two.backlashLeast, 3);
      expect(one.transmissionError).toBeCloseTo(two.transmissionError, 3);
      expect(one.contactRatio).toBeCloseTo(two.contactRatio, 2);
    }
  }
});
