import { partMethods } from '../../gear-library/print-errors.ts';
import { methods } from '../../gear-library/reading-uncertainty.ts';
import { findInstrumentUncertainty } from './measured-length.ts';
import type { LengthReading, WheelEvidence } from './wheel-evidence.ts';

/** How much a length differs from place to place, beyond what measuring does. */
export interface OutOfRound {
  /** Index of the reading whose takings differ most */
  readonly index: number;
  readonly of: string;
  /** Largest less smallest taking, mm */
  readonly range: number;
  /** What of it is the part's: the rest is what as many takings of a round one would differ by */
  readonly mm: number;
  /** Standard deviation of the range of as many takings of a round part */
  readonly u: number;
}

/**
 * The reading of a made part whose takings, at several places round it, differ most beyond the caliper's own scatter;
 * undefined where no length was taken twice. The range of n normal takings is d₂ s on average, d₃ s wide (control
 * charts; factors from memory), s one taking's standard deviation.
 */
export function findOutOfRound(evidence: WheelEvidence): OutOfRound | undefined {
  const instrument = findInstrumentUncertainty(evidence);
  let worst: OutOfRound | undefined;
  evidence.readings.forEach((reading, index) => {
    if (reading.of !== 'outside' && reading.of !== 'over-pins' && reading.of !== 'bore') return;
    const { mm: takings, uMm } = reading as LengthReading;
    if (takings === undefined || typeof takings === 'number' || takings.length < 2) return;
    const method = reading.of === 'bore' ? partMethods.hole.uMm : methods[reading.of].uMm;
    const one = uMm ?? Math.hypot(instrument, method);
    const range = Math.max(...takings) - Math.min(...takings);
    const row = rangeOfNormal[Math.min(takings.length, rangeOfNormal.length + 1) - 2];
    const mm = Math.sqrt(Math.max(0, range ** 2 - (row.d2 * one) ** 2));
    if (!worst || mm > worst.mm) worst = { index, of: reading.of, range, mm, u: row.d3 * one };
  });
  return worst;
}

/** Mean and standard deviation of the range of 2, 3, … takings from a normal distribution of deviation 1. */
const rangeOfNormal = [
  { d2: 1.128, d3: 0.853 },
  { d2: 1.693, d3: 0.888 },
  { d2: 2.059, d3: 0.88 },
  { d2: 2.326, d3: 0.864 },
  { d2: 2.534, d3: 0.848 },
  { d2: 2.704, d3: 0.833 },
  { d2: 2.847, d3: 0.82 },
] as const;
