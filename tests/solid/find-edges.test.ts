import { describe, expect, test } from 'vitest';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { buildSolid } from '../../src/solid/build-solid.ts';
import { checkMesh } from '../../src/solid/check-mesh.ts';
import { cutMesh } from '../../src/solid/cut-mesh.ts';
import { findEdges } from '../../src/solid/find-edges.ts';
import type { Mesh } from '../../src/solid/mesh.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';
import { drawForm } from './draw-form.ts';

const sharpAngle = rad(25);

/** A square bar 2 wide and 3 high, from its corners. */
const bar: Mesh = {
  positions: Float64Array.of(
    ...[-1, -1, 0, 1, -1, 0, 1, 1, 0, -1, 1, 0],
    ...[-1, -1, 3, 1, -1, 3, 1, 1, 3, -1, 1, 3],
  ),
  triangles: Uint32Array.of(
    ...[0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7],
    ...[0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7],
  ),
};

function lengthOf(segments: Float32Array): number {
  let sum = 0;
  for (let k = 0; k < segments.length; k += 12)
    sum += Math.hypot(
      segments[k + 3] - segments[k],
      segments[k + 4] - segments[k + 1],
      segments[k + 5] - segments[k + 2],
    );
  return sum;
}

describe('the edges that are drawn', () => {
  test('of a square bar are its twelve, and no diagonal of a face', () => {
    const { sharp, bent } = findEdges(bar, sharpAngle);
    expect([sharp.length / 12, bent.length]).toEqual([12, 0]);
    expect(lengthOf(sharp)).toBeCloseTo(8 * 2 + 4 * 3, 5);
  });

  test('of an open face are its rim', () => {
    const { sharp } = findEdges({ ...bar, triangles: bar.triangles.slice(0, 6) }, sharpAngle);
    expect(lengthOf(sharp)).toBeCloseTo(8, 5);
  });

  test('of a wheel are both faces, both rims of the bore, and along the width the corners of its tips alone', () => {
    const spec = makeSpec({ teeth: 30 });
    const form = { spec, faceWidth: 8, bore: { shape: 'round', diameter: 9 }, hubs: [], chamfer: 0 } as const;
    const { sharp, bent } = findEdges(buildSolid(form, 0.002), sharpAngle);
    let upright = 0;
    for (let k = 0; k < sharp.length; k += 12) {
      if (sharp[k + 2] === sharp[k + 5]) continue;
      expect(Math.abs(sharp[k + 5] - sharp[k + 2])).toBe(8);
      expect(Math.hypot(sharp[k], sharp[k + 1])).toBeCloseTo(findDiameters(spec).tip / 2, 4);
      upright++;
    }
    expect(upright).toBe(2 * 30);
    // The bore's wall turns all round: each of its steps can be where it turns away from the eye.
    const onBore = [];
    for (let k = 0; k < bent.length; k += 12) {
      const radius = Math.hypot(bent[k], bent[k + 1]);
      if (radius > 4.6) continue;
      onBore.push(bent[k + 6] * bent[k] + bent[k + 7] * bent[k + 1]);
    }
    expect(onBore.length).toBeGreaterThan(40);
    expect(Math.max(...onBore)).toBeLessThan(0);
  });
});

describe('a solid cut open', () => {
  test('leaves two parts that hold what the whole held, on 120 random parts and planes', () => {
    const random = startRandom(77);
    let done = 0;
    for (let draw = 0; done < 120 && draw < 400; draw++) {
      const form = drawForm(random);
      let mesh: Mesh;
      try {
        mesh = buildSolid(form, 0.01 * form.spec.module);
      } catch {
        continue;
      }
      // Every third plane goes through the axis square to it, where corners lie on the plane itself.
      const isThroughAxis = done % 3 === 0;
      const angle = isThroughAxis ? Math.PI / 2 : 2 * Math.PI * random.uniform();
      const offset =
        isThroughAxis || form.spec.kind === 'rack' ? 0 : 0.3 * random.uniform() * form.spec.module;
      const whole = checkMesh(mesh).volume;
      const kept = volumeOf(mesh, angle, offset);
      const taken = volumeOf(mesh, angle + Math.PI, -offset);
      const label = JSON.stringify({ form, angle, offset });
      expect(Math.min(kept, taken), label).toBeGreaterThanOrEqual(-1e-9 * whole);
      expect(Math.abs((kept + taken) / whole - 1), label).toBeLessThan(1e-6);
      if (
        isThroughAxis &&
        form.spec.kind !== 'rack' &&
        form.spec.teeth % 2 === 0 &&
        form.spec.helixAngle === 0
      ) {
        expect(Math.abs(kept / taken - 1), label).toBeLessThan(1e-4);
      }
      done++;
    }
    expect(done).toBe(120);
  });

  test('shows a disc’s section: as wide as its tips less its bore, as high as its width, its hub on top', () => {
    const spec = makeSpec({ teeth: 40 });
    const mesh = buildSolid(
      {
        spec,
        faceWidth: 5,
        bore: { shape: 'round', diameter: 6 },
        hubs: [{ side: 'top', diameter: 12, length: 7 }],
        chamfer: 0,
      },
      0.001,
    );
    const { cap } = cutMesh(mesh, { angle: Math.PI / 2, offset: 0 });
    let area = 0;
    const p = cap.positions;
    for (let k = 0; k < cap.triangles.length; k += 3) {
      const [a, b, c] = [3 * cap.triangles[k], 3 * cap.triangles[k + 1], 3 * cap.triangles[k + 2]];
      const twice = (p[b] - p[a]) * (p[c + 2] - p[a + 2]) - (p[b + 2] - p[a + 2]) * (p[c] - p[a]);
      expect(twice).toBeGreaterThan(0);
      area += twice / 2;
    }
    // The first tooth stands on +x: of 40 teeth, tips lie at both ends of the cut.
    const { tip } = findDiameters(spec);
    expect(area / ((tip - 6) * 5 + (12 - 6) * 7)).toBeCloseTo(1, 4);
    for (let k = 1; k < p.length; k += 3) expect(Math.abs(p[k])).toBeLessThan(1e-9);
  });
});

/** By the divergence theorem over the body's triangles and the cap's. */
function volumeOf(mesh: Mesh, angle: number, offset: number): number {
  const { body, cap } = cutMesh(mesh, { angle, offset });
  return checkMesh(body).volume + checkMesh(cap).volume;
}
