/** A scale of a drawing: how it is written, and how long one millimetre is drawn. */
export interface DrawingScale {
  readonly name: string;
  /** CSS pixels for 1 mm of the gear */
  readonly pxPerMm: number;
}

/** One millimetre at scale 1:1, CSS pixels (CSS Values: 96 px are 25.4 mm). */
export const pxPerMmAtTrueSize = 96 / 25.4;

/** Scales of ISO 5455, largest first. */
const scales: readonly (readonly [number, number])[] = [
  [50, 1],
  [20, 1],
  [10, 1],
  [5, 1],
  [2, 1],
  [1, 1],
  [1, 2],
  [1, 5],
];

/** Scales for details: ISO 5455 goes on by tens. */
const detailScales: readonly (readonly [number, number])[] = [[200, 1], [100, 1], ...scales];

/** The largest scale at which `fits` holds; the smallest there is where none does. */
export function chooseScale(fits: (pxPerMm: number) => boolean): DrawingScale {
  return pick(scales, fits);
}

/** The same among the scales that details may have. */
export function chooseDetailScale(fits: (pxPerMm: number) => boolean): DrawingScale {
  return pick(detailScales, fits);
}

function pick(
  from: readonly (readonly [number, number])[],
  fits: (pxPerMm: number) => boolean,
): DrawingScale {
  for (const [drawn, real] of from) {
    const pxPerMm = (pxPerMmAtTrueSize * drawn) / real;
    if (fits(pxPerMm)) return { name: `${drawn}:${real}`, pxPerMm };
  }
  const [drawn, real] = scales[scales.length - 1];
  return { name: `${drawn}:${real}`, pxPerMm: (pxPerMmAtTrueSize * drawn) / real };
}
