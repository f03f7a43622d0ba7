import { describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { findPinRange, isPinUsable } from '../../src/involute/pin-range.ts';
import { measureOverPins } from '../../src/involute/pins.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { makeSpec, rad } from './make-spec.ts';

/** The pin as it rests: its center's distance from the axis, and of the place where it touches. */
interface Rest {
  readonly center: number;
  readonly contact: number;
}

/**
 * Lets a ball into a space until it touches the toothing, nothing known but the outline's points: every point stands
 * for the helix through it, and the ball's distance from that is found by golden section.
 */
function letIn(spec: GearSpec, diameter: number): Rest {
  const { points, perTooth } = traceOutline(spec, 6e-6 * spec.module);
  const { reference, tip } = findDiameters(spec);
  const lead = spec.helixAngle === 0 ? 0 : reference / 2 / Math.tan(spec.helixAngle);
  const isInternal = spec.kind === 'internal';
  // The space before tooth 0; one flank will do, the other is its mirror image.
  const axis = -Math.PI / spec.teeth;
  const radii: number[] = [];
  const angles: number[] = [];
  for (let k = 0; k <= perTooth / 2; k++) {
    radii.push(Math.hypot(points[2 * k], points[2 * k + 1]));
    angles.push(Math.atan2(points[2 * k + 1], points[2 * k]) - axis);
  }
  const distanceSquare = (k: number, center: number): number => {
    const at = (turn: number): number =>
      radii[k] ** 2 +
      center * center -
      2 * radii[k] * center * Math.cos(angles[k] + turn) +
      (lead * turn) ** 2;
    if (lead === 0) return at(0);
    let low = -0.6;
    let high = 0.6;
    for (let round = 0; round < 45; round++) {
      const a = low + (high - low) * 0.381966;
      const b = high - (high - low) * 0.381966;
      if (at(a) < at(b)) high = b;
      else low = a;
    }
    return at((low + high) / 2);
  };
  const nearest = (center: number): { square: number; k: number } => {
    let best = { square: Number.POSITIVE_INFINITY, k: 0 };
    for (let k = 0; k < radii.length; k++) {
      const flat = radii[k] ** 2 + center * center - 2 * radii[k] * center * Math.cos(angles[k]);
      // A helix comes nearer than its own point in the plane by less than this: most need no search.
      if (lead !== 0 && Math.sqrt(flat) > 1.6 * Math.sqrt(best.square) + 0.1) continue;
      const square = distanceSquare(k, center);
      if (square < best.square) best = { square, k };
    }
    // Between the points, as the parabola through the three nearest has it.
    const { k, square } = best;
    if (k === 0 || k === radii.length - 1) return best;
    const before = distanceSquare(k - 1, center) - square;
    const after = distanceSquare(k + 1, center) - square;
    return { square: square - (before - after) ** 2 / (8 * (before + after)), k };
  };
  // From outside (an internal wheel: from the axis) towards the root until it touches.
  let free = isInternal ? tip / 2 - diameter : tip / 2 + diameter;
  let stuck = findDiameters(spec).root / 2;
  for (let round = 0; round < 40; round++) {
    const center = (free + stuck) / 2;
    if (nearest(center).square < (diameter / 2) ** 2) stuck = center;
    else free = center;
  }
  return { center: free, contact: radii[nearest(free).k] };
}

const random = startRandom(404);
const between = (low: number, high: number): number => low + (high - low) * random.uniform();

function drawWheel(kind: 'external' | 'internal', helixAngle: number): GearSpec {
  return makeSpec({
    kind,
    teeth: Math.round(kind === 'external' ? between(9, 60) : between(36, 90)),
    helixAngle,
    pressureAngle: rad(between(14.5, 25)),
    profileShift: kind === 'external' ? between(0, 0.4) : between(0, 0.3),
    addendum: kind === 'external' ? 1 : 0.8,
    thinning: between(0, 0.05),
  });
}

function expectMeasured(spec: GearSpec, pin: number): void {
  const { center } = letIn(spec, pin);
  const factor = spec.teeth % 2 === 0 ? 1 : Math.cos(Math.PI / (2 * spec.teeth));
  const measured = 2 * center * factor + (spec.kind === 'internal' ? -pin : pin);
  const formula = measureOverPins(spec, pin) ?? Number.NaN;
  expect(Math.abs(measured - formula), JSON.stringify({ spec, pin, measured, formula })).toBeLessThan(2e-5);
}

describe('over pins is what pins in the spaces of the outline measure, to 0.02 µm at module 1', () => {
  for (const kind of ['external', 'internal'] as const) {
    test(`spur, ${kind}, 25 wheels of odd and even counts`, () => {
      for (let k = 0; k < 25; k++) {
        const spec = drawWheel(kind, 0);
        const range = findPinRange(spec);
        if (!range) continue;
        expectMeasured(spec, between(range.least, Math.min(range.greatest, 2.2)));
      }
    });
  }

  test('helical, balls against the helical surface itself, 8 wheels', () => {
    for (let k = 0; k < 8; k++) {
      const spec = drawWheel('external', rad(between(-35, 35)));
      const range = findPinRange(spec);
      if (!range) throw new Error(`no pin measures ${JSON.stringify(spec)}`);
      expectMeasured(spec, between(range.least, Math.min(range.greatest, 2.2)));
    }
  });

  test('a rack, from the datum line', () => {
    for (let k = 0; k < 20; k++) {
      const spec = makeSpec({
        kind: 'rack',
        teeth: 3,
        pressureAngle: rad(between(14.5, 25)),
        thinning: between(0, 0.05),
      });
      const range = findPinRange(spec);
      if (!range) throw new Error('no pin measures a rack');
      const pin = between(range.least, range.greatest);
      const { points } = traceOutline(spec, 1e-6);
      let high = 9;
      let low = -1;
      for (let round = 0; round < 40; round++) {
        const center = (low + high) / 2;
        if (distanceToEdges(points, Math.PI / 2, center) < pin / 2) low = center;
        else high = center;
      }
      expect(high + pin / 2).toBeCloseTo(measureOverPins(spec, pin) ?? Number.NaN, 6);
    }
  });
});

function distanceToEdges(points: Float64Array, x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k + 3 < points.length; k += 2) {
    const dx = points[k + 2] - points[k];
    const dy = points[k + 3] - points[k + 1];
    const share = ((x - points[k]) * dx + (y - points[k + 1]) * dy) / (dx * dx + dy * dy);
    const t = Math.max(0, Math.min(1, share));
    least = Math.min(least, Math.hypot(x - points[k] - t * dx, y - points[k + 1] - t * dy));
  }
  return least;
}

describe('the range of pins', () => {
  const specs = [
    makeSpec({ teeth: 20 }),
    makeSpec({ teeth: 13, profileShift: 0.35 }),
    makeSpec({ teeth: 27, helixAngle: rad(30), profileShift: 0.1 }),
    makeSpec({ teeth: 60, kind: 'internal', addendum: 0.8 }),
  ];

  test('the greatest touches at the tip, the ideal one at d + 2 x m', () => {
    for (const spec of specs) {
      const range = findPinRange(spec);
      if (!range) throw new Error('no range');
      const { tip, reference } = findDiameters(spec);
      const near = spec.kind === 'internal' ? 1e-3 : -1e-3;
      // The outline's points lie a few hundredths apart there.
      const contactOf = (pin: number): number => letIn(spec, pin).contact;
      expect(Math.abs(contactOf(range.greatest + near) - tip / 2)).toBeLessThan(0.015);
      expect(Math.abs(contactOf(range.greatest - 0.1) - tip / 2)).toBeGreaterThan(0.015);
      expect(Math.abs(contactOf(range.ideal) - reference / 2 - spec.profileShift)).toBeLessThan(0.015);
    }
  });

  test('the least stands no more than flush with the tips', () => {
    for (const spec of specs) {
      const { least } = findPinRange(spec) ?? { least: Number.NaN };
      const side = spec.kind === 'internal' ? -1 : 1;
      const { tip } = findDiameters(spec);
      const stands = (pin: number): number => side * (letIn(spec, pin).center - tip / 2) + pin / 2;
      expect(stands(least + 0.001)).toBeGreaterThan(0);
      expect(stands(least - 0.001)).toBeLessThan(0);
    }
  });

  test('holds the pins that can be used and no others, on 400 wheels', () => {
    let used = 0;
    for (let k = 0; k < 400; k++) {
      const spec = makeSpec({
        kind: k % 3 === 0 ? 'internal' : 'external',
        teeth: Math.round(between(6, 100)),
        pressureAngle: rad(between(14.5, 25)),
        profileShift: k % 3 === 0 ? between(-0.5, 0.3) : between(-0.5, 0.8),
        addendum: between(0.3, 1),
        rootRadius: between(0, 0.4),
        helixAngle: k % 4 === 0 ? rad(between(-35, 35)) : 0,
      });
      const { base, tip } = findDiameters(spec);
      // An internal flank ends at the base circle.
      if (spec.kind === 'internal' && tip < base) continue;
      let range: ReturnType<typeof findPinRange>;
      try {
        range = findPinRange(spec);
      } catch (error) {
        // No such wheel: its space comes to a point before the root.
        expect(error).toBeInstanceOf(Fail);
        continue;
      }
      const pins = range
        ? [0.9 * range.least, 1.001 * range.least, 0.999 * Math.min(range.greatest, 9), 1.1 * range.greatest]
        : [between(0.5, 4)];
      const wanted = range ? [false, true, true, false] : [false];
      if (range && range.greatest > 9) {
        pins.pop();
        wanted.pop();
      }
      if (range && range.greatest < 1.01 * range.least) continue;
      expect(
        pins.map((pin) => isPinUsable(spec, pin)),
        JSON.stringify([spec, range]),
      ).toEqual(wanted);
      if (range) used++;
    }
    expect(used).toBeGreaterThan(200);
  });

  test('is empty where the trochoid leaves no involute, and open upward where teeth are few', () => {
    const low = findDiameters(makeSpec({ teeth: 8 })).root + 0.3;
    expect(findPinRange(makeSpec({ teeth: 8, tipDiameter: low }))).toBeUndefined();
    for (const pin of [0.5, 1, 1.7, 3]) {
      expect(isPinUsable(makeSpec({ teeth: 8, tipDiameter: low }), pin)).toBe(false);
    }
    const few = findPinRange(
      makeSpec({ teeth: 5, profileShift: 0.6, pressureAngle: rad(25), addendum: 0.9 }),
    );
    expect(few?.greatest).toBe(Number.POSITIVE_INFINITY);
  });
});
