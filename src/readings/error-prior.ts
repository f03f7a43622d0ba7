import { printErrors, usualRangeReach } from '../../gear-library/print-errors.ts';
import type { Process } from '../../gear-library/processes.ts';

/**
 * What a process does to a drawing, before anything it made was read: independent normal errors, in the order scale (a
 * part of one), outsides, flanks beyond outsides, holes, first layers; mm a side, positive for more material.
 */
export interface ErrorPrior {
  readonly mean: readonly number[];
  readonly deviation: readonly number[];
  /** Standard deviation of one print about the machine's mean, mm a side */
  readonly betweenPrints: number;
}

/** Where each error stands in the lists. */
export const errorOrder = {
  scale: 0,
  outside: 1,
  flanksApart: 2,
  holes: 3,
  firstLayer: 4,
  count: 5,
} as const;

/** The errors that are usual for a process, from the library: a usual range's middle, and its half over its reach. */
export function findErrorPrior(process: Process): ErrorPrior {
  const errors = printErrors.find((one) => one.process === process.key);
  if (!errors) throw new Error(`no print errors for ${process.key}`);
  const fromRange = ([low, high]: readonly [number, number]) => ({
    mean: (low + high) / 2,
    deviation: (high - low) / 2 / usualRangeReach.deviations,
  });
  const outside = fromRange(process.outsideErrorMm);
  const holes = fromRange(process.holeErrorMm);
  const first = fromRange(errors.firstLayerMm);
  return {
    // The library's ranges of outsides and holes are on the diameter.
    mean: [0, outside.mean / 2, 0, holes.mean / 2, first.mean],
    deviation: [
      errors.scalePercent / 100,
      outside.deviation / 2,
      errors.flanksApartMm,
      holes.deviation / 2,
      first.deviation,
    ],
    betweenPrints: errors.betweenPrintsMm,
  };
}
