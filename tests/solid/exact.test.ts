import { describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { encodeStep } from '../../src/formats/step.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { buildExact } from '../../src/solid/build-exact.ts';
import { checkMesh } from '../../src/solid/check-mesh.ts';
import type { ExactBody, Triple } from '../../src/solid/exact-body.ts';
import type { WheelForm } from '../../src/solid/wheel-form.ts';
import { readStep } from '../formats/read-step.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';
import { type DrawnCompound, drawCompound } from './draw-compound.ts';
import { drawForm } from './draw-form.ts';

/** Holes through a body by the law of Euler and Poincaré, V − E + F − (L − F) = 2 (1 − G). */
function findGenus({ vertices, edges, faces }: ExactBody): number {
  const loops = faces.reduce((sum, face) => sum + face.loops.length, 0);
  return 1 - (vertices.length - edges.length + 2 * faces.length - loops) / 2;
}

/** What is wrong with a body: edges not used once each way, loops that don't close, splines that miss their corners. */
function listFaults({ vertices, edges, faces }: ExactBody): string[] {
  const faults: string[] = [];
  const uses = new Int32Array(2 * edges.length);
  const far = (a: Triple, b: Triple): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
  for (const { loops } of faces) {
    for (const loop of loops) {
      loop.forEach(({ edge, isForward }, k) => {
        uses[2 * edge + (isForward ? 0 : 1)]++;
        const next = loop[(k + 1) % loop.length];
        const end = isForward ? edges[edge].to : edges[edge].from;
        const start = next.isForward ? edges[next.edge].from : edges[next.edge].to;
        if (end !== start) faults.push(`a loop breaks after edge ${edge}`);
      });
    }
  }
  if (uses.some((count) => count !== 1)) faults.push('an edge without its two faces');
  for (const { from, to, curve } of edges) {
    if (far(vertices[from], vertices[to]) < 1e-7) faults.push('an edge of no length');
    if (curve.kind === 'spline') {
      const { points } = curve.spline;
      if (far(points[0], vertices[from]) > 1e-12 || far(points[points.length - 1], vertices[to]) > 1e-12)
        faults.push('a spline misses its corner');
    }
    if (curve.kind === 'arc') {
      for (const end of [from, to])
        if (Math.abs(far(curve.center, vertices[end]) - curve.radius) > 1e-9)
          faults.push('an arc misses its corner');
    }
  }
  return faults;
}

const attempt = (form: WheelForm): ExactBody | undefined => {
  try {
    return buildExact(form);
  } catch (error) {
    if (error instanceof Fail) return undefined;
    throw error;
  }
};

describe('an exact boundary', () => {
  test('closes, and has as many holes as its part, on 150 random wheels, rings and racks', () => {
    const random = startRandom(8);
    let done = 0;
    while (done < 150) {
      const form = drawForm(random);
      const body = attempt(form);
      if (!body) continue;
      done++;
      const holes = form.spec.kind === 'internal' || form.bore.shape !== 'none' ? 1 : 0;
      const label = JSON.stringify(form);
      expect(listFaults(body), label).toEqual([]);
      expect(findGenus(body), label).toBe(holes);
    }
  }, 120_000);

  test('closes, and has as many holes as its part, on 100 random compounds', () => {
    const random = startRandom(21);
    let done = 0;
    while (done < 100) {
      const { form, genus } = drawCompound(random);
      const body = attempt(form);
      if (!body) continue;
      done++;
      const label = JSON.stringify(form);
      expect(listFaults(body), label).toEqual([]);
      expect(findGenus(body), label).toBe(genus);
    }
  }, 120_000);

  test('of parts with everything on them is read by an independent kernel as one solid of the right volume', async () => {
    const random = startRandom(4);
    const chosen: DrawnCompound[] = [];
    const wanted = [
      ['web', 'holes', 'cross', 'mark'],
      ['sector', 'flange', 'helix'],
    ];
    while (chosen.length < wanted.length) {
      const drawn = drawCompound(random);
      if (wanted[chosen.length].every((feature) => drawn.features.includes(feature)) && attempt(drawn.form))
        chosen.push(drawn);
    }
    // The kernel's chords are coarse here; step.test.ts holds volumes to a sixth of this.
    for (const { form, genus, exactVolume } of chosen) {
      const bytes = encodeStep([{ body: buildExact(form), x: 0 }], 'part', '');
      const { solids } = await readStep(bytes, 0.008);
      const label = JSON.stringify(form);
      expect(solids.length, label).toBe(1);
      expect(checkMesh(solids[0].mesh), label).toMatchObject({ isClosed: true, degenerate: 0, genus });
      expect(Math.abs(checkMesh(solids[0].mesh).volume / exactVolume(1e-5) - 1), label).toBeLessThan(6e-4);
    }
  }, 240_000);

  test('of a pointed tooth and of a root without a floor has no edge of no length', () => {
    const pointed = makeSpec({ teeth: 12, profileShift: 0.6, tipDiameter: 15.1 });
    const round = makeSpec({ teeth: 20, rootRadius: 0.6, helixAngle: rad(8) });
    for (const spec of [pointed, round]) {
      const body = attempt({ spec, faceWidth: 4, bore: { shape: 'none' }, hubs: [], chamfer: 0 });
      expect(body && listFaults(body)).toEqual([]);
    }
  });
});
