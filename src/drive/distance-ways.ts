import type { RepairKind } from '../evidence/list-repairs.ts';
import type { MeasuredLength } from '../readings/measured-length.ts';
import { toWeighedReading } from '../readings/weighed-reading.ts';

/** One shaft distance as it was measured, and where that stands. */
export interface MeasuredDistance {
  readonly length: MeasuredLength;
  /** The wheel whose reading it is; undefined for a mesh's own distance */
  readonly wheel: string | undefined;
}

/**
 * One way that the distances of a pair may have come about: as they stand, or one of them a slip. What all of them
 * together say then is one value, mm, with its variance.
 */
export interface DistanceWay {
  /** log of its chance, and of how well the distances agree with each other */
  readonly log: number;
  readonly value: number;
  readonly variance: number;
  /** Index of the distance that slipped; −1 where none did */
  readonly slipped: number;
  readonly repair: { readonly kind: RepairKind; readonly value: number } | undefined;
}

/** The ways for a pair: none slipped, or one of them in each of its ways. Empty where nothing was measured. */
export function listDistanceWays(distances: readonly MeasuredDistance[]): DistanceWay[] {
  if (distances.length === 0) return [];
  const readings = distances.map(({ length }) => toWeighedReading(length));
  const plain = distances.map(({ length }) => ({
    value: length.value,
    variance: length.noise + length.zeroDeviation ** 2,
  }));
  const ways: DistanceWay[] = [{ ...combine(plain), slipped: -1, repair: undefined }];
  plain.forEach((one, k) => {
    const change = (log: number, changed: typeof one, repair: DistanceWay['repair']): void => {
      const combined = combine(plain.map((other, i) => (i === k ? changed : other)));
      ways.push({ ...combined, log: combined.log + log, slipped: k, repair });
    };
    for (const { logChance, variance } of readings[k].wrong) {
      change(logChance, { value: one.value, variance: one.variance + variance }, undefined);
    }
    for (const { logChance, value, kind } of readings[k].repairs) {
      change(logChance, { value, variance: one.variance }, { kind, value });
    }
  });
  return ways;
}

/** Π N(v_k; a, σ_k²) over k as one Gaussian of a times a constant. */
function combine(parts: readonly { readonly value: number; readonly variance: number }[]): {
  log: number;
  value: number;
  variance: number;
} {
  let precision = 0;
  let weighted = 0;
  for (const { value, variance } of parts) {
    precision += 1 / variance;
    weighted += value / variance;
  }
  const value = weighted / precision;
  let log = 0.5 * Math.log((2 * Math.PI) / precision);
  for (const one of parts) {
    log -= 0.5 * (Math.log(2 * Math.PI * one.variance) + (one.value - value) ** 2 / one.variance);
  }
  return { log, value, variance: 1 / precision };
}
