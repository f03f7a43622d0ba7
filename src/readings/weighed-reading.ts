import { askewSpread, slipRates, wrongSpread } from '../../gear-library/slips.ts';
import { listRepairs } from '../evidence/list-repairs.ts';
import type { WeighedReading } from '../evidence/weigher.ts';
import type { MeasuredLength } from './measured-length.ts';

/** A measured length with everything that may have gone wrong with it, as the weigher takes it. */
export function toWeighedReading(length: MeasuredLength): WeighedReading {
  const isDiameter = length.of === 'outside' || length.of === 'root';
  const rates = {
    'inch-for-mm': slipRates['inch-for-mm'].chance,
    'radius-for-diameter': slipRates['radius-for-diameter'].chance,
    'swapped-digits': slipRates['swapped-digits'].chance,
    'lost-decimal': slipRates['lost-decimal'].chance,
  };
  return {
    value: length.value,
    repairs: length.value > 0 ? listRepairs(length.value, rates, isDiameter) : [],
    wrong: [
      {
        logChance: Math.log(slipRates.wrong.chance),
        variance: Math.max(wrongSpread.least, wrongSpread.part * length.value) ** 2,
      },
      { logChance: Math.log(slipRates.askew.chance), variance: askewSpread.uMm ** 2 },
    ],
    zeroShare: length.zeroDeviation > 0 ? 1 : 0,
  };
}
