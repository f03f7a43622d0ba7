import { askewSpread, slipRates, wrongSpread } from '../../gear-library/slips.ts';
import type { Random } from '../../src/numeric/random.ts';

/** What a person writes down for a reading of `mm`: mostly that, else with a slip of gear-library at its rate. */
export function slipReading(mm: number, isDiameter: boolean, random: Random): number {
  let left = random.uniform();
  const happens = (chance: number): boolean => {
    left -= chance;
    return left < 0;
  };
  if (happens(slipRates.wrong.chance)) {
    return mm + Math.max(wrongSpread.least, wrongSpread.part * mm) * random.normal();
  }
  if (happens(slipRates.askew.chance)) return mm + askewSpread.uMm * random.normal();
  if (happens(slipRates['inch-for-mm'].chance)) return random.uniform() < 0.8 ? mm / 25.4 : mm * 25.4;
  if (happens(slipRates['lost-decimal'].chance)) return mm * [10, 100, 0.1, 0.01][random.index([1, 1, 1, 1])];
  if (happens(slipRates['swapped-digits'].chance)) return swapDigits(mm, random);
  if (isDiameter && happens(slipRates['radius-for-diameter'].chance)) return mm / 2;
  return mm;
}

/** Two neighboring unlike digits exchanged, as read to 0.01; as read where that would not move the value. */
function swapDigits(mm: number, random: Random): number {
  const digits = [...mm.toFixed(2)];
  const places = digits.flatMap((digit, k) => (digit === '.' ? [] : [k]));
  const swaps: number[] = [];
  for (let k = 0; k + 1 < places.length; k++) {
    const swapped = [...digits];
    [swapped[places[k]], swapped[places[k + 1]]] = [digits[places[k + 1]], digits[places[k]]];
    const value = Number(swapped.join(''));
    if (Math.abs(value - mm) > 0.05) swaps.push(value);
  }
  return swaps.length === 0 ? mm : swaps[random.index(swaps.map(() => 1))];
}
