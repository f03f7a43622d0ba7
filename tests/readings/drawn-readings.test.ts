import { expect, test } from 'vitest';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { findSpan } from '../../src/involute/span.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { type DrawnWheel, trueReading } from '../bench/draw-wheels.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';

/** Least and greatest distance of two parallel jaws about the outline, mm. */
function jawsAbout(points: Float64Array, teeth: number): { least: number; greatest: number } {
  let least = Number.POSITIVE_INFINITY;
  let greatest = 0;
  for (let k = 0; k < 720; k++) {
    const angle = (k * Math.PI) / 720 / teeth;
    let low = 0;
    let high = 0;
    for (let i = 0; i < points.length; i += 2) {
      const along = points[i] * Math.cos(angle) + points[i + 1] * Math.sin(angle);
      low = Math.min(low, along);
      high = Math.max(high, along);
    }
    least = Math.min(least, high - low);
    greatest = Math.max(greatest, high - low);
  }
  return { least, greatest };
}

test.each([
  [9, 0.35, 0.1, 20],
  [15, 0, 0.05, 14.5],
  [24, 0.2, 0, 20],
  [37, -0.3, 0.2, 25],
])('what a drawn wheel of %i teeth shows is what its outline measures', (teeth, shift, tipLoss, angleDeg) => {
  const pressureAngle = rad(angleDeg);
  const tip = teeth + 2 * (1 + shift - tipLoss);
  const spec = makeSpec({ teeth, pressureAngle, profileShift: shift, tipDiameter: tip });
  const wheel: DrawnWheel = {
    system: 'module',
    size: 1,
    module: 1,
    pressureAngle,
    teeth,
    addendum: 1,
    rootDepth: 1.25,
    shift,
    tipLoss,
    thinning: 0,
    scale: 0,
    // Sharp corners: the jaws meet all of the land.
    tipLandKept: 1,
    zero: 0,
  };
  const { least, greatest } = jawsAbout(traceOutline(spec, 1e-5).points, teeth);
  expect(trueReading(wheel, { of: 'outside', jaws: 'rocked' })).toBeCloseTo(greatest, 2);
  if (teeth % 2 === 1) expect(trueReading(wheel, { of: 'outside', jaws: 'settled' })).toBeCloseTo(least, 2);
  const onOdd = teeth % 2 === 0 ? 1 : Math.cos(Math.PI / (2 * teeth));
  expect(trueReading(wheel, { of: 'root' })).toBeCloseTo(findDiameters(spec).root * onOdd, 9);
  for (const k of [2, 3]) {
    expect(trueReading(wheel, { of: 'span', teeth: k })).toBeCloseTo(findSpan(spec, k), 9);
  }
});
