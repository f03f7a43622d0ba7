import type { DrawnGear } from '../../index.ts';

/** A gear's outline as SVG path data, mm, y up. */
export interface GearPaths {
  /** All teeth */
  readonly whole: string;
  /** The teeth that are there, with the bottom of the gaps where others were */
  readonly kept: string;
  /** The teeth that are gone; empty where none is */
  readonly gone: string;
}

/** Most teeth of a bar that are drawn; a break line says that it goes on. */
export const mostRackTeeth = 7;

/** Path data through x, y pairs from point `from` to point `to`, to a thousandth of a millimetre. */
export function tracePoints(points: ArrayLike<number>, from: number, to: number): string {
  let path = '';
  const count = points.length / 2;
  for (let k = from; k <= to; k++) {
    const at = 2 * (k % count);
    path += `${k === from ? 'M' : 'L'}${Math.round(points[at] * 1000) / 1000} ${Math.round(points[at + 1] * 1000) / 1000}`;
  }
  return path;
}

/**
 * The outline of a wheel, its missing teeth apart. Tooth t's points reach from the middle of one space to the middle of the
 * next; where it is gone, the bottom of the spaces is drawn through.
 */
export function traceGear(gear: DrawnGear, gone: ReadonlySet<number>): GearPaths {
  const { outline, perTooth, teeth } = gear;
  const whole = `${tracePoints(outline, 0, outline.length / 2 - 1)}Z`;
  if (gone.size === 0) return { whole, kept: whole, gone: '' };
  const total = outline.length / 2;
  let kept = '';
  let lost = '';
  for (let tooth = 0; tooth < teeth; tooth++) {
    const start = tooth * perTooth;
    if (!gone.has(tooth)) {
      kept += tracePoints(outline, start, start + perTooth);
      continue;
    }
    lost += tracePoints(outline, start, start + perTooth);
    const radius = Math.round(gear.rootDiameterMm * 500) / 1000;
    const end = 2 * ((start + perTooth) % total);
    kept += `M${Math.round(outline[2 * start] * 1000) / 1000} ${Math.round(outline[2 * start + 1] * 1000) / 1000}A${radius} ${radius} 0 0 1 ${Math.round(outline[end] * 1000) / 1000} ${Math.round(outline[end + 1] * 1000) / 1000}`;
  }
  return { whole, kept, gone: lost };
}

/** A bar's teeth, at most `mostRackTeeth` about x = 0, open at both ends: no end of the bar is known. */
export interface RackPiece {
  readonly path: string;
  /** Half the drawn length, tips, bottom of the gaps and back of the bar, mm */
  readonly halfLength: number;
  readonly tip: number;
  readonly root: number;
  readonly back: number;
  readonly pitch: number;
  readonly teeth: number;
}

export function traceRack(gear: DrawnGear): RackPiece {
  const { outline, perTooth } = gear;
  const teeth = Math.min(mostRackTeeth, gear.teeth);
  let tip = -Infinity;
  let back = Infinity;
  let left = Infinity;
  let right = -Infinity;
  for (let k = 0; k < outline.length; k += 2) {
    tip = Math.max(tip, outline[k + 1]);
    back = Math.min(back, outline[k + 1]);
    left = Math.min(left, outline[k]);
    right = Math.max(right, outline[k]);
  }
  const pitch = (right - left) / gear.teeth;
  // Closed and counter-clockwise: the back first, then the teeth from right to left; the first tooth's run is enough.
  const last = outline.length / 2 - 1;
  const tooth: number[] = [];
  for (let k = last - perTooth; k <= last; k++) tooth.push(outline[2 * k], outline[2 * k + 1]);
  const root = Math.max(tooth[1], tooth[tooth.length - 1]);
  const shift = -((teeth - 1) / 2) * pitch;
  let path = '';
  for (let t = teeth - 1; t >= 0; t--) {
    for (let k = 0; k < tooth.length; k += 2) {
      const x = tooth[k] + shift + t * pitch;
      path += `${path === '' ? 'M' : 'L'}${Math.round(x * 1000) / 1000} ${Math.round(tooth[k + 1] * 1000) / 1000}`;
    }
  }
  return { path, halfLength: (teeth / 2) * pitch, tip, root, back, pitch, teeth };
}
