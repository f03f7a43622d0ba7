import { describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { findToothCurves } from '../../src/involute/tooth-curves.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { makeSpec, rad } from './make-spec.ts';

function drawSpec(draw: number): GearSpec {
  const random = startRandom(100 + draw);
  const between = (low: number, high: number): number => low + (high - low) * random.uniform();
  const isInternal = draw % 3 === 0;
  return makeSpec({
    kind: isInternal ? 'internal' : 'external',
    teeth: Math.round(between(isInternal ? 24 : 7, 90)),
    helixAngle: draw % 2 === 0 ? 0 : rad(between(-30, 30)),
    profileShift: between(-0.3, 0.6),
    addendum: between(0.6, 1),
    rootRadius: between(0, 0.5),
    thinning: between(0, 0.1),
    ...(draw % 6 === 0 ? { cutterTeeth: 18 } : {}),
  });
}

describe('a tooth as exact curves', () => {
  test('is the sampled outline: 200 random wheels, every curve point within the chord error of it', () => {
    let done = 0;
    for (let draw = 0; done < 200; draw++) {
      const spec = drawSpec(draw);
      let points: Float64Array;
      let perTooth: number;
      try {
        ({ points, perTooth } = traceOutline(spec, 1e-4));
      } catch (error) {
        if (!(error instanceof Fail)) throw error;
        continue;
      }
      done++;
      const { flank, joints, rootRadius, tipRadius } = findToothCurves(spec);
      const at = new Float64Array(2);
      flank.forEach(({ pointAt }, k) => {
        for (let step = 0; step <= 8; step++) {
          pointAt(step / 8, at);
          const label = `${k} ${step} ${JSON.stringify(spec)}`;
          expect(offRight(points, perTooth, at[0], at[1]), label).toBeLessThan(1.1e-4);
          if (step === 0)
            expect(Math.hypot(at[0] - joints[2 * k], at[1] - joints[2 * k + 1]), label).toBeLessThan(1e-6);
          if (step === 8)
            expect(Math.hypot(at[0] - joints[2 * k + 2], at[1] - joints[2 * k + 3]), label).toBeLessThan(
              1e-6,
            );
        }
      });
      const last = joints.length - 2;
      expect(Math.hypot(joints[0], joints[1])).toBeCloseTo(rootRadius, 12);
      expect(Math.hypot(joints[last], joints[last + 1])).toBeCloseTo(tipRadius, 12);
    }
  });

  test('an arc of an internal root is told by its center and radius', () => {
    const { flank } = findToothCurves(makeSpec({ kind: 'internal', teeth: 40, addendum: 0.8 }));
    expect(flank.map(({ kind }) => kind)).toEqual(['fillet', 'involute']);
    const { arc, pointAt } = flank[0];
    const at = new Float64Array(2);
    for (const parameter of [0, 0.3, 1]) {
      pointAt(parameter, at);
      expect(Math.hypot(at[0] - (arc?.x ?? 0), at[1] - (arc?.y ?? 0))).toBeCloseTo(0.38, 12);
    }
  });
});

/** Distance from the outline of tooth 0's first half. */
function offRight(points: Float64Array, perTooth: number, x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < perTooth / 2; k++) {
    const [ax, ay, bx, by] = points.subarray(2 * k, 2 * k + 4);
    const square = (bx - ax) ** 2 + (by - ay) ** 2;
    const share = Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square));
    least = Math.min(least, Math.hypot(x - ax - share * (bx - ax), y - ay - share * (by - ay)));
  }
  return least;
}
