import { beforeAll, describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { buildSolid } from '../../src/solid/build-solid.ts';
import { checkMesh } from '../../src/solid/check-mesh.ts';
import type { Mesh } from '../../src/solid/mesh.ts';
import { startKernel } from './ask-kernel.ts';
import { drawCompound } from './draw-compound.ts';

let askKernel: Awaited<ReturnType<typeof startKernel>>;
beforeAll(async () => {
  askKernel = await startKernel();
});

describe('a part of several toothings and all that is cut into it', () => {
  test('is one closed solid as large as its definition says, on 200 random compounds', () => {
    const random = startRandom(53);
    const seen = new Map<string, number>();
    let done = 0;
    let refused = 0;
    while (done < 200) {
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
    expect(Math.min(...seen.values())).toBeGreaterThan(8);
  }, 600_000);
});
