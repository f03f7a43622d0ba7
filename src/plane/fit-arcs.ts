/**
 * A closed curve of straight lines and arcs, counter-clockwise: piece k leads from point k to the next, the last one
 * back to the first.
 */
export interface ArcLoop {
  /** x0, y0, x1, y1, … */
  readonly points: Float64Array;
  /** tan of a quarter of the piece's turn, positive counter-clockwise; 0 for a straight line */
  readonly bulges: Float64Array;
}

/** An open run of the same pieces: one bulge fewer than points. */
export interface ArcRun {
  readonly points: readonly number[];
  readonly bulges: readonly number[];
}

/**
 * Few arcs and lines through chosen points of a finely sampled curve, none of them straying from the polyline of the
 * samples by more than `error`: at the samples by distance to the arc, between them by the arc's height over each
 * chord. A corner between two samples is kept, since an arc across it would stand too high over its chords. Takes the
 * longest arc that holds, from the first point on; the run's ends are the samples' ends to the last bit.
 *
 * @param points x, y pairs, at least two points
 * @example five points of a quarter circle: one piece of bulge tan 22.5° = 0.4142
 */
export function fitArcs(points: ArrayLike<number>, error: number): ArcRun {
  const last = points.length / 2 - 1;
  if (!(last >= 1)) throw new Error(`${points.length / 2} points are no curve`);
  const run = { points: [points[0], points[1]], bulges: [] as number[] };
  let from = 0;
  while (from < last) {
    let to = from + 1;
    let bulge = 0;
    while (to < last) {
      const longer = fitOne(points, from, to + 1, error);
      if (longer === undefined) break;
      bulge = longer;
      to++;
    }
    run.points.push(points[2 * to], points[2 * to + 1]);
    run.bulges.push(bulge);
    from = to;
  }
  return run;
}

/** The bulge of the arc through both ends and the sample halfway; undefined where the others are too far off it. */
function fitOne(points: ArrayLike<number>, from: number, to: number, error: number): number | undefined {
  const [ax, ay] = [points[2 * from], points[2 * from + 1]];
  const [cx, cy] = [points[2 * to], points[2 * to + 1]];
  const middle = (from + to) >> 1;
  const [bx, by] = [points[2 * middle], points[2 * middle + 1]];
  // The chords a–b and b–c turn by half of the arc's turn.
  const half = Math.atan2(
    (bx - ax) * (cy - by) - (by - ay) * (cx - bx),
    (bx - ax) * (cx - bx) + (by - ay) * (cy - by),
  );
  if (Math.abs(half) > mostHalfTurn) return undefined;
  const chord = Math.hypot(cx - ax, cy - ay);
  const isStraight = Math.abs(half) < straight;
  const bulge = isStraight ? 0 : Math.tan(half / 2);
  const radius = isStraight ? Number.POSITIVE_INFINITY : chord / (2 * Math.sin(Math.abs(half)));
  const apart = isStraight ? 0 : chord / 2 / Math.tan(half);
  const centerX = (ax + cx) / 2 - (apart * (cy - ay)) / chord;
  const centerY = (ay + cy) / 2 + (apart * (cx - ax)) / chord;
  for (let k = from; k < to; k++) {
    const [px, py] = [points[2 * k], points[2 * k + 1]];
    const step = Math.hypot(points[2 * k + 2] - px, points[2 * k + 3] - py);
    const off = isStraight
      ? ((px - ax) * (cy - ay) - (py - ay) * (cx - ax)) / chord
      : Math.hypot(px - centerX, py - centerY) - radius;
    if (Math.abs(off) + (step * step) / (8 * radius) > error) return undefined;
  }
  return bulge;
}

/** A third of a turn a piece: readers that take the shorter way between two points never mistake it. */
const mostHalfTurn = Math.PI / 3;

/** Below it an arc stands less than a quarter of a millionth of its chord over it, and its center is lost in rounding. */
const straight = 1e-6;
