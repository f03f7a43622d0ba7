import { type Facing, findReach, findStop } from './find-stop.ts';
import type { Stop } from './free-interval.ts';

/**
 * `findStop` worked out beforehand at every `step` of the driver's tooth, for distances from `from` to `to` (mm), and
 * read off by straight lines between. A pair turns through the same few positions of one tooth again and again: this is
 * the table of them. At one distance, and turns that are multiples of the step, it is exact.
 *
 * Where only one neighbor reaches the driven tips its value stands for both.
 */
export function tabulateStop(facing: Facing, from: number, to: number, step: number): Stop {
  const rows = to > from ? Math.max(2, Math.ceil((to - from) / (rowModules * facing.driven.module)) + 1) : 1;
  const between = rows > 1 ? (to - from) / (rows - 1) : 1;
  let reach = 0;
  for (let row = 0; row < rows; row++) reach = Math.max(reach, findReach(facing, from + row * between));
  const half = Math.ceil(reach / step) + 1;
  const columns = 2 * half + 1;
  const table = new Float64Array(rows * columns);
  for (let row = 0; row < rows; row++) {
    for (let k = 0; k < columns; k++) {
      table[row * columns + k] = findStop(facing, from + row * between, (k - half) * step);
    }
  }
  const readRow = (row: number, place: number): number => {
    const k = Math.floor(place + 1e-9);
    const part = place - k;
    const one = table[row * columns + k];
    if (part < 1e-6) return one;
    return mix(one, table[row * columns + k + 1], part);
  };
  return (distance, turn) => {
    const place = turn / step + half;
    if (!(place >= 0 && place <= columns - 1)) return Number.NEGATIVE_INFINITY;
    if (rows === 1) return readRow(0, place);
    const at = Math.min(rows - 1.000001, Math.max(0, (distance - from) / between));
    const row = Math.floor(at);
    return mix(readRow(row, place), readRow(row + 1, place), at - row);
  };
}

/** Modules between rows: backlash bends by about 0.6 m/(a m) per mm², so a straight line errs 1e-4 modules at most. */
const rowModules = 0.04;

function mix(one: number, two: number, part: number): number {
  if (one === Number.NEGATIVE_INFINITY) return two;
  if (two === Number.NEGATIVE_INFINITY) return one;
  return one + part * (two - one);
}
