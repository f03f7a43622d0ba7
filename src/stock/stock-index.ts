import { specOfPart } from './spec-of-part.ts';
import type { StockPart } from './stock-part.ts';

/**
 * Parts laid out for looking up by base pitch: one row a part and possible size, sorted by base pitch, as columns.
 * Built once for a list of parts; matching reads columns only and makes objects of the few rows it shows.
 */
export interface StockIndex {
  readonly parts: readonly StockPart[];
  /** How many rows: at least one a part */
  readonly length: number;
  /** Which part, and which of its sizes */
  readonly part: Uint32Array;
  readonly size: Uint8Array;
  readonly teeth: Uint16Array;
  /** π m cos α, mm, ascending */
  readonly basePitch: Float64Array;
  readonly module: Float64Array;
  readonly profileShift: Float64Array;
  /** d_a, mm, measured or as the size has it */
  readonly tip: Float64Array;
}

export function indexParts(parts: readonly StockPart[]): StockIndex {
  let length = 0;
  for (const part of parts) length += part.sizes.length;
  const at = new Uint32Array(length);
  const sizeAt = new Uint8Array(length);
  const pitch = new Float64Array(length);
  let row = 0;
  parts.forEach((part, p) => {
    part.sizes.forEach((size, s) => {
      at[row] = p;
      sizeAt[row] = s;
      pitch[row++] = Math.PI * size.module * Math.cos(part.pressureAngle);
    });
  });
  const order = new Uint32Array(length).map((_, i) => i).sort((a, b) => pitch[a] - pitch[b] || a - b);
  const index = {
    parts,
    length,
    part: new Uint32Array(length),
    size: new Uint8Array(length),
    teeth: new Uint16Array(length),
    basePitch: new Float64Array(length),
    module: new Float64Array(length),
    profileShift: new Float64Array(length),
    tip: new Float64Array(length),
  };
  order.forEach((from, to) => {
    const part = parts[at[from]];
    const spec = specOfPart(part, part.sizes[sizeAt[from]]);
    index.part[to] = at[from];
    index.size[to] = sizeAt[from];
    index.teeth[to] = spec.teeth;
    index.basePitch[to] = pitch[from];
    index.module[to] = spec.module;
    index.profileShift[to] = spec.profileShift;
    index.tip[to] = spec.tipDiameter ?? spec.module * (spec.teeth + 2 + 2 * spec.profileShift);
  });
  return index;
}

/** The first row whose base pitch is at least the given one; `length` where none is. */
export function findRow(index: StockIndex, basePitch: number): number {
  let low = 0;
  let high = index.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (index.basePitch[middle] < basePitch) low = middle + 1;
    else high = middle;
  }
  return low;
}
