import { beforeAll, describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { buildSolid } from '../../src/solid/build-solid.ts';
import { checkMesh } from '../../src/solid/check-mesh.ts';
import type { Mesh } from '../../src/solid/mesh.ts';
import type { WheelForm } from '../../src/solid/wheel-form.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';
import { startKernel } from './ask-kernel.ts';
import { drawCompound } from './draw-compound.ts';

let askKernel: Awaited<ReturnType<typeof startKernel>>;
beforeAll(async () => {
  askKernel = await startKernel();
});

describe('a part of several toothings and all that is cut into it', () => {
  test('is one closed solid as large as its definition says, on 60 random compounds', () => {
    const random = startRandom(53);
    const seen = new Map<string, number>();
    let done = 0;
    let refused = 0;
    while (done < 60) {
      const { form, genus, exactVolume, features } = drawCompound(random);
      const chordError = 0.001 * form.spec.module;
      let mesh: Mesh;
      let coarse: Mesh;
      try {
        mesh = buildSolid(form, chordError);
        coarse = buildSolid(form, 0.02);
      } catch (error) {
        if (!(error instanceof Fail)) throw error;
        refused++;
        continue;
      }
      done++;
      for (const feature of features) seen.set(feature, (seen.get(feature) ?? 0) + 1);
      const label = `${features.join(' ')} ${JSON.stringify(form)}`;
      for (const one of [mesh, coarse]) {
        const found = checkMesh(one);
        expect([found.isClosed, found.degenerate, found.genus], label).toEqual([true, 0, genus]);
      }
      const { volume } = checkMesh(mesh);
      expect(Math.abs(volume / exactVolume(chordError / 20) - 1), label).toBeLessThan(2e-4);
      const asked = done % 8 === 0 ? mesh : coarse;
      const opinion = askKernel(asked);
      expect(opinion.genus, label).toBe(genus);
      expect(Math.abs(opinion.volume / checkMesh(asked).volume - 1), label).toBeLessThan(1e-4);
    }
    expect(refused).toBeLessThan(40);
    expect(seen.size).toBe(16);
    expect(Math.min(...seen.values())).toBeGreaterThan(2);
  }, 600_000);
});

describe('a feature that can not be is refused with the least change that works', () => {
  const spec = makeSpec({ teeth: 40 });
  const { root, tip } = findDiameters(spec);
  const good: WheelForm = {
    spec,
    faceWidth: 6,
    bore: { shape: 'round', diameter: 6 },
    hubs: [{ side: 'top', diameter: 12, length: 6 }],
    chamfer: 0,
    web: { thickness: 2, hubDiameter: 14, rimDiameter: 32 },
    holes: { count: 4, diameter: 5, circleDiameter: 23 },
    others: [{ spec: makeSpec({ teeth: 14 }), faceWidth: 5, chamfer: 0, hubs: [], offset: 12 }],
    crossHole: { side: 'top', diameter: 2 },
    phaseMark: { side: 'bottom', diameter: 1, depth: 0.5 },
  };
  const others = (change: object): Partial<WheelForm> => ({
    others: (good.others ?? []).map((one) => ({ ...one, ...change })),
  });

  test('the whole of it is one solid', () => {
    // The neck of 12 mm is wider than the pinion's 11.5 mm roots; swallowed by nothing, it would cross the teeth.
    const fine = { ...good, ...others({ spec: makeSpec({ teeth: 16 }) }) };
    expect(checkMesh(buildSolid(fine, 0.01))).toMatchObject({ isClosed: true, degenerate: 0, genus: 6 });
  });

  const bad: readonly [string, string, Partial<WheelForm>, RegExp][] = [
    ['a bore wider than the roots', 'bore', { bore: { shape: 'round', diameter: 37 } }, /at most 13\.10 mm/],
    [
      'a hub wider than the roots',
      'hubs',
      { hubs: [{ side: 'top', diameter: 38, length: 6 }], ...others({ offset: 12 }) },
      /between 6\.40 and 36\.93/,
    ],
    ['a negative width', 'faceWidth', { faceWidth: -1 }, /above 0/],
    [
      'a web thicker than the teeth are wide',
      'web',
      { web: { thickness: 7, hubDiameter: 14, rimDiameter: 32 } },
      /less than 6 mm/,
    ],
    [
      'a web thinner than a wall',
      'web',
      { web: { thickness: 0.1, hubDiameter: 14, rimDiameter: 32 } },
      /at least 0\.2/,
    ],
    [
      'a web out of its face',
      'web',
      { web: { thickness: 2, hubDiameter: 14, rimDiameter: 32, fromFace: 5 } },
      /0 to 4\.00 mm/,
    ],
    [
      'a rim thinner than a wall',
      'web',
      { web: { thickness: 2, hubDiameter: 14, rimDiameter: root } },
      /at most 37\.10 mm/,
    ],
    [
      'a web without width',
      'web',
      { web: { thickness: 2, hubDiameter: 31.8, rimDiameter: 32 } },
      /at most 31\.60 mm/,
    ],
    [
      'holes over the rim',
      'holes',
      { holes: { count: 4, diameter: 9, circleDiameter: 25 } },
      /at most 6\.60 mm/,
    ],
    [
      'holes that meet',
      'holes',
      { holes: { count: 20, diameter: 5, circleDiameter: 23 } },
      /fewer, or holes of at most 3\.39 mm/,
    ],
    ['half a hole', 'holes', { holes: { count: 2.5, diameter: 5, circleDiameter: 23 } }, /whole count/],
    [
      'a flange that ends between roots and tips',
      'flanges',
      { flanges: [{ side: 'bottom', diameter: tip - 1, thickness: 1 }] },
      /at least 42\.04 mm/,
    ],
    [
      'a flange thinner than a wall',
      'flanges',
      { flanges: [{ side: 'bottom', diameter: 44, thickness: 0.1 }] },
      /at least 0\.2/,
    ],
    [
      'a flange that closes a pocket',
      'web',
      { phaseMark: undefined as never, flanges: [{ side: 'bottom', diameter: 44, thickness: 1 }] },
      /Leave out what covers it/,
    ],
    ['more teeth on a sector than on the wheel', 'sector', { sector: { teeth: 40 } }, /1 to 39 teeth/],
    [
      'a sector’s cylinder outside its tips',
      'sector',
      { sector: { teeth: 9, restDiameter: 43 } },
      /at most 42\.00 mm/,
    ],
    [
      'a sector’s cylinder inside the rim',
      'web',
      { sector: { teeth: 9, restDiameter: 32 } },
      /at most 31\.60 mm/,
    ],
    [
      'a cross hole without a hub',
      'crossHole',
      { crossHole: { side: 'bottom', diameter: 2 } },
      /hub on that side/,
    ],
    [
      'a cross hole longer than its hub',
      'crossHole',
      { crossHole: { side: 'top', diameter: 6 } },
      /at most 5\.60 mm/,
    ],
    [
      'a cross hole as wide as the bore',
      'crossHole',
      { crossHole: { side: 'top', diameter: 5.5 } },
      /at most 5\.40 mm/,
    ],
    ['a cross hole into no bore', 'crossHole', { bore: { shape: 'none' } }, /round, d/],
    [
      'a mark wider than the rim',
      'phaseMark',
      { phaseMark: { side: 'bottom', diameter: 3, depth: 0.5 } },
      /at most 2\.35 mm/,
    ],
    [
      'a mark through the teeth',
      'phaseMark',
      { phaseMark: { side: 'bottom', diameter: 1, depth: 6 } },
      /at most 5\.80 mm/,
    ],
    [
      'a spline whose grooves meet',
      'bore.width',
      { bore: { shape: 'spline', diameter: 6, count: 6, depth: 0.5, width: 3 } },
      /at most 2\.24 mm/,
    ],
    [
      'a knurl as deep as the bore',
      'bore.depth',
      { bore: { shape: 'knurl', diameter: 6, count: 18, depth: 2 } },
      /at most 1\.00 mm/,
    ],
    [
      'grooves without number',
      'bore.count',
      { bore: { shape: 'knurl', diameter: 6, count: 2, depth: 0.3 } },
      /3 to 120/,
    ],
    [
      'teeth that nothing joins',
      'others[0].offset',
      others({ offset: 15, place: 'others[0]' }),
      /hub 3 mm long/,
    ],
    [
      'two toothings that cross',
      'spec',
      {
        hubs: [],
        crossHole: undefined as never,
        web: undefined as never,
        holes: undefined as never,
        ...others({ spec: makeSpec({ teeth: 39 }), offset: 6 }),
      },
      /hub at least 0\.2 mm long/,
    ],
    [
      'two toothings in one place',
      'spec',
      others({ spec: makeSpec({ teeth: 39 }), offset: 3 }),
      /Move them apart/,
    ],
    ['a neck that does not fit the roots over it', 'hubs', {}, /at most 11\.32 mm/],
  ];
  for (const [what, field, change, remedy] of bad) {
    test(what, () => {
      const base =
        field === 'hubs' && what.startsWith('a neck')
          ? good
          : { ...good, ...others({ spec: makeSpec({ teeth: 16 }) }) };
      let fail: unknown;
      try {
        buildSolid({ ...base, ...change }, 0.02);
      } catch (error) {
        fail = error;
      }
      expect(fail).toBeInstanceOf(Fail);
      expect(fail).toMatchObject({ code: 'bad-geometry', field });
      expect((fail as Fail).remedy).toMatch(remedy);
    });
  }
});

describe('where the teeth stand', () => {
  /** Angles of the points at the tips of a section, at one height. */
  const tipAngles = (mesh: Mesh, z: number, radius: number): number[] => {
    const angles: number[] = [];
    for (let k = 0; k < mesh.positions.length; k += 3) {
      const [x, y, height] = mesh.positions.subarray(k, k + 3);
      if (Math.abs(height - z) < 1e-9 && Math.abs(Math.hypot(x, y) - radius) < 1e-6)
        angles.push(Math.atan2(y, x));
    }
    return angles;
  };

  test('tooth 0 of each section stands at its phase, at its own lower face', () => {
    const spec = makeSpec({ teeth: 30, helixAngle: rad(20) });
    const small = makeSpec({ teeth: 12, profileShift: 0.4 });
    const mesh = buildSolid(
      {
        spec,
        faceWidth: 4,
        bore: { shape: 'none' },
        hubs: [],
        chamfer: 0,
        phase: 0.1,
        others: [{ spec: small, faceWidth: 4, chamfer: 0, hubs: [], offset: 4, phase: -0.2 }],
      },
      0.002,
    );
    for (const [one, z, phase] of [
      [spec, 0, 0.1],
      [small, 4, -0.2],
    ] as const) {
      const pitch = (2 * Math.PI) / one.teeth;
      const near = tipAngles(mesh, z, findDiameters(one).tip / 2).filter(
        (angle) => Math.abs(angle - phase) < pitch / 2,
      );
      expect((Math.min(...near) + Math.max(...near)) / 2).toBeCloseTo(phase, 9);
    }
  });

  test('a sector has as many teeth as it was given, from tooth 0 on, and its cylinder between the spaces', () => {
    const spec = makeSpec({ teeth: 24 });
    const { tip, root } = findDiameters(spec);
    const form: WheelForm = { spec, faceWidth: 4, bore: { shape: 'none' }, hubs: [], chamfer: 0 };
    const pitch = (2 * Math.PI) / 24;
    for (const restDiameter of [undefined, root - 3, root + 1, tip]) {
      const rest = restDiameter ?? root;
      const sector = restDiameter === undefined ? { teeth: 7 } : { teeth: 7, restDiameter };
      const mesh = buildSolid({ ...form, sector }, 0.002);
      expect(checkMesh(mesh)).toMatchObject({ isClosed: true, degenerate: 0, genus: 0 });
      const isTooth = (angle: number): boolean => angle > -0.9 * pitch && angle < 6.9 * pitch;
      const found = new Set(
        tipAngles(mesh, 0, tip / 2)
          .filter((angle) => rest !== tip || isTooth(angle))
          .map((angle) => Math.round(angle / pitch)),
      );
      expect([...found].sort((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5, 6]);
      if (restDiameter === undefined) continue;
      // A whole space on either side, then the cylinder.
      const bare = tipAngles(mesh, 0, rest / 2).map((angle) =>
        angle < -pitch / 2 ? angle + 2 * Math.PI : angle,
      );
      const past = bare.filter((angle) => angle > 6.6 * pitch);
      expect(Math.min(...past)).toBeCloseTo(7 * pitch, 9);
      expect(Math.max(...past)).toBeCloseTo(23 * pitch, 9);
    }
  });

  test('a phase mark points at tooth 0 where it stands at that face', () => {
    const spec = makeSpec({ teeth: 30, helixAngle: rad(20) });
    const form: WheelForm = {
      spec,
      faceWidth: 6,
      bore: { shape: 'round', diameter: 6 },
      hubs: [],
      chamfer: 0,
      phase: 0.7,
    };
    const { reference } = findDiameters(spec);
    for (const side of ['bottom', 'top'] as const) {
      const marked = buildSolid({ ...form, phaseMark: { side, diameter: 2, depth: 0.5 } }, 0.005);
      // The dimple's floor is the only face at its height.
      const z = side === 'bottom' ? 0.5 : 5.5;
      let [x, y, count] = [0, 0, 0];
      for (let k = 0; k < marked.positions.length; k += 3) {
        if (marked.positions[k + 2] !== z || Math.hypot(marked.positions[k], marked.positions[k + 1]) > 13)
          continue;
        x += marked.positions[k];
        y += marked.positions[k + 1];
        count++;
      }
      expect(count).toBeGreaterThan(8);
      const turn = side === 'top' ? (2 * 6 * Math.tan(rad(20))) / reference : 0;
      expect(Math.atan2(y, x)).toBeCloseTo(0.7 + turn, 6);
    }
  });
});
