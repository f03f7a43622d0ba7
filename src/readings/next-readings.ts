import { findExpectedInformation } from '../evidence/expected-information.ts';
import type { HypothesisSpace } from './hypothesis-space.ts';
import { respondWithHelix } from './hypothesis-space.ts';
import { causeCount, findExpected, setLoadings } from './linear-part.ts';
import type { MeasuredLength } from './measured-length.ts';
import type { PossibleReading } from './possible-readings.ts';
import type { SettledPart } from './settle-parts.ts';

export interface NextReading {
  readonly of: PossibleReading['of'] | 'teeth' | LostAsk;
  /** The wheel to take it on, where that is another one */
  readonly wheel?: string;
  readonly teeth?: number;
  readonly pinMm?: number;
  readonly pitches?: number;
  readonly mate?: string;
  readonly gainBits: number;
  readonly why: string;
}

/** What is asked of a wheel that is lost, where it is no reading of its teeth. */
export type LostAsk = 'crumbs' | 'post' | 'neighbors' | 'rows' | 'speed-wanted';

/**
 * The readings that can still be taken, with the information each is expected to give about the identity, best
 * first. A reading's distribution is the mixture of what the settled parts expect of it.
 */
export function rankNextReadings(
  space: HypothesisSpace,
  parts: readonly SettledPart[],
  possible: readonly PossibleReading[],
): NextReading[] {
  return possible
    .map((reading): NextReading => {
      const gainBits = findGain(space, parts, reading.length);
      return {
        of: reading.of,
        ...(reading.length.of === 'span' ? { teeth: reading.length.teeth } : {}),
        ...(reading.length.of === 'over-pins' ? { pinMm: reading.length.pin } : {}),
        ...(reading.length.of === 'rack-pitch' ? { pitches: reading.length.pitches } : {}),
        ...(reading.length.mate ? { mate: reading.length.mate.id } : {}),
        gainBits,
        why: reading.why,
      };
    })
    .sort((a, b) => b.gainBits - a.gainBits);
}

function findGain(space: HypothesisSpace, parts: readonly SettledPart[], length: MeasuredLength): number {
  const weights: number[] = [];
  const classes: number[] = [];
  const means: number[] = [];
  const deviations: number[] = [];
  const numbers = new Map<number, number>();
  const loadings = new Float64Array(causeCount);
  for (const part of parts) {
    const modes = respondWithHelix(length, part.tooth, part.pitch.module);
    for (const mode of modes) {
      setLoadings(loadings, 0, space, part.pitch, part.tooth, part.tipLoss, mode, length.zeroDeviation);
      let mean = findExpected(space, part.pitch, part.tipLoss, mode, length.offset);
      let variance = length.noise + part.pitch.module ** 2 * mode.variance;
      for (let f = 0; f < causeCount; f++) {
        mean += loadings[f] * part.causeMeans[f];
        variance += loadings[f] * loadings[f];
      }
      for (let i = 0; i < part.reduced.length; i += causeCount) {
        let along = 0;
        for (let f = 0; f < causeCount; f++) along += part.reduced[i + f] * loadings[f];
        variance -= along * along;
      }
      let number = numbers.get(part.candidate);
      if (number === undefined) {
        number = numbers.size;
        numbers.set(part.candidate, number);
      }
      weights.push(part.probability * Math.exp(mode.logWeight));
      classes.push(number);
      means.push(mean);
      deviations.push(Math.sqrt(Math.max(variance, length.noise)));
    }
  }
  if (numbers.size < 2) return 0;
  return findExpectedInformation(weights, classes, numbers.size, means, deviations);
}
