import { describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { findGeneratingRack } from '../../src/involute/generating-rack.ts';
import { measureOverPins } from '../../src/involute/pins.ts';
import { findSpan, findSpanTeeth } from '../../src/involute/span.ts';
import type { ToothOutline } from '../../src/involute/tooth-outline.ts';
import { toothThicknessAt } from '../../src/involute/tooth-thickness.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { findTrochoid } from '../../src/involute/trochoid.ts';
import { findPointedDiameter, isUndercut } from '../../src/involute/undercut.ts';
import { type Random, startRandom } from '../../src/numeric/random.ts';
import { isSimplePolygon, signedArea } from '../../src/plane/polygon.ts';
import { stepRackCutter } from './cutter-envelope.ts';
import { makeSpec, rad } from './make-spec.ts';

const micron = 0.001;

/** z 6–150, x −0.5–1.0, α 14.5–25°, root radius up to what the rack holds, one in three helical, some thinned. */
function drawSpec(random: Random): GearSpec {
  for (;;) {
    const pressureAngle = rad(14.5 + 10.5 * random.uniform());
    const dedendum = 1.1 + 0.3 * random.uniform();
    const limit =
      ((Math.PI / 4 - dedendum * Math.tan(pressureAngle)) * Math.cos(pressureAngle)) /
      (1 - Math.sin(pressureAngle));
    const spec = makeSpec({
      teeth: Math.round(6 * (150 / 6) ** random.uniform()),
      pressureAngle,
      helixAngle: random.uniform() < 0.33 ? rad(-30 + 60 * random.uniform()) : 0,
      profileShift: -0.5 + 1.5 * random.uniform(),
      dedendum,
      rootRadius: limit * random.uniform(),
      thinning: random.uniform() < 0.3 ? 0.08 * random.uniform() : 0,
    });
    const pointed = findPointedDiameter(spec);
    const trimmed = pointed < findDiameters(spec).tip ? { ...spec, tipDiameter: pointed - 0.02 } : spec;
    if ((trimmed.tipDiameter ?? 99) < findDiameters(trimmed).root + 0.5) continue;
    return trimmed;
  }
}

/** From the middle of the space (+y) to the middle of the tooth: the points that the cutter leaves. */
function halfOf(outline: ToothOutline, spec: GearSpec): [number, number][] {
  const n = outline.perTooth / 2 + 1;
  const turn = Math.PI / 2 + Math.PI / spec.teeth;
  return Array.from({ length: n }, (_, k) => {
    const x = outline.points[2 * k];
    const y = outline.points[2 * k + 1];
    // Mirrored, so that the tooth lies clockwise of the space.
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

describe('an outline is what a stepped rack cutter leaves', () => {
  test('within 1 µm at module 1, both ways, over half a pitch, for 220 random specs', () => {
    const random = startRandom(20261125);
    let undercut = 0;
    let cutOff = 0;
    let clipped = 0;
    let done = 0;
    let worst = 0;
    while (done < 220) {
      const spec = drawSpec(random);
      let outline: ToothOutline;
      try {
        outline = traceOutline(spec, 0.0002);
      } catch (error) {
        // Heavy undercut can cut a tooth off at its foot: refused in words, not traced.
        expect(error).toBeInstanceOf(Fail);
        cutOff++;
        continue;
      }
      done++;
      if (isUndercut(spec)) undercut++;
      if (findGeneratingRack(spec).isClipped) clipped++;
      const half = halfOf(outline, spec);
      const { isLeft } = stepRackCutter(spec);
      const { tip, root } = findDiameters(spec);
      // From the outline to the envelope: a micron inward is metal, a micron outward is cut (the tip arc apart).
      const every = Math.max(1, Math.floor(half.length / 14));
      for (let k = 1; k < half.length - 1; k += every) {
        const [x0, y0] = half[k - 1];
        const [x1, y1] = half[k];
        const length = Math.hypot(x1 - x0, y1 - y0);
        const mx = (x0 + x1) / 2;
        const my = (y0 + y1) / 2;
        if (Math.hypot(mx, my) > tip / 2 - 3 * micron) continue;
        // Traced clockwise from the space, the space lies to the left.
        const nx = -(y1 - y0) / length;
        const ny = (x1 - x0) / length;
        const label = `${JSON.stringify(spec)} at ${mx}, ${my}`;
        expect(isLeft(mx - nx * micron, my - ny * micron), `metal: ${label}`).toBe(true);
        expect(isLeft(mx + nx * micron, my + ny * micron), `cut: ${label}`).toBe(false);
      }
      // From the envelope to the outline, along circles about the axis.
      for (let k = 1; k <= 9; k++) {
        const radius = root / 2 + ((tip - root) / 2) * ((k - 0.5) / 9);
        let low = 0;
        let high = Math.PI / spec.teeth;
        for (let round = 0; round < 20; round++) {
          const angle = (low + high) / 2;
          if (isLeft(radius * Math.sin(angle), radius * Math.cos(angle))) high = angle;
          else low = angle;
        }
        const off = distanceTo(half, radius * Math.sin(low), radius * Math.cos(low));
        worst = Math.max(worst, off);
        expect(off, JSON.stringify(spec)).toBeLessThan(micron);
      }
    }
    expect(undercut).toBeGreaterThan(20);
    expect(clipped).toBe(0);
    expect(cutOff).toBeLessThan(40);
    expect(worst).toBeGreaterThan(0);
  });

  test('is a simple polygon whose area is the sum of its rings of thickness', () => {
    const random = startRandom(7);
    for (let k = 0; k < 60; ) {
      const spec = drawSpec(random);
      let outline: ToothOutline;
      try {
        outline = traceOutline(spec, 0.00003);
      } catch {
        continue;
      }
      k++;
      expect(isSimplePolygon(outline.points), JSON.stringify(spec)).toBe(true);
      const area = signedArea(outline.points);
      expect(Math.abs(area / areaByRings(spec) - 1), JSON.stringify(spec)).toBeLessThan(1e-4);
    }
  });
});

/** The root disc and the rings of tooth over it, each ring's angle from the exact curves. */
function areaByRings(spec: GearSpec): number {
  const { tip, root } = findDiameters(spec);
  const trochoid = findTrochoid(spec);
  const at: [number, number] = [0, 0];
  const halfToothAt = (radius: number): number => {
    if (radius >= trochoid.endRadius) return toothThicknessAt(spec, 2 * radius) / (2 * radius);
    let low = 0;
    let high = trochoid.end;
    for (let round = 0; round < 45; round++) {
      const theta = (low + high) / 2;
      trochoid.pointAt(theta, at);
      if (Math.hypot(at[0], at[1]) < radius) low = theta;
      else high = theta;
    }
    trochoid.pointAt(low, at);
    return Math.PI / spec.teeth - Math.atan2(at[0], at[1]);
  };
  let area = (Math.PI * root * root) / 4;
  const steps = 3000;
  for (let k = 0; k < steps; k++) {
    // Denser near the root, where the fillet's angle runs as a square root.
    const t = ((k + 0.5) / steps) ** 2;
    const radius = root / 2 + ((tip - root) / 2) * t;
    const width = ((tip - root) / 2) * 2 * Math.sqrt(t) * (1 / steps);
    area += 2 * halfToothAt(radius) * radius * width * spec.teeth;
  }
  return area;
}

describe('what is measured on the outline is what the formulas say', () => {
  const specs = [
    makeSpec({ teeth: 9, profileShift: 0.45 }),
    makeSpec({ teeth: 17, thinning: 0.06 }),
    makeSpec({ teeth: 24, profileShift: 0.4, pressureAngle: rad(14.5) }),
    makeSpec({ teeth: 41, profileShift: -0.2, pressureAngle: rad(25) }),
  ];

  test('thickness at each diameter on the flank', () => {
    for (const spec of specs) {
      const { points, perTooth } = traceOutline(spec, 1e-5);
      const { base, tip } = findDiameters(spec);
      for (let k = 1; k < perTooth / 2; k++) {
        const diameter = 2 * Math.hypot(points[2 * k], points[2 * k + 1]);
        if (diameter < 2 * findTrochoid(spec).endRadius + 1e-9 || diameter < base || diameter > tip - 1e-9)
          continue;
        const arc = 2 * Math.abs(Math.atan2(points[2 * k + 1], points[2 * k])) * (diameter / 2);
        expect(arc).toBeCloseTo(toothThicknessAt(spec, diameter), 9);
      }
    }
  });

  test('span between parallel jaws that close on k teeth', () => {
    for (const spec of specs) {
      const k = findSpanTeeth(spec);
      if (k === undefined) throw new Error('no span');
      const { points, perTooth } = traceOutline(spec, 1e-6);
      // Jaws across teeth 0 … k−1, square to the direction of their middle; each touches the widest point on its side.
      const middle = ((k - 1) * Math.PI) / spec.teeth + Math.PI / 2;
      let high = Number.NEGATIVE_INFINITY;
      let low = Number.POSITIVE_INFINITY;
      for (let i = 0; i < perTooth * k; i++) {
        // Jaws do not reach the bottom of the spaces beside them.
        if (Math.hypot(points[2 * i], points[2 * i + 1]) < findTrochoid(spec).endRadius) continue;
        const along = points[2 * i] * Math.cos(middle) + points[2 * i + 1] * Math.sin(middle);
        high = Math.max(high, along);
        low = Math.min(low, along);
      }
      expect(high - low).toBeCloseTo(findSpan(spec, k), 5);
    }
  });

  test('pins that rest in opposite spaces', () => {
    for (const spec of specs) {
      const pin = 1.728;
      const { points, perTooth } = traceOutline(spec, 1e-6);
      // A pin on the middle of the space before tooth 0, pushed in until it touches.
      const axis = -Math.PI / spec.teeth;
      let low = findDiameters(spec).root / 2;
      let high = findDiameters(spec).tip;
      for (let round = 0; round < 50; round++) {
        const center = (low + high) / 2;
        let clear = Number.POSITIVE_INFINITY;
        for (let i = 0; i < perTooth; i++) {
          clear = Math.min(
            clear,
            Math.hypot(points[2 * i] - center * Math.cos(axis), points[2 * i + 1] - center * Math.sin(axis)),
          );
        }
        if (clear < pin / 2) low = center;
        else high = center;
      }
      const factor = spec.teeth % 2 === 0 ? 1 : Math.cos(Math.PI / (2 * spec.teeth));
      expect(2 * high * factor + pin).toBeCloseTo(measureOverPins(spec, pin) ?? 0, 4);
    }
  });

  test('refusals say what would work', () => {
    const raise = (spec: GearSpec): Fail => {
      try {
        traceOutline(spec, 0.01);
      } catch (error) {
        if (error instanceof Fail) return error;
        throw error;
      }
      throw new Error('not refused');
    };
    const pointedRack = raise(makeSpec({ teeth: 20, pressureAngle: rad(30), dedendum: 1.5 }));
    expect(pointedRack.code).toBe('pointed-rack');
    expect(() =>
      traceOutline(
        makeSpec({
          teeth: 20,
          pressureAngle: rad(30),
          dedendum: Number(pointedRack.details.greatest) - 0.01,
        }),
        0.01,
      ),
    ).not.toThrow();
    const pointed = raise(makeSpec({ teeth: 8, profileShift: 0.9 }));
    expect(pointed.code).toBe('pointed-tooth');
    expect(() =>
      traceOutline(
        makeSpec({ teeth: 8, profileShift: 0.9, tipDiameter: Number(pointed.details.greatest) - 0.01 }),
        0.01,
      ),
    ).not.toThrow();
    expect(raise(makeSpec({ kind: 'internal', teeth: 18 })).code).toBe('bad-geometry');
  });
});

describe('internal wheels', () => {
  test('fill what the external tooth of the same shift leaves: thickness of the space is that tooth', () => {
    for (const x of [-0.2, 0, 0.3]) {
      const spec = makeSpec({ kind: 'internal', teeth: 50, profileShift: x, addendum: 0.8 });
      const tooth = makeSpec({ teeth: 50, profileShift: x });
      const { points, perTooth } = traceOutline(spec, 1e-4);
      let seen = 0;
      for (let k = 0; k < perTooth / 2; k++) {
        const radius = Math.hypot(points[2 * k], points[2 * k + 1]);
        if (radius > 25.3 + x || radius < 24.6 + x) continue;
        seen++;
        const off = Math.PI / 50 - Math.abs(Math.atan2(points[2 * k + 1], points[2 * k]));
        expect(2 * off * radius).toBeCloseTo(toothThicknessAt(tooth, 2 * radius), 7);
      }
      expect(seen).toBeGreaterThan(3);
      expect(isSimplePolygon(points)).toBe(true);
      expect(signedArea(points)).toBeGreaterThan(0);
    }
  });
});
