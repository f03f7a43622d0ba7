import { describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { findInternalRoot } from '../../src/involute/internal-root.ts';
import { toothThicknessAt } from '../../src/involute/tooth-thickness.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { type Random, startRandom } from '../../src/numeric/random.ts';
import { isSimplePolygon, signedArea } from '../../src/plane/polygon.ts';
import { makeSpec, rad } from './make-spec.ts';
import { stepShaper } from './shaper-envelope.ts';

const micron = 0.001;

/** From the middle of the space (+y) to the middle of the tooth, the tooth clockwise of the space. */
function halfOf(spec: GearSpec, chordError: number): [number, number][] {
  const { points, perTooth } = traceOutline(spec, chordError);
  const turn = Math.PI / 2 + Math.PI / spec.teeth;
  return Array.from({ length: perTooth / 2 + 1 }, (_, k) => {
    const x = points[2 * k];
    const y = points[2 * k + 1];
    return [y * Math.sin(turn) - x * Math.cos(turn), x * Math.sin(turn) + y * Math.cos(turn)];
  });
}

function distanceTo(points: readonly [number, number][], x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 1; k < points.length; k++) {
    const [x0, y0] = points[k - 1];
    const dx = points[k][0] - x0;
    const dy = points[k][1] - y0;
    const t = Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy)));
    least = Math.min(least, Math.hypot(x - x0 - t * dx, y - y0 - t * dy));
  }
  return least;
}

/** Internal wheels of 36 to 110 teeth; `withCutter`: cut by a shaper of 14 teeth up to 20 fewer than the wheel. */
function drawInternal(random: Random, withCutter: boolean): GearSpec {
  for (;;) {
    const teeth = 36 + Math.floor(75 * random.uniform());
    const spec = makeSpec({
      kind: 'internal',
      teeth,
      pressureAngle: rad(withCutter ? 18 + 7 * random.uniform() : 14.5 + 10.5 * random.uniform()),
      helixAngle: !withCutter && random.uniform() < 0.3 ? rad(-30 + 60 * random.uniform()) : 0,
      profileShift: -0.2 + 0.8 * random.uniform(),
      addendum: 0.6 + 0.3 * random.uniform(),
      dedendum: 1.1 + 0.2 * random.uniform(),
      rootRadius: 0.6 * random.uniform(),
      thinning: random.uniform() < 0.3 ? 0.08 * random.uniform() : 0,
    });
    const { base, tip } = findDiameters(spec);
    if (tip < base + 0.05) continue;
    return withCutter ? { ...spec, cutterTeeth: 14 + Math.floor((teeth - 34) * random.uniform()) } : spec;
  }
}

describe('an internal outline cut by a shaper is what the stepped shaper leaves', () => {
  test('within 1 µm at module 1, both ways, over half a pitch, for 40 random wheels', () => {
    const random = startRandom(52);
    let done = 0;
    let refused = 0;
    while (done < 40) {
      const spec = drawInternal(random, true);
      let half: [number, number][];
      try {
        half = halfOf(spec, 0.0002);
      } catch (error) {
        expect(error).toBeInstanceOf(Fail);
        refused++;
        continue;
      }
      done++;
      const isLeft = stepShaper(spec, spec.cutterTeeth ?? 0);
      const { tip, root } = findDiameters(spec);
      const every = Math.max(1, Math.floor(half.length / 10));
      for (let k = 1; k < half.length - 1; k += every) {
        const [x0, y0] = half[k - 1];
        const [x1, y1] = half[k];
        const length = Math.hypot(x1 - x0, y1 - y0);
        const mx = (x0 + x1) / 2;
        const my = (y0 + y1) / 2;
        if (Math.hypot(mx, my) < tip / 2 + 3 * micron) continue;
        // Traced clockwise from the space about the axis, the metal lies to the left.
        const nx = (-(y1 - y0) / length) * micron;
        const ny = ((x1 - x0) / length) * micron;
        const label = `${JSON.stringify(spec)} at ${mx}, ${my}`;
        expect(isLeft(mx + nx, my + ny), `metal: ${label}`).toBe(true);
        expect(isLeft(mx - nx, my - ny), `cut: ${label}`).toBe(false);
      }
      for (let k = 1; k <= 5; k++) {
        const radius = tip / 2 + ((root - tip) / 2) * ((k - 0.5) / 5);
        let low = 0;
        let high = Math.PI / spec.teeth;
        for (let round = 0; round < 14; round++) {
          const angle = (low + high) / 2;
          if (isLeft(radius * Math.sin(angle), radius * Math.cos(angle))) high = angle;
          else low = angle;
        }
        expect(
          distanceTo(half, radius * Math.sin(low), radius * Math.cos(low)),
          JSON.stringify(spec),
        ).toBeLessThan(micron);
      }
    }
    expect(refused).toBeLessThan(40);
  });
});

describe('an internal outline with a circular fillet', () => {
  test('is simple, counter-clockwise, starts in a space, has tooth 0 on +x, and repeats from tooth to tooth', () => {
    const random = startRandom(53);
    for (let k = 0; k < 20; k++) {
      const spec = drawInternal(random, false);
      const { points, perTooth } = traceOutline(spec, 0.002);
      expect(points.length).toBe(2 * perTooth * spec.teeth);
      expect(isSimplePolygon(points), JSON.stringify(spec)).toBe(true);
      expect(signedArea(points)).toBeGreaterThan(0);
      const middle = perTooth; // x of point perTooth/2
      const { tip, root } = findDiameters(spec);
      expect(points[middle]).toBeCloseTo(tip / 2, 12);
      expect(points[middle + 1]).toBeCloseTo(0, 12);
      expect(Math.hypot(points[0], points[1])).toBeCloseTo(root / 2, 12);
      const turn = (2 * Math.PI * 3) / spec.teeth;
      const x = points[2 * 5];
      const y = points[2 * 5 + 1];
      const at = 2 * (3 * perTooth + 5);
      expect(points[at]).toBeCloseTo(x * Math.cos(turn) - y * Math.sin(turn), 12);
      expect(points[at + 1]).toBeCloseTo(x * Math.sin(turn) + y * Math.cos(turn), 12);
    }
  });

  test('is as thick as the formula says all along the flank, thinning and helix included', () => {
    const random = startRandom(54);
    for (let k = 0; k < 20; k++) {
      const spec = drawInternal(random, false);
      const { points, perTooth } = traceOutline(spec, 1e-4);
      const { flankStart } = findInternalRoot(spec);
      let seen = 0;
      for (let i = 0; i < perTooth / 2; i++) {
        const radius = Math.hypot(points[2 * i], points[2 * i + 1]);
        if (radius > flankStart + 1e-9 || radius < findDiameters(spec).tip / 2 + 1e-9) continue;
        seen++;
        const arc = 2 * radius * Math.abs(Math.atan2(points[2 * i + 1], points[2 * i]));
        expect(arc).toBeCloseTo(toothThicknessAt(spec, 2 * radius), 9);
      }
      expect(seen, JSON.stringify(spec)).toBeGreaterThan(2);
    }
  });

  test('encloses the root circle’s disc less the teeth, ring by ring', () => {
    const random = startRandom(55);
    for (let k = 0; k < 8; k++) {
      const spec = drawInternal(random, false);
      const { points } = traceOutline(spec, 3e-5);
      expect(Math.abs(signedArea(points) / areaByRings(spec) - 1), JSON.stringify(spec)).toBeLessThan(1e-5);
    }
  });

  test('turns smoothly from root circle into fillet and from fillet into flank', () => {
    const random = startRandom(56);
    for (let k = 0; k < 12; k++) {
      const spec = { ...drawInternal(random, false), rootRadius: 0.2 + 0.2 * random.uniform() };
      const half = halfOf(spec, 1e-5);
      const tip = findDiameters(spec).tip / 2;
      let sharpest = 0;
      for (let i = 1; i < half.length - 1; i++) {
        if (Math.hypot(...half[i]) < tip + 0.01) continue;
        const a = Math.atan2(half[i][1] - half[i - 1][1], half[i][0] - half[i - 1][0]);
        const b = Math.atan2(half[i + 1][1] - half[i][1], half[i + 1][0] - half[i][0]);
        sharpest = Math.max(sharpest, Math.abs(Math.atan2(Math.sin(b - a), Math.cos(b - a))));
      }
      // Chords of 0.01 µm on a 0.2 mm circle bend by 0.02 rad each.
      expect(sharpest, JSON.stringify(spec)).toBeLessThan(0.025);
    }
  });

  test('takes any root radius: none is a corner, too large a one is clipped and said', () => {
    for (const rootRadius of [0, 1e-9, 0.1, 0.38, 1, 5, 50]) {
      for (const tipDiameter of [null, 51.6, 52.2]) {
        const spec = makeSpec({ kind: 'internal', teeth: 50, rootRadius, tipDiameter });
        const { points } = traceOutline(spec, 0.001);
        expect(isSimplePolygon(points), `${rootRadius} ${tipDiameter}`).toBe(true);
        const root = findInternalRoot(spec);
        if (root.cut !== 'fillet') throw new Error('not a fillet');
        if (rootRadius <= 0.1) expect(root.isClipped).toBe(false);
        if (rootRadius >= 1) expect(root.isClipped).toBe(true);
      }
    }
  });
});

/** The space's rings from the tip circle out, each with its exact angle; the disc within the tip circle whole. */
function areaByRings(spec: GearSpec): number {
  const { tip, root } = findDiameters(spec);
  const form = findInternalRoot(spec);
  if (form.cut !== 'fillet') throw new Error('not a fillet');
  const halfSpaceAt = (radius: number): number => {
    if (radius <= form.flankStart)
      return Math.PI / spec.teeth - toothThicknessAt(spec, 2 * radius) / (2 * radius);
    // The fillet circle at that radius, by the triangle of the wheel's axis, its center and the point.
    const c = form.centerRadius;
    const cosine = (radius * radius + c * c - form.radius ** 2) / (2 * radius * c);
    return form.centerAngle + Math.acos(Math.max(-1, Math.min(1, cosine)));
  };
  let area = (Math.PI * tip * tip) / 4;
  const steps = 3000;
  for (let k = 0; k < steps; k++) {
    // Denser near the root, where the fillet's angle runs as a square root.
    const t = ((k + 0.5) / steps) ** 2;
    const radius = root / 2 - ((root - tip) / 2) * t;
    area += 2 * halfSpaceAt(radius) * radius * ((root - tip) / 2) * ((2 * Math.sqrt(t)) / steps) * spec.teeth;
  }
  return area;
}

describe('internal wheels that can not exist are refused, with a number that works', () => {
  const raise = (spec: GearSpec): Fail => {
    try {
      traceOutline(spec, 0.01);
    } catch (error) {
      if (error instanceof Fail) return error;
      throw error;
    }
    throw new Error('not refused');
  };

  test('tips inside the base circle: the least tip diameter and the greatest addendum', () => {
    const spec = makeSpec({ kind: 'internal', teeth: 20 });
    const fail = raise(spec);
    expect([fail.code, fail.field]).toEqual(['bad-geometry', 'tipDiameter']);
    expect(fail.remedy).toContain(String(fail.details.least));
    expect(() => traceOutline({ ...spec, tipDiameter: Number(fail.details.least) }, 0.01)).not.toThrow();
    expect(() =>
      traceOutline({ ...spec, addendum: Number(fail.details.greatestAddendum) }, 0.01),
    ).not.toThrow();
    expect(() => traceOutline({ ...spec, tipDiameter: Number(fail.details.least) - 0.002 }, 0.01)).toThrow(
      Fail,
    );
  });

  test('a tooth pointed before its tips: likewise', () => {
    const spec = makeSpec({
      kind: 'internal',
      teeth: 90,
      profileShift: 1.5,
      addendum: 2.4,
    });
    const fail = raise(spec);
    expect([fail.code, fail.field]).toEqual(['pointed-tooth', 'tipDiameter']);
    expect(() =>
      traceOutline({ ...spec, tipDiameter: Number(fail.details.least) + 0.001 }, 0.01),
    ).not.toThrow();
    expect(() =>
      traceOutline({ ...spec, addendum: Number(fail.details.greatestAddendum) - 0.001 }, 0.01),
    ).not.toThrow();
  });

  test('a space pointed before its root: the greatest dedendum', () => {
    const spec = makeSpec({ kind: 'internal', teeth: 50, profileShift: 1, pressureAngle: rad(30) });
    const fail = raise(spec);
    expect([fail.code, fail.field]).toEqual(['bad-geometry', 'dedendum']);
    const works = traceOutline({ ...spec, dedendum: Number(fail.details.greatest) }, 0.01);
    expect(isSimplePolygon(works.points)).toBe(true);
  });

  test('tips outside the root circle', () => {
    expect(raise(makeSpec({ kind: 'internal', teeth: 50, tipDiameter: 53 })).field).toBe('tipDiameter');
  });

  test('shapers too large, pointed, or that trim the tips', () => {
    for (const cutterTeeth of [3, 35, 49, 50, 60]) {
      const fail = raise(makeSpec({ kind: 'internal', teeth: 50, cutterTeeth }));
      expect([fail.code, fail.field], String(cutterTeeth)).toEqual(['bad-geometry', 'cutterTeeth']);
    }
    expect(() =>
      traceOutline(makeSpec({ kind: 'internal', teeth: 50, cutterTeeth: 24 }), 0.01),
    ).not.toThrow();
  });
});
