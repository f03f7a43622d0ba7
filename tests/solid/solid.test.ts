import Module from 'manifold-3d';
import { beforeAll, describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { findTrochoid } from '../../src/involute/trochoid.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { buildSolid } from '../../src/solid/build-solid.ts';
import { checkMesh } from '../../src/solid/check-mesh.ts';
import type { Mesh } from '../../src/solid/mesh.ts';
import type { WheelForm } from '../../src/solid/wheel-form.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';
import { drawForm } from './draw-form.ts';
import { exactVolume } from './exact-volume.ts';

type Kernel = Awaited<ReturnType<typeof Module>>;
let kernel: Kernel;
beforeAll(async () => {
  kernel = await Module();
  kernel.setup();
});

/** The independent kernel's opinion: it throws on a mesh that is not closed and oriented. */
function askKernel(mesh: Mesh): { genus: number; volume: number } {
  const solid = new kernel.Manifold(
    new kernel.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(mesh.positions),
      triVerts: mesh.triangles,
    }),
  );
  const answer = { genus: solid.genus(), volume: solid.volume() };
  solid.delete();
  return answer;
}

/** Triangles of the two faces that don't look out: a face that overlaps itself has some. */
function countFolded({ positions: p, triangles }: Mesh, faceWidth: number): number {
  let folded = 0;
  for (let k = 0; k < triangles.length; k += 3) {
    const a = 3 * triangles[k];
    const b = 3 * triangles[k + 1];
    const c = 3 * triangles[k + 2];
    const z = p[a + 2];
    if ((z !== faceWidth && z !== 0) || p[b + 2] !== z || p[c + 2] !== z) continue;
    const turn = (p[b] - p[a]) * (p[c + 1] - p[a + 1]) - (p[b + 1] - p[a + 1]) * (p[c] - p[a]);
    if (!((z === 0 ? -turn : turn) > 0)) folded++;
  }
  return folded;
}

describe('every solid is closed, whole and as large as its definition says', () => {
  test('1,000 random parts, each held against its exact volume and an independent kernel', () => {
    const random = startRandom(311);
    let done = 0;
    let refused = 0;
    const kinds = new Map<string, number>();
    while (done < 1000) {
      const form = drawForm(random);
      const { module, teeth, kind } = form.spec;
      // Fine enough that a chord error's share of the volume stays below 0.02 %: few teeth are mostly outline.
      const chordError = module * (kind === 'external' ? 1e-4 + 2e-5 * Math.min(teeth, 60) : 8e-4);
      let mesh: Mesh;
      let coarse: Mesh;
      try {
        mesh = buildSolid(form, chordError);
        coarse = buildSolid(form, 0.02 * module);
      } catch (error) {
        expect(error).toBeInstanceOf(Fail);
        refused++;
        continue;
      }
      done++;
      const label = JSON.stringify(form);
      const holes = kind === 'internal' || form.bore.shape !== 'none' ? 1 : 0;
      for (const one of [mesh, coarse]) {
        const { isClosed, degenerate, genus } = checkMesh(one);
        expect([isClosed, degenerate, genus, countFolded(one, form.faceWidth)], label).toEqual([
          true,
          0,
          holes,
          0,
        ]);
      }
      const { volume } = checkMesh(mesh);
      expect(Math.abs(volume / exactVolume(form, chordError / 20) - 1), label).toBeLessThan(2e-4);
      // The kernel takes ten times as long as all of this: it sees every fourth part as fine, the others coarse.
      const seen = done % 4 === 0 ? mesh : coarse;
      const opinion = askKernel(seen);
      expect(opinion.genus, label).toBe(holes);
      expect(Math.abs(opinion.volume / checkMesh(seen).volume - 1), label).toBeLessThan(1e-4);
      const key = `${kind} ${form.bore.shape}`;
      kinds.set(key, (kinds.get(key) ?? 0) + 1);
    }
    expect(kinds.size).toBe(8);
    expect(Math.min(...kinds.values())).toBeGreaterThan(30);
    expect(refused).toBeLessThan(50);
  }, 1_800_000);

  test('faces of undercut pinions stay flat and unfolded down to the greatest chamfer', () => {
    const random = startRandom(5);
    let undercut = 0;
    for (let draw = 0; draw < 60; draw++) {
      const spec = makeSpec({
        teeth: 6 + random.index(Array(14).fill(1)),
        profileShift: 0.4 * random.uniform() - 0.2,
        rootRadius: 0.38 * random.uniform(),
        addendum: 0.7,
      });
      const trochoid = findTrochoid(spec);
      if (trochoid.meetsTip) continue;
      if (trochoid.isUndercut) undercut++;
      const chamfer = findDiameters(spec).tip / 2 - trochoid.endRadius;
      const mesh = buildSolid({ spec, faceWidth: 8, bore: { shape: 'none' }, hubs: [], chamfer }, 0.005);
      const { isClosed, degenerate, genus } = checkMesh(mesh);
      const label = JSON.stringify(spec);
      expect([isClosed, degenerate, genus], label).toEqual([true, 0, 0]);
      expect(countFolded(mesh, 8), label).toBe(0);
    }
    expect(undercut).toBeGreaterThan(15);
  });

  test('faces of 200 chamfered rings stay unfolded, however coarsely they are sampled', () => {
    const random = startRandom(29);
    const between = (low: number, high: number): number => low + (high - low) * random.uniform();
    let done = 0;
    while (done < 200) {
      const spec = makeSpec({
        kind: 'internal',
        teeth: Math.round(between(20, 140)),
        helixAngle: random.uniform() < 0.5 ? 0 : rad(between(-35, 35)),
        pressureAngle: rad(between(14.5, 28)),
        profileShift: between(-0.5, 0.8),
        addendum: between(0.4, 1),
        dedendum: between(1, 1.5),
        rootRadius: between(0, 0.6),
        thinning: between(0, 0.1),
      });
      const rimDiameter = findDiameters(spec).root + between(0.4, 8);
      const chamfer = between(0.02, 1.2);
      const form: WheelForm = {
        spec,
        faceWidth: 3,
        bore: { shape: 'none' },
        hubs: [],
        chamfer,
        rimDiameter,
      };
      try {
        for (const chordError of [0.005, 0.02, 0.05, 1]) {
          const mesh = buildSolid(form, chordError);
          const label = `${chordError} ${JSON.stringify(form)}`;
          expect([checkMesh(mesh).isClosed, countFolded(mesh, 3)], label).toEqual([true, 0]);
        }
        done++;
      } catch (error) {
        // No such ring, or too large a chamfer for it.
        if (!(error instanceof Fail)) throw error;
      }
    }
  });

  test('the checker sees an open, a flipped and a flattened mesh', () => {
    const mesh = buildSolid(
      {
        spec: makeSpec({ teeth: 20 }),
        faceWidth: 3,
        bore: { shape: 'round', diameter: 4 },
        hubs: [],
        chamfer: 0,
      },
      0.01,
    );
    expect(checkMesh(mesh).isClosed).toBe(true);
    expect(checkMesh({ ...mesh, triangles: mesh.triangles.slice(3) }).isClosed).toBe(false);
    const flipped = mesh.triangles.slice();
    [flipped[0], flipped[1]] = [flipped[1], flipped[0]];
    expect(checkMesh({ ...mesh, triangles: flipped }).isClosed).toBe(false);
    const flat = mesh.triangles.slice();
    flat[1] = flat[0];
    expect(checkMesh({ ...mesh, triangles: flat }).degenerate).toBeGreaterThan(0);
  });
});

describe('a part that can not be is refused with a value that works', () => {
  const good: WheelForm = {
    spec: makeSpec({ teeth: 20 }),
    faceWidth: 4,
    bore: { shape: 'round', diameter: 5 },
    hubs: [],
    chamfer: 0.2,
  };
  const bad: readonly [string, Partial<WheelForm>][] = [
    ['bore', { bore: { shape: 'round', diameter: 17.4 } }],
    ['bore.flat', { bore: { shape: 'd', diameter: 5, flat: 5.5 } }],
    ['hubs', { hubs: [{ side: 'top', diameter: 4, length: 3 }] }],
    ['hubs', { hubs: [{ side: 'top', diameter: 19, length: 3 }] }],
    ['chamfer', { chamfer: 3 }],
    ['faceWidth', { faceWidth: 0 }],
    ['rimDiameter', { spec: makeSpec({ kind: 'internal', teeth: 50 }), bore: { shape: 'none' } }],
    ['chamfer', { spec: makeSpec({ kind: 'rack', teeth: 9 }), bore: { shape: 'none' } }],
  ];
  for (const [field, change] of bad) {
    test(`${field}: ${JSON.stringify(Object.keys(change))}`, () => {
      let fail: unknown;
      try {
        buildSolid({ ...good, ...change }, 0.01);
      } catch (error) {
        fail = error;
      }
      expect(fail).toBeInstanceOf(Fail);
      expect(fail).toMatchObject({ code: 'bad-geometry', field });
    });
  }

  test('a right-hand helix turns counter-clockwise going up', () => {
    const mesh = buildSolid({ ...good, spec: makeSpec({ teeth: 20, helixAngle: rad(20) }) }, 0.01);
    const { positions } = mesh;
    // The tip nearest +x at the bottom lies at a larger angle at the top.
    const lead =
      (2 * Math.tan(rad(20)) * 4) / findDiameters(makeSpec({ teeth: 20, helixAngle: rad(20) })).reference;
    let bottom = 0;
    let top = 0;
    for (let k = 0; k < positions.length; k += 3) {
      const radius = Math.hypot(positions[k], positions[k + 1]);
      const angle = Math.atan2(positions[k + 1], positions[k]);
      if (radius < 11 || Math.abs(angle - lead / 2) > 0.14) continue;
      if (positions[k + 2] === 0.2) bottom = angle;
      if (positions[k + 2] === 3.8) top = angle;
    }
    expect(top - bottom).toBeGreaterThan(0);
  });
});
