import type { Point } from './draw-points.ts';
import { type GearPlace, placeTeeth, type SketchGear } from './sketch-gear.ts';

/** The turn, rad, that puts teeth 0 to k − 1 of a gear evenly about straight up. */
export function turnForSpan(gear: SketchGear, k: number): number {
  return Math.PI / 2 - (Math.PI * (k - 1)) / gear.teeth;
}

/**
 * Where two upright flat faces touch the outer flanks of teeth 0 to k − 1, in the sketch's units: each flank is
 * walked down from the tip to its outermost point; the foot beyond it may stand farther out, but no face gets there.
 * `touchY` is the height of that point.
 */
export function findSpanFaces(
  gear: SketchGear,
  place: GearPlace,
  k: number,
): { readonly left: number; readonly right: number; readonly touchY: number } {
  const middle = Math.floor(gear.perTooth / 2);
  // A run goes counter-clockwise: the first tooth's outer flank comes before its middle, the last one's behind.
  const rightFlank = placeTeeth(gear, place, 0, 1)
    .slice(0, middle + 1)
    .reverse();
  const leftFlank = placeTeeth(gear, place, k - 1, 1).slice(middle);
  const right = walkOut(rightFlank, 1);
  return { left: walkOut(leftFlank, -1)[0], right: right[0], touchY: right[1] };
}

/** The first point from which the next lies no farther out. */
function walkOut(flank: readonly Point[], side: 1 | -1): Point {
  const at = flank.findIndex(
    (point, i) => i === flank.length - 1 || side * flank[i + 1][0] < side * point[0],
  );
  return flank[at];
}
