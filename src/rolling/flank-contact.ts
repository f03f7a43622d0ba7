import type { Facing } from './find-stop.ts';
import type { Stop } from './free-interval.ts';
import type { ToothShape } from './tooth-shape.ts';

/**
 * For how many pitches of the driver one pair of teeth touches flank on flank while it drives: the contact ratio as it
 * really is, undercut, trimmed tips and interference included. For wheels of one base pitch this is how many pairs
 * share the load on average. Where base pitches differ only one pair ever touches at a time; the figure then says for
 * how long a pair could drive on its flanks were it alone, so below 1 a corner must scrape there too. 0 where the base
 * circles leave no line of action.
 *
 * Flanks touch along the common tangent of the base circles (a rack's at right angles to its flank), from where the
 * driven tip or the end of the driver's involute begins to where the driver's tip or the end of the driven involute
 * ends (ISO 21771, path of contact). Every stretch is held against the rolled outlines: where they stop before
 * these flanks meet, because some tip is in the way, it does not count.
 *
 * @param tolerance how much sooner the rolled outlines may stop, mm along the driven wheel
 */
export function findFlankContact(facing: Facing, distance: number, stop: Stop, tolerance: number): number {
  const line = findLineOfAction(facing, distance);
  if (!line) return 0;
  const { driver, driven, side } = facing;
  const one = reachAlong(line, driver, 0, driver.kind === 'internal' ? -1 : 1, 1);
  const two = reachAlong(line, driven, side * distance, driven.kind === 'internal' ? 1 : -1, -1);
  const from = Math.max(one[0], two[0]);
  const to = Math.min(one[1], two[1]);
  if (!(to > from)) return 0;
  const basePitch =
    driver.kind === 'rack' ? driver.pitch * Math.cos(driver.pressureAngle) : driver.pitch * driver.base;
  const touches = (at: number): boolean => isTouching(facing, distance, stop, tolerance, line, at);
  let missed = 0;
  for (let k = 0; k < coarse; k++) if (!touches(from + ((to - from) * (k + 0.5)) / coarse)) missed++;
  if (missed === 0) return (to - from) / basePitch;
  let met = 0;
  for (let k = 0; k < fine; k++) if (touches(from + ((to - from) * (k + 0.5)) / fine)) met++;
  return ((met / fine) * (to - from)) / basePitch;
}

/** Interference spoils an end of the path, not a spot in it: a twelfth finds it; then the share is told to 0.5 %. */
const coarse = 12;
const fine = 200;

interface Line {
  /** A point of the line on the x axis, and its direction: that in which the driver pushes */
  readonly x: number;
  readonly dx: number;
  readonly dy: number;
}

function findLineOfAction({ driver, driven }: Facing, distance: number): Line | undefined {
  if (driver.kind === 'rack' || driven.kind === 'rack') {
    const angle = driver.kind === 'rack' ? driver.pressureAngle : driven.pressureAngle;
    const radius = (driver.kind === 'rack' ? driven.base : driver.base) / Math.cos(angle);
    return {
      x: driver.kind === 'rack' ? distance - radius : radius,
      dx: Math.sin(angle),
      dy: Math.cos(angle),
    };
  }
  const isInternal = driver.kind === 'internal' || driven.kind === 'internal';
  const cosine = Math.abs(isInternal ? driven.base - driver.base : driven.base + driver.base) / distance;
  if (!(cosine > 0 && cosine <= 1)) return undefined;
  const sine = Math.sqrt(1 - cosine * cosine);
  return { x: driver.base / cosine, dx: driver.kind === 'internal' ? -sine : sine, dy: cosine };
}

/**
 * From where to where, along the line from its crossing of the x axis, a wheel's flank touches: between involute's
 * start and tip. `sign`: whether the radius of curvature grows along the line.
 */
function reachAlong(
  line: Line,
  shape: ToothShape,
  axis: number,
  sign: 1 | -1,
  upward: 1 | -1,
): [number, number] {
  let ends: number[];
  if (shape.kind === 'rack') {
    // Heights over the datum line, which lies at `axis`; the driver's teeth point along +x, the driven wheel's to −x.
    ends = [shape.form, shape.tip].map((height) => (axis + upward * height - line.x) / line.dx);
  } else {
    const tangent = (axis - line.x) * line.dx;
    ends = [shape.form, shape.tip].map(
      (radius) => tangent + sign * Math.sqrt(Math.max(0, radius ** 2 - shape.base ** 2)),
    );
  }
  return [Math.min(...ends), Math.max(...ends)];
}

/** Whether the rolled outlines let these flanks meet at a place on the line of action. */
function isTouching(
  { driver, driven, side, toward }: Facing,
  distance: number,
  stop: Stop,
  tolerance: number,
  line: Line,
  at: number,
): boolean {
  const x = line.x + at * line.dx;
  const y = at * line.dy;
  const turn =
    driver.kind === 'rack'
      ? y - halfAngleAt(driver, x)
      : Math.atan2(y, x) - halfAngleAt(driver, Math.hypot(x, y));
  const u = toward * (x - side * distance);
  const isRack = driven.kind === 'rack';
  const meeting = (isRack ? y : Math.atan2(y, u)) + halfAngleAt(driven, isRack ? u : Math.hypot(u, y));
  const radius = isRack ? 1 : driven.tip;
  return (stop(distance, turn) - meeting) * radius <= tolerance;
}

function halfAngleAt({ flankRadius, flankAngle }: ToothShape, radius: number): number {
  let k = 0;
  while (k < flankRadius.length - 2 && flankRadius[k + 1] <= radius) k++;
  const part = (radius - flankRadius[k]) / (flankRadius[k + 1] - flankRadius[k]);
  return flankAngle[k] + part * (flankAngle[k + 1] - flankAngle[k]);
}
