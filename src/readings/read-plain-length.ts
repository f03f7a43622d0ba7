import { defaultKit } from '../../gear-library/reading-uncertainty.ts';
import { combineTakings } from './combine-takings.ts';
import { findInstrumentUncertainty } from './measured-length.ts';
import type { Kit, Takings } from './wheel-evidence.ts';

/** A wall or a hole as a person reads it; without a value it is not taken. */
export interface PlainReading {
  readonly mm?: Takings | undefined;
  /** Of a hole, by shanks or pins: the largest that goes in, the smallest that doesn't */
  readonly goesMm?: number | undefined;
  readonly stopsMm?: number | undefined;
  /** Its total give or take */
  readonly uMm?: number | undefined;
}

export interface PlainLength {
  /** mm, what the closed jaws show taken off */
  readonly value: number;
  /** What is expected on top of the true length */
  readonly bias: number;
  /** Standard deviation that comes from the zero shared by all caliper readings, mm */
  readonly zeroDeviation: number;
  /** Standard deviation of its own, mm */
  readonly noise: number;
}

/** One length of a part, with its uncertainty taken apart; undefined where the reading has no value. */
export function readPlainLength(
  reading: PlainReading,
  method: { readonly uMm: number; readonly biasMm: number },
  kit: Kit,
): PlainLength | undefined {
  const stated = reading.uMm;
  if (reading.mm === undefined) {
    const { goesMm: goes, stopsMm: stops } = reading;
    if (goes === undefined) return undefined;
    // Anywhere between the two alike, on top of what the shanks themselves are out; without the second, one step on.
    const apart = stops === undefined ? usualStep : stops - goes;
    return {
      value: goes + apart / 2,
      bias: 0,
      zeroDeviation: 0,
      noise: stated ?? Math.hypot(apart / Math.sqrt(12), shankUncertainty),
    };
  }
  const { mean, deviation } = combineTakings(reading.mm, findInstrumentUncertainty({ kit }));
  const zero = kit.zeroUMm ?? defaultKit.zeroUMm;
  const value = mean - (kit.zeroMm ?? 0);
  if (stated === undefined) {
    return {
      value,
      bias: method.biasMm,
      zeroDeviation: zero,
      noise: Math.hypot(deviation, method.uMm),
    };
  }
  // A stated give or take is the total: the zero's part is taken out, at most three quarters of the variance.
  const zeroDeviation = Math.min(zero, Math.sqrt(0.75) * stated);
  return { value, bias: 0, zeroDeviation, noise: Math.sqrt(stated ** 2 - zeroDeviation ** 2) };
}

/** Between neighboring drills of a set, mm. */
const usualStep = 0.1;
/** Of a drill's shank against its name, mm. */
const shankUncertainty = 0.015;
