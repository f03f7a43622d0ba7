import Module from 'manifold-3d';
import { beforeAll, describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { signedArea } from '../../src/plane/polygon.ts';
import { buildSolid } from '../../src/solid/build-solid.ts';
import { checkMesh } from '../../src/solid/check-mesh.ts';
import type { Mesh } from '../../src/solid/mesh.ts';
import type { Bore, WheelForm } from '../../src/solid/wheel-form.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';
import { drawForm } from './draw-form.ts';

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

function areaOfBore(bore: Bore): number {
  switch (bore.shape) {
    case 'none':
      return 0;
    case 'round':
      return (Math.PI * bore.diameter ** 2) / 4;
    case 'hex':
      return (Math.sqrt(3) / 2) * bore.acrossFlats ** 2;
    case 'square':
      return bore.acrossFlats ** 2;
    default: {
      const r = bore.diameter / 2;
      const d = bore.shape === 'd' ? bore.flat - r : bore.flat / 2;
      const segment = r * r * Math.acos(d / r) - d * Math.sqrt(r * r - d * d);
      return Math.PI * r * r - segment * (bore.shape === 'd' ? 1 : 2);
    }
  }
}

/**
 * The volume that the form's definition gives, from an outline twelve times finer (its own error is a hundredth and less): section area times height, the
 * chamfers by Simpson's rule on the section between clipped and whole outline (exact: its area is quadratic in the
 * height). A helix turns sections and leaves their area.
 */
function exactVolume(form: WheelForm, chordError: number): number {
  const { spec, faceWidth: b, chamfer: c } = form;
  const { points } = traceOutline(spec, chordError / 12);
  const whole = signedArea(points);
  if (spec.kind === 'rack') return whole * b;
  const { tip } = findDiameters(spec);
  const internal = spec.kind === 'internal';
  const limit = internal ? tip / 2 + c : tip / 2 - c;
  const sectionAt = (t: number): number => {
    const section = new Float64Array(points.length);
    for (let k = 0; k < points.length; k += 2) {
      const radius = Math.hypot(points[k], points[k + 1]);
      const clipped = internal ? Math.max(radius, limit) : Math.min(radius, limit);
      const factor = (clipped + (radius - clipped) * t) / radius;
      section[k] = points[k] * factor;
      section[k + 1] = points[k + 1] * factor;
    }
    return signedArea(section);
  };
  const chamfered = c > 0 ? ((sectionAt(0) + 4 * sectionAt(0.5) + whole) * c) / 6 : 0;
  const toothed = whole * (b - 2 * c) + 2 * chamfered;
  if (internal) return (Math.PI * (form.rimDiameter ?? 0) ** 2 * b) / 4 - toothed;
  const hubs = form.hubs.reduce((sum, hub) => sum + (Math.PI * hub.diameter ** 2 * hub.length) / 4, 0);
  const length = b + form.hubs.reduce((sum, hub) => sum + hub.length, 0);
  return toothed + hubs - areaOfBore(form.bore) * length;
}

describe('every solid is closed, whole and as large as its definition says', () => {
  test('1,000 random parts, checked by an independent kernel', () => {
    const random = startRandom(311);
    let done = 0;
    let refused = 0;
    const kinds = new Map<string, number>();
    let worst = 0;
    while (done < 1000) {
      const form = drawForm(random);
      // Fine enough that what is left is the builder's error, not the sampling's.
      const chordError = 0.0003 * form.spec.module;
      let mesh: Mesh;
      try {
        mesh = buildSolid(form, chordError);
      } catch (error) {
        expect(error).toBeInstanceOf(Fail);
        refused++;
        continue;
      }
      done++;
      const label = JSON.stringify(form);
      const report = checkMesh(mesh);
      expect(report.isClosed, label).toBe(true);
      expect(report.degenerate, label).toBe(0);
      const holes = form.spec.kind === 'internal' || form.bore.shape !== 'none' ? 1 : 0;
      expect(report.genus, label).toBe(holes);
      const off = Math.abs(report.volume / exactVolume(form, chordError) - 1);
      worst = Math.max(worst, off);
      expect(off, label).toBeLessThan(2e-4);
      if (done % 2 === 0 || form.spec.kind !== 'external') {
        const { genus, volume } = askKernel(mesh);
        expect(genus, label).toBe(holes);
        expect(Math.abs(volume / report.volume - 1), label).toBeLessThan(1e-4);
      }
      kinds.set(
        `${form.spec.kind} ${form.bore.shape}`,
        (kinds.get(`${form.spec.kind} ${form.bore.shape}`) ?? 0) + 1,
      );
    }
    expect(kinds.size).toBe(8);
    expect(Math.min(...kinds.values())).toBeGreaterThan(30);
    expect(refused).toBeLessThan(300);
    expect(worst).toBeGreaterThan(0);
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
