/** A triangle mesh with shared corners: closed, outward (counter-clockwise seen from outside), mm. */
export interface Mesh {
  /** x0, y0, z0, x1, … */
  readonly positions: Float64Array;
  /** Three corner indices a triangle */
  readonly triangles: Uint32Array;
}

/** Corners that were added one after the other. */
export interface MeshRing {
  readonly first: number;
  readonly count: number;
}

/** A mesh under construction. */
export interface MeshBuilder {
  /** Adds a ring of points at a height, turned about the axis and moved along x; returns its first index. */
  readonly addRing: (points: ArrayLike<number>, z: number, turn: number, moved: number) => number;
  /**
   * The wall between two rings of as many points; outward for a counter-clockwise loop, inward for a hole. Diagonals
   * alternate, so that what one twisted quad gains by its diagonal the next one loses.
   */
  readonly addWall: (low: number, high: number, count: number, isHole: boolean) => void;
  /** A plane face whose corner indices run on through the rings in order. `flip` makes it face down. */
  readonly addCap: (triples: Uint32Array, rings: readonly MeshRing[], flip: boolean) => void;
  /** Adds one corner; returns its index. */
  readonly addCorner: (x: number, y: number, z: number) => number;
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
      for (let k = 0, to = 3 * first; k < points.length; k += 2, to += 3) {
        const x = points[k];
        const y = points[k + 1];
        positions[to] = turn === 0 ? x + moved : x * c - y * s + moved;
        positions[to + 1] = turn === 0 ? y : x * s + y * c;
        positions[to + 2] = z;
      }
      corner += points.length / 2;
      return first;
    },
    addWall(low, high, count, isHole) {
      for (let k = 0; k < count; k++, at += 6) {
        const next = k + 1 < count ? k + 1 : 0;
        const from = isHole ? next : k;
        const to = isHole ? k : next;
        const isEven = k % 2 === 0;
        triangles[at] = low + from;
        triangles[at + 1] = low + to;
        triangles[at + 2] = high + (isEven ? to : from);
        triangles[at + 3] = low + (isEven ? from : to);
        triangles[at + 4] = high + to;
        triangles[at + 5] = high + from;
      }
    },
    addCap(triples, rings, flip) {
      const corners = new Uint32Array(rings.reduce((sum, { count }) => sum + count, 0));
      let end = 0;
      for (const { first, count } of rings) for (let k = 0; k < count; k++) corners[end++] = first + k;
      const second = flip ? 2 : 1;
      for (let k = 0; k < triples.length; k += 3, at += 3) {
        triangles[at] = corners[triples[k]];
        triangles[at + 1] = corners[triples[k + second]];
        triangles[at + 2] = corners[triples[k + 3 - second]];
      }
    },
    addCorner(x, y, z) {
      positions[3 * corner] = x;
      positions[3 * corner + 1] = y;
      positions[3 * corner + 2] = z;
      return corner++;
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
