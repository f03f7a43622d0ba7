import { pitchSizes } from '../../gear-library/pitch-series.ts';
import type { PartSize } from './stock-part.ts';

export interface SizeGuess {
  /** The sizes that the outside allows, nearest first; one that no list has where none is near */
  readonly sizes: readonly PartSize[];
  /** Standard uncertainty of the module, mm: from the reading, and from the shift that nobody knows */
  readonly moduleUncertainty: number;
}

/**
 * What size a gear may be by its outside alone, m = d_a/(z + 2 + 2x): a guess, since the shift x is not known. Few teeth
 * are often shifted outward, and then the plain rule d_a/(z + 2) names too large a size.
 *
 * Listed are the sizes of the usual series within two standard uncertainties; of old stock and circular pitches only
 * where no usual one is.
 *
 * @param outside tip diameter, mm
 * @param uncertainty standard uncertainty of `outside`, mm
 * @example guessSize(24, 13, 0.03).sizes[0].module = 0.5
 */
export function guessSize(teeth: number, outside: number, uncertainty = usualUncertainty): SizeGuess {
  const shift = teeth < shiftedBelow ? fewTeeth : manyTeeth;
  const module = outside / (teeth + 2 + 2 * shift.mean);
  const spread =
    module * Math.hypot(uncertainty / outside, (2 * shift.spread) / (teeth + 2 + 2 * shift.mean));
  const isNear = (size: PartSize): boolean => Math.abs(size.module - module) <= 2 * spread;
  const usual = usualSizes.filter(isNear);
  const chosen = (usual.length > 0 ? usual : pitchSizes.filter(isNear))
    .sort((a, b) => Math.abs(a.module - module) - Math.abs(b.module - module))
    .slice(0, most);
  return {
    sizes:
      chosen.length > 0
        ? chosen.map(({ system, size, module: m }) => ({ system, size, module: m }))
        : [{ system: 'free', size: module, module }],
    moduleUncertainty: spread,
  };
}

const usualSizes: readonly PartSize[] = pitchSizes.filter(
  ({ source }) => !/old stock|Circular|series II/.test(source),
);
/** mm: an ordinary caliper over tips that may be worn. */
const usualUncertainty = 0.04;
/** Below so many teeth makers shift pinions against undercut (17 at 20°, fewer in practice). */
const shiftedBelow = 15;
/** x of few and of many teeth as small machines have them: judgment, common practice, no published source. */
const fewTeeth = { mean: 0.2, spread: 0.25 };
const manyTeeth = { mean: 0, spread: 0.12 };
/** More rivals than this say nothing. */
const most = 5;
