import Module from 'manifold-3d';
import type { Mesh } from '../../src/solid/mesh.ts';

/** The independent kernel's opinion of a mesh: it throws where one is not closed and oriented. */
export async function startKernel(): Promise<(mesh: Mesh) => { genus: number; volume: number }> {
  const kernel = await Module();
  kernel.setup();
  return (mesh) => {
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
  };
}
