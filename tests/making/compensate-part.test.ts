import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { compensatePart } from '../../src/making/compensate-part.ts';
import type { Compensation } from '../../src/making/compensation.ts';
import { buildSolid } from '../../src/solid/build-solid.ts';
import { checkMesh } from '../../src/solid/check-mesh.ts';
import type { WheelForm } from '../../src/solid/wheel-form.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';

const none: Compensation = {
  scalePercent: 0,
  outsidePerSideMm: 0,
  teethPerSideMm: 0,
  holesPerSideMm: 0,
  firstLayerPerSideMm: 0,
};
const formOf = (spec: GearSpec, given: Partial<WheelForm> = {}): WheelForm => ({
  spec,
  faceWidth: 4,
  bore: { shape: 'none' },
  hubs: [],
  chamfer: 0,
  ...(spec.kind === 'internal' ? { rimDiameter: 60 } : {}),
  ...given,
});

/**
 * What a machine makes of a drawn outline, by brute force: each vertex of a fine polygon moves along the mean normal of
 * its two edges. No formula of gears in it. Corners sharper than ten degrees are left out: there a parallel curve is
 * another thing than the outline's own.
 */
function makeByMachine(points: ArrayLike<number>, perSide: number, outward: number, scale: number): number[] {
  const n = points.length / 2;
  const made: number[] = [];
  for (let k = 0; k < n; k++) {
    const at = (j: number): [number, number] => {
      const i = (j + n) % n;
      return [points[2 * i], points[2 * i + 1]];
    };
    const [px, py] = at(k - 1);
    const [x, y] = at(k);
    const [qx, qy] = at(k + 1);
    const before = Math.atan2(y - py, x - px);
    const after = Math.atan2(qy - y, qx - x);
    const turn = Math.atan2(Math.sin(after - before), Math.cos(after - before));
    if (Math.abs(turn) > (10 * Math.PI) / 180) continue;
    const angle = before + turn / 2;
    made.push(
      scale * (x + outward * perSide * Math.sin(angle)),
      scale * (y - outward * perSide * Math.cos(angle)),
    );
  }
  return made;
}

/** The farthest that one of the points lies from a closed polygon. */
function findStray(points: readonly number[], polygon: ArrayLike<number>): number {
  const n = polygon.length / 2;
  let worst = 0;
  for (let k = 0; k < points.length; k += 2) {
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < n; i++) {
      const j = (i + 1) % n;
      const [ax, ay, bx, by] = [polygon[2 * i], polygon[2 * i + 1], polygon[2 * j], polygon[2 * j + 1]];
      const length = (bx - ax) ** 2 + (by - ay) ** 2;
      const part =
        length > 0
          ? Math.min(
              1,
              Math.max(0, ((points[k] - ax) * (bx - ax) + (points[k + 1] - ay) * (by - ay)) / length),
            )
          : 0;
      least = Math.min(
        least,
        Math.hypot(points[k] - ax - part * (bx - ax), points[k + 1] - ay - part * (by - ay)),
      );
    }
    worst = Math.max(worst, least);
  }
  return worst;
}

const firstTeeth = (points: Float64Array, perTooth: number): Float64Array =>
  points.subarray(0, 2 * perTooth * 2 + 2);

describe('a compensated outline', () => {
  const spec = fc
    .record({
      teeth: fc.integer({ min: 9, max: 60 }),
      module: fc.double({ min: 0.5, max: 2, noNaN: true }),
      angle: fc.constantFrom(14.5, 20, 25),
      shift: fc.double({ min: -0.1, max: 0.4, noNaN: true }),
    })
    .map(({ teeth, module, angle, shift }) =>
      makeSpec({ teeth, module, pressureAngle: rad(angle), profileShift: shift, addendum: 0.8 }),
    );

  test('made by a machine with those errors is the wheel that was meant, within 2 µm', () => {
    fc.assert(
      fc.property(
        spec,
        // Up to 0.08 m a side: a fillet of 0.38 m never ends as a corner.
        fc.double({ min: -0.08, max: 0.08, noNaN: true }),
        fc.double({ min: -0.8, max: 0.8, noNaN: true }),
        (wanted, part, percent) => {
          const perSide = part * wanted.module;
          const drawn = compensatePart(formOf(wanted), {
            ...none,
            outsidePerSideMm: perSide,
            teethPerSideMm: perSide,
            scalePercent: percent,
          });
          const outline = traceOutline(drawn.form.spec, 2e-4 * wanted.module);
          const scale = 1 + percent / 100;
          // The machine's own order: it makes everything longer, then lays its line beyond.
          const made = makeByMachine(
            firstTeeth(outline.points, outline.perTooth).map((one) => one * scale),
            perSide,
            1,
            1,
          );
          // The ends of the piece have no neighbor to take their direction from.
          const kept = made.slice(8, -8);
          expect(kept.length).toBeGreaterThan(40);
          const nominal = traceOutline(wanted, 2e-4 * wanted.module);
          expect(findStray(kept, nominal.points.subarray(0, 2 * nominal.perTooth * 3))).toBeLessThan(0.002);
        },
      ),
      { numRuns: 40, seed: 5 },
    );
  });

  test.each([
    ['ring', makeSpec({ kind: 'internal', teeth: 40, rootRadius: 0.2 }), -1],
    ['rack', makeSpec({ kind: 'rack', teeth: 6 }), 1],
  ] as const)('%s: too', (_, wanted, outward) => {
    for (const perSide of [0.07, -0.05]) {
      const drawn = compensatePart(formOf(wanted), {
        ...none,
        outsidePerSideMm: perSide,
        teethPerSideMm: perSide,
      });
      const outline = traceOutline(drawn.form.spec, 2e-4);
      const piece = outline.points.subarray(6, 2 * outline.perTooth * 3);
      const made = makeByMachine(piece, perSide, outward, 1).slice(8, -8);
      expect(made.length).toBeGreaterThan(60);
      expect(findStray(made, traceOutline(wanted, 2e-4).points)).toBeLessThan(0.002);
    }
  });

  test('of nothing is the form itself', () => {
    const form = formOf(makeSpec({ teeth: 17, rootRadius: 0.6 }), { bore: { shape: 'round', diameter: 3 } });
    expect(compensatePart(form, none).form).toEqual(form);
    expect(compensatePart(form, none).changes).toEqual([]);
  });

  test('undoes an error of the same size that went the other way', () => {
    const spec20 = makeSpec({ teeth: 20, tipDiameter: 21.9 });
    const there = compensatePart(formOf(spec20), { ...none, outsidePerSideMm: 0.05, teethPerSideMm: 0.07 });
    const back = compensatePart(there.form, { ...none, outsidePerSideMm: -0.05, teethPerSideMm: -0.07 });
    for (const key of ['module', 'dedendum', 'rootRadius', 'thinning', 'tipDiameter'] as const)
      expect(back.form.spec[key], key).toBeCloseTo(spec20[key] ?? 0, 12);
  });
});

describe('what else is compensated', () => {
  const hub = { side: 'bottom', diameter: 8, length: 3 } as const;
  const c = { ...none, outsidePerSideMm: 0.06, holesPerSideMm: 0.08, scalePercent: -0.5 };

  test('a hole opens, a hub shrinks, heights stay', () => {
    const form = formOf(makeSpec({ teeth: 20 }), {
      bore: { shape: 'd', diameter: 4, flat: 3.5 },
      hubs: [hub],
    });
    const { form: drawn, faceDown, changes } = compensatePart(form, c);
    // (1 + s) D' − 2 h = D for holes, (1 + s) D' + 2 e = D for outsides.
    if (drawn.bore.shape !== 'd') throw new Error('no D');
    expect(0.995 * drawn.bore.diameter - 0.16).toBeCloseTo(4, 12);
    expect(0.995 * drawn.bore.flat - 0.16).toBeCloseTo(3.5, 12);
    expect(0.995 * drawn.hubs[0].diameter + 0.12).toBeCloseTo(8, 12);
    expect([drawn.faceWidth, drawn.hubs[0].length]).toEqual([4, 3]);
    expect(faceDown).toBe('top');
    expect(changes.find((one) => one.of === 'holes')).toEqual({
      of: 'holes',
      perSideMm: 0.08,
      onDiameterMm: 0.16,
    });
    expect(changes.find((one) => one.of === 'outside')?.onDiameterMm).toBeCloseTo(-0.12, 12);
    const solid = checkMesh(buildSolid(drawn, 0.01));
    expect(solid).toMatchObject({ isClosed: true, degenerate: 0, genus: 1 });
  });

  test('the rims are chamfered for the bulge of the first layers, and what stays is said', () => {
    const { form: drawn, advice } = compensatePart(formOf(makeSpec({ teeth: 20 })), {
      ...none,
      firstLayerPerSideMm: 0.15,
    });
    expect(drawn.chamfer).toBe(0.15);
    expect(advice.join(' ')).toContain('0.15 mm a side (0.30 on the diameter)');
    expect(checkMesh(buildSolid(drawn, 0.01)).isClosed).toBe(true);
  });

  test('a hole keeps its size over its facets', () => {
    const drawn = compensatePart(
      formOf(makeSpec({ teeth: 20 }), { bore: { shape: 'round', diameter: 3 } }),
      none,
    );
    const { positions } = buildSolid(drawn.form, 0.002);
    const ring: number[] = [];
    for (let k = 0; k < positions.length; k += 3)
      if (positions[k + 2] === 0 && Math.hypot(positions[k], positions[k + 1]) < 2) ring.push(k);
    // The facets of an n-gon cut r (1 − cos(π/n)) off the radius.
    expect(1.5 * (1 - Math.cos(Math.PI / ring.length))).toBeLessThan(0.002);
  });
});

describe('an offset that leaves no part', () => {
  const refuse = (form: WheelForm, compensation: Compensation): Fail => {
    try {
      compensatePart(form, compensation);
    } catch (error) {
      if (error instanceof Fail) return error;
      throw error;
    }
    throw new Error('was not refused');
  };

  test.each([
    ['eats the tooth', { teethPerSideMm: 0.5 }, 'teethPerSideMm', 'leaves no tooth'],
    ['closes the gap', { teethPerSideMm: -0.5 }, 'teethPerSideMm', 'closes the gaps'],
    ['breaks the wall', { holesPerSideMm: 5 }, 'holesPerSideMm', 'no part to draw'],
    ['closes the hole', { holesPerSideMm: -2 }, 'holesPerSideMm', 'no part to draw'],
  ] as const)('%s: is refused, and what is offered works', (_, wish, key, words) => {
    const form = formOf(makeSpec({ teeth: 14, module: 1 }), { bore: { shape: 'round', diameter: 3 } });
    const fail = refuse(form, { ...none, ...wish });
    expect(fail).toMatchObject({ code: 'bad-geometry', field: `compensation.${key}` });
    expect(fail.message).toContain(words);
    const works = fail.details.works as number;
    expect(fail.remedy).toContain(String(works));
    expect(compensatePart(form, { ...none, [key]: works }).form).toBeDefined();
    // No more than a thousandth is given away.
    const more = works + Math.sign(works) * 0.0021;
    expect(() => compensatePart(form, { ...none, [key]: more })).toThrow(Fail);
  });
});
