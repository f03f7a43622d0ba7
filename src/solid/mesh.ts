/** A triangle mesh with shared corners: closed, outward (counter-clockwise seen from outside), mm. */
export interface Mesh {
  /** x0, y0, z0, x1, … */
  readonly positions: Float64Array;
  /** Three corner indices a triangle */
  readonly triangles: Uint32Array;
}

/** A mesh under construction. */
export interface MeshBuilder {
  /** Adds a ring of points at a height, turned about the axis and moved along x; returns its first index. */
  readonly addRing: (points: ArrayLike<number>, z: number, turn: number, moved: number) => number;
  readonly addTriangle: (a: number, b: number, c: number) => void;
  readonly finish: () => Mesh;
}

/** Starts a mesh with room for so many corners and triangles (more are refused: a plain Error). */
export function startMesh(corners: number, triangleCount: number): MeshBuilder {
  const positions = new Float64Array(3 * corners);
  const triangles = new Uint32Array(3 * triangleCount);
  let corner = 0;
  let at = 0;
  return {
    addRing(points, z, turn, moved) {
      const first = corner;
      const c = Math.cos(turn);
      const s = Math.sin(turn);
      for (let k = 0; k < points.length; k += 2) {
        const to = 3 * corner++;
        positions[to] = turn === 0 ? points[k] + moved : points[k] * c - points[k + 1] * s + moved;
        positions[to + 1] = turn === 0 ? points[k + 1] : points[k] * s + points[k + 1] * c;
        positions[to + 2] = z;
      }
      return first;
    },
    addTriangle(a, b, c) {
      triangles[at++] = a;
      triangles[at++] = b;
      triangles[at++] = c;
    },
    finish() {
      if (3 * corner > positions.length || at > triangles.length)
        throw new Error('mesh larger than announced');
      return { positions: positions.subarray(0, 3 * corner), triangles: triangles.subarray(0, at) };
    },
  };
}
