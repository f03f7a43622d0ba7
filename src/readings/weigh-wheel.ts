import { slipRates, zeroSlipSpread } from '../../gear-library/slips.ts';
import { createWeigher, type Weigher } from '../evidence/weigher.ts';
import { weighHandRolls } from './hand-roll.ts';
import type { HypothesisSpace } from './hypothesis-space.ts';
import { listMeasuredLengths, type MeasuredLength } from './measured-length.ts';
import { type WeighedPart, weighSpace } from './weigh-space.ts';
import { toWeighedReading } from './weighed-reading.ts';
import type { WheelEvidence } from './wheel-evidence.ts';

/** One wheel's hypotheses with its own readings weighed, before anything else speaks. */
export interface WeighedWheel {
  readonly wheel: WheelEvidence;
  readonly space: HypothesisSpace;
  readonly lengths: readonly MeasuredLength[];
  readonly weigher: Weigher;
  readonly parts: readonly WeighedPart[];
  /** Probability of each of the weigher's slip patterns. */
  readonly patterns: Float64Array;
}

/** Weighs every hypothesis of the space by the wheel's lengths and rolled trial gears. */
export function weighWheel(wheel: WheelEvidence, space: HypothesisSpace): WeighedWheel {
  const lengths = listMeasuredLengths(wheel);
  const weighed = lengths.map(toWeighedReading);
  const followers = weighed.filter((reading) => reading.zeroShare > 0).length;
  const weigher = createWeigher(
    weighed,
    followers > 1
      ? { logChance: Math.log(slipRates['zero-not-set'].chance), variance: zeroSlipSpread.uMm ** 2 }
      : undefined,
  );
  const { parts, patterns } = weighSpace(space, lengths, weigher, weighHandRolls(wheel.readings));
  return { wheel, space, lengths, weigher, parts, patterns };
}
