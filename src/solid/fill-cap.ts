import earcut from 'earcut';

/** Triangulates a loop with holes (all counter-clockwise, x0, y0, …); indices run on through the holes in order. */
export function fillLoop(outer: ArrayLike<number>, holes: readonly ArrayLike<number>[]): Uint32Array {
  const data = new Float64Array(outer.length + holes.reduce((sum, hole) => sum + hole.length, 0));
  data.set(outer);
  const starts: number[] = [];
  let end = outer.length;
  for (const hole of holes) {
    starts.push(end / 2);
    data.set(hole, end);
    end += hole.length;
  }
  const found = earcut(data, starts, 2);
  const triples = Uint32Array.from(found);
  for (let k = 0; k < triples.length; k += 3) {
    if (turnOf(data, triples[k], triples[k + 1], triples[k + 2]) < 0) {
      const swapped = triples[k + 1];
      triples[k + 1] = triples[k + 2];
      triples[k + 2] = swapped;
    }
  }
  return triples;
}

function turnOf(data: Float64Array, a: number, b: number, c: number): number {
  return (
    (data[2 * b] - data[2 * a]) * (data[2 * c + 1] - data[2 * a + 1]) -
    (data[2 * b + 1] - data[2 * a + 1]) * (data[2 * c] - data[2 * a])
  );
}

/**
 * Triangulates the face of an external wheel with holes.
 *
 * Each tooth is a ladder: its points come in pairs at one radius left and right of its middle, and the rungs between
 * neighboring pairs fill it from the root up. What stays is the polygon of the middles of the spaces with the holes,
 * a small loop for earcut. Where a hole does not fit into that polygon, earcut gets the whole outline.
 *
 * @param points outline, tooth by tooth from the middle of a space; radii must not fall from root to tip
 */
export function fillWheelFace(
  points: ArrayLike<number>,
  perTooth: number,
  holes: readonly ArrayLike<number>[],
): Uint32Array {
  const count = points.length / 2;
  const teeth = count / perTooth;
  const inner = Math.hypot(points[0], points[1]) * Math.cos(Math.PI / teeth);
  let reach = 0;
  for (const hole of holes) {
    for (let k = 0; k < hole.length; k += 2) reach = Math.max(reach, Math.hypot(hole[k], hole[k + 1]));
  }
  if (reach > inner * 0.999) return fillLoop(points, holes);
  const polygon = new Float64Array(2 * teeth);
  for (let tooth = 0; tooth < teeth; tooth++) {
    polygon[2 * tooth] = points[2 * tooth * perTooth];
    polygon[2 * tooth + 1] = points[2 * tooth * perTooth + 1];
  }
  const core = fillLoop(polygon, holes);
  const triples = new Uint32Array(core.length + 3 * teeth * (perTooth - 1));
  let at = 0;
  for (let k = 0; k < core.length; k++) {
    triples[at++] = core[k] < teeth ? core[k] * perTooth : core[k] - teeth + count;
  }
  for (let tooth = 0; tooth < teeth; tooth++) {
    at = addLadder(triples, at, tooth * perTooth, perTooth, count);
  }
  return triples;
}

/** Rungs from the middle of the spaces to the tooth's middle, counter-clockwise. */
function addLadder(triples: Uint32Array, at: number, first: number, perTooth: number, count: number): number {
  const half = perTooth / 2;
  let to = at;
  for (let k = 0; k < half; k++) {
    const right = first + k;
    const left = (first + perTooth - k) % count;
    const nextRight = first + k + 1;
    triples[to++] = right;
    triples[to++] = nextRight;
    triples[to++] = left;
    if (k + 1 < half) {
      triples[to++] = left;
      triples[to++] = nextRight;
      triples[to++] = first + perTooth - k - 1;
    }
  }
  return to;
}

/**
 * Triangulates the face of an internal wheel between its rim circle (the outer loop) and its outline. A tooth is
 * cut off at the chord farthest from the axis that its outline allows, one tooth goes to earcut and its triangles to
 * all of them, and earcut fills the ring outside the chords. Rungs as on external teeth would overlap: fillets bulge
 * out over the root's chord, and the tip arc runs back from its corners.
 */
export function fillRingFace(
  rim: ArrayLike<number>,
  points: ArrayLike<number>,
  perTooth: number,
): Uint32Array {
  const rimCount = rim.length / 2;
  const teeth = points.length / 2 / perTooth;
  const foot = findFoot(points, perTooth);
  const loop: number[] = [];
  const indices: number[] = [];
  for (let tooth = 0; tooth < teeth; tooth++) {
    const first = tooth * perTooth;
    for (let k = 0; k <= foot; k++) indices.push(first + k);
    for (let k = foot; k > 0; k--) indices.push(first + perTooth - k);
  }
  for (const index of indices) loop.push(points[2 * index], points[2 * index + 1]);
  const core = fillLoop(rim, [loop]);
  // With no point left of the chord's start the last one is the next tooth's first.
  const last = perTooth - foot;
  const one: number[] = [];
  for (let k = foot; k <= last; k++) {
    const index = k % (points.length / 2);
    one.push(points[2 * index], points[2 * index + 1]);
  }
  const filled = fillLoop(one, []);
  const triples = new Uint32Array(core.length + teeth * filled.length);
  let at = 0;
  for (let k = 0; k < core.length; k++) {
    triples[at++] = core[k] < rimCount ? core[k] : rimCount + indices[core[k] - rimCount];
  }
  for (let tooth = 0; tooth < teeth; tooth++) {
    for (let k = 0; k < filled.length; k++) {
      triples[at++] = rimCount + ((tooth * perTooth + foot + filled[k]) % (points.length / 2));
    }
  }
  return triples;
}

/** The point of half a tooth that reaches farthest along the tooth's axis: where its fillet leaves the root. */
function findFoot(points: ArrayLike<number>, perTooth: number): number {
  const half = perTooth / 2;
  let foot = 0;
  let farthest = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < half; k++) {
    const along = points[2 * k] * points[2 * half] + points[2 * k + 1] * points[2 * half + 1];
    if (along <= farthest) continue;
    farthest = along;
    foot = k;
  }
  return foot;
}

/**
 * Triangulates the face of a rack as `traceRackOutline` lays it out (counter-clockwise: bottom left, bottom right, the
 * teeth from right to left): ladders for the teeth, a fan from the bottom left for the bar.
 */
export function fillRackFace(points: ArrayLike<number>, perTooth: number): Uint32Array {
  const count = points.length / 2;
  const teeth = (count - 3) / perTooth;
  const triples: number[] = [];
  // Point 2 ends the last space; tooth j from the right holds points 3 + j·perTooth … , its left space's middle last.
  const rootY = points[5];
  const bar: number[] = [2];
  for (let tooth = 0; tooth < teeth; tooth++) {
    const first = 3 + tooth * perTooth;
    let low = first;
    let high = first + perTooth - 2;
    // Without a flat bottom the corner starts at the middle of the space itself.
    if (points[2 * low + 1] > rootY + 1e-12) {
      low = first - 1;
      high = first + perTooth - 1;
    } else bar.push(low);
    if (high !== first + perTooth - 1) bar.push(high);
    bar.push(first + perTooth - 1);
    for (; high - low > 1; low++, high--) {
      triples.push(low, low + 1, high);
      triples.push(high, low + 1, high - 1);
    }
  }
  for (let k = 0; k + 1 < bar.length; k++) triples.push(0, bar[k], bar[k + 1]);
  triples.push(0, 1, 2);
  return Uint32Array.from(triples);
}
