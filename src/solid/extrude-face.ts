import { fillLoop } from './fill-cap.ts';
import { type Mesh, type MeshRing, startMesh } from './mesh.ts';

/**
 * The closed, outward mesh of a plane face with holes, raised from z = 0 to `height` (mm, above 0). All loops
 * counter-clockwise, x0, y0, …; holes lie inside the outline and apart from each other.
 */
export function extrudeFace(
  outline: ArrayLike<number>,
  holes: readonly ArrayLike<number>[],
  height: number,
): Mesh {
  const joined = holes.flatMap((hole) => Array.from(hole));
  const n = outline.length / 2;
  const all = n + joined.length / 2;
  const triples = fillLoop(outline, holes);
  const mesh = startMesh(2 * all, 2 * all + (2 * triples.length) / 3);
  const low = mesh.addRing(outline, 0, 0, 0);
  const lowHoles = mesh.addRing(joined, 0, 0, 0);
  const high = mesh.addRing(outline, height, 0, 0);
  const highHoles = mesh.addRing(joined, height, 0, 0);
  const inner = all - n;
  const rings = (outer: number, first: number): readonly MeshRing[] => [
    { first: outer, count: n },
    { first, count: inner },
  ];
  mesh.addCap(triples, rings(low, lowHoles), true);
  mesh.addCap(triples, rings(high, highHoles), false);
  mesh.addWall(low, high, n, false);
  let start = 0;
  for (const hole of holes) {
    mesh.addWall(lowHoles + start, highHoles + start, hole.length / 2, true);
    start += hole.length / 2;
  }
  return mesh.finish();
}
