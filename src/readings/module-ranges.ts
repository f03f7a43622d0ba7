import type { Weigher } from '../evidence/weigher.ts';
import type { HypothesisSpace, ToothHypothesis } from './hypothesis-space.ts';
import type { MeasuredLength } from './measured-length.ts';
import type { ResponseMode } from './tooth-response.ts';

/**
 * Between which modules each reading lies within `deviations` of what a toothing can show: one list a reading, of
 * low, high pairs. A pass over the sizes that is cheap and never too narrow.
 */
export function listModuleRanges(
  space: HypothesisSpace,
  tooth: ToothHypothesis,
  responses: readonly (readonly ResponseMode[])[],
  lengths: readonly MeasuredLength[],
  weigher: Weigher,
  deviations: number,
): number[][] {
  return responses.map((modes, i) => {
    // A pin's size is absolute, so its reading is checked once the module is chosen.
    if (modes.length === 0) return [0, Number.POSITIVE_INFINITY];
    const values = [lengths[i].value];
    // With one reading alone, nothing else would speak for what was meant by a slip.
    if (weigher.size === 1) {
      for (const pattern of weigher.patterns)
        if (pattern.repairedValue > 0) values.push(pattern.repairedValue);
    }
    return rangesOf(space, tooth, modes, lengths[i], values, deviations);
  });
}

/** Whether all readings but one at most allow the module; with one reading, whether it does. */
export function allowsModule(ranges: readonly (readonly number[])[], module: number): boolean {
  let far = 0;
  for (const range of ranges) {
    let inside = false;
    for (let k = 0; k < range.length; k += 2) {
      if (module >= range[k] && module <= range[k + 1]) {
        inside = true;
        break;
      }
    }
    if (!inside && ++far > 1) return false;
  }
  return ranges.length > 1 || far === 0;
}

/** Greatest tip loss that a range allows for, modules: beyond the badly worn there is no tooth. */
const greatestTipLoss = 0.5;
/** A free module's cell reaches this far to either side, relative. */
const freeCellSpread = 0.009;

function rangesOf(
  space: HypothesisSpace,
  tooth: ToothHypothesis,
  modes: readonly ResponseMode[],
  length: MeasuredLength,
  values: readonly number[],
  deviations: number,
): number[] {
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  let variance = 0;
  for (const mode of modes) {
    const thinned = mode.value + space.thinning.mean * mode.byThinning;
    const worn = thinned + greatestTipLoss * mode.byTipLoss;
    least = Math.min(least, thinned, worn);
    greatest = Math.max(greatest, thinned, worn);
    variance = Math.max(
      variance,
      (tooth.shift.spread * mode.byShift) ** 2 +
        (space.thinning.spread * mode.byThinning) ** 2 +
        (space.tipLandSpread * mode.byTipLand) ** 2 +
        (tooth.helixSpread * mode.byHelix) ** 2 +
        mode.variance +
        (mode.value * (space.scaleSpread + freeCellSpread)) ** 2,
    );
  }
  const relative = deviations * Math.sqrt(variance);
  const absolute = deviations * Math.sqrt(length.noise + length.zeroDeviation ** 2);
  const ranges: number[] = [];
  for (const read of values) {
    const value = read - length.offset - modes[0].offset;
    ranges.push(
      (value - absolute) / (greatest + relative),
      (value + absolute) / Math.max(1e-9, least - relative),
    );
  }
  return ranges;
}
