import {
  defaultKit,
  gapUncertainty,
  instruments,
  methods,
  sharedPartOfTotal,
} from '../../gear-library/reading-uncertainty.ts';
import { combineTakings } from './combine-takings.ts';
import type { LengthReading, Mate, WheelEvidence } from './wheel-evidence.ts';

/** A length that says something about the teeth, as one value with its uncertainty taken apart. */
export interface MeasuredLength {
  /** Index in the wheel's readings; −1 for one still to be taken. */
  readonly index: number;
  readonly of: keyof typeof methods;
  /** mm, the caliper's known zero subtracted */
  readonly value: number;
  /** Independent part of the variance, mm² */
  readonly noise: number;
  /** Standard deviation that comes from the zero shared by all caliper readings, mm */
  readonly zeroDeviation: number;
  /** Expected reading minus what the geometry says, mm: method's bias and an open split */
  readonly offset: number;
  readonly jaws: 'settled' | 'rocked' | 'true' | undefined;
  readonly teeth: number;
  readonly pin: number;
  readonly pitches: number;
  readonly mate: Mate | undefined;
  /** Index of a taking far from the others. */
  readonly farOff: number | undefined;
}

/** Every reading of the wheel's teeth that has a value, ready to be weighed; others are left to their own users. */
export function listMeasuredLengths(wheel: WheelEvidence): MeasuredLength[] {
  const lengths: MeasuredLength[] = [];
  wheel.readings.forEach((reading, index) => {
    if (!isToothLength(reading)) return;
    const takings = takingsOf(reading);
    if (takings === undefined) return;
    const mate =
      reading.of === 'center-distance' ? wheel.mates.find((m) => m.id === reading.mate) : undefined;
    if (reading.of === 'center-distance' && !mate) return;
    if (reading.of === 'span' && reading.teeth === undefined) return;
    if (reading.of === 'over-pins' && reading.pinMm === undefined) return;
    lengths.push(measureLength(wheel, reading, index, takings, mate));
  });
  return lengths;
}

/**
 * One reading as a measured length. With `uMm` the total is given; else instrument and method are combined, root
 * sum of squares. The part that the caliper's zero shares is taken out of a given total, never more than
 * gear-library allows.
 */
export function measureLength(
  wheel: WheelEvidence,
  reading: LengthReading,
  index: number,
  takings: number | readonly number[],
  mate: Mate | undefined,
): MeasuredLength {
  const of = reading.of as keyof typeof methods;
  const method = methods[of];
  const instrument = findInstrumentUncertainty(wheel);
  const { mean, deviation, farOff } = combineTakings(takings, instrument);
  const followsZero = of !== 'tooth-depth' && of !== 'rack-pitch';
  const zero = followsZero ? (wheel.kit.zeroUMm ?? defaultKit.zeroUMm) : 0;
  let noise = deviation ** 2 + method.uMm ** 2;
  let zeroDeviation = zero;
  if (reading.uMm !== undefined) {
    const spread = Math.max(0, deviation ** 2 - instrument ** 2);
    zeroDeviation = Math.min(zero, sharedPartOfTotal.part * reading.uMm);
    noise = reading.uMm ** 2 - zeroDeviation ** 2 + spread;
  }
  const split = findSplitOffset(wheel, reading);
  return {
    index,
    of,
    value: mean - (followsZero ? (wheel.kit.zeroMm ?? 0) : 0),
    noise: noise + split.variance,
    zeroDeviation,
    offset: (reading.uMm === undefined ? method.biasMm : 0) + split.offset,
    jaws: reading.jaws,
    teeth: reading.teeth ?? 0,
    pin: reading.pinMm ?? 0,
    pitches: reading.pitches ?? 1,
    mate,
    farOff,
  };
}

/** Standard uncertainty of one taking with the wheel's caliper, mm. */
export function findInstrumentUncertainty(wheel: Pick<WheelEvidence, 'kit'>): number {
  if (wheel.kit.uMm !== undefined) return wheel.kit.uMm;
  const key = wheel.kit.caliper ?? defaultKit.caliper;
  return key in instruments
    ? instruments[key as keyof typeof instruments].uMm
    : instruments[defaultKit.caliper].uMm;
}

function isToothLength(reading: WheelEvidence['readings'][number]): reading is LengthReading {
  return reading.of in methods;
}

/** The takings as they stand, or a center distance from what was measured at its two posts. */
export function takingsOf(reading: LengthReading): number | readonly number[] | undefined {
  if (reading.mm !== undefined) return reading.mm;
  const posts = reading.postsMm;
  if (posts?.length !== 2) return undefined;
  const halves = (posts[0] + posts[1]) / 2;
  if (reading.overPostsMm !== undefined) return reading.overPostsMm - halves;
  if (reading.betweenPostsMm !== undefined) return reading.betweenPostsMm + halves;
  return undefined;
}

/**
 * A split of gap g opens the rim, so diameters taken open read g/π large, those taken closed don't. Where the
 * reading doesn't say which, half is expected, give or take the other half.
 */
function findSplitOffset(wheel: WheelEvidence, reading: LengthReading): { offset: number; variance: number } {
  if (reading.of !== 'outside' && reading.of !== 'root' && reading.of !== 'over-pins')
    return { offset: 0, variance: 0 };
  let gap = 0;
  for (const damage of wheel.damage) if (damage.kind === 'split') gap += damage.gapMm ?? 0;
  if (gap === 0 || reading.taken === 'closed') return { offset: 0, variance: 0 };
  const whole = gap / Math.PI;
  const gapVariance = (gapUncertainty.uMm / Math.PI) ** 2;
  if (reading.taken === 'open') return { offset: whole, variance: gapVariance };
  return { offset: whole / 2, variance: gapVariance + (whole / 2) ** 2 };
}
