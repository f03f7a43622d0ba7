import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { traceInternalHalf } from './internal-outline.ts';
import { traceHalf } from './trace-outline.ts';

/**
 * The widest flat blade, mm, that enters the middle of a space from the tips and comes within `above` mm of the root
 * circle: twice the least distance of flanks and fillets from the space's axis over that height, to a hundredth of
 * the module. Racks have no root circle: a plain Error. Throws Fail as the outline does.
 *
 * @example m 1, z 24, 20°, 0.05 above the root: 0.53
 */
export function findSpaceWidth(spec: GearSpec, above: number): number {
  if (spec.kind === 'rack') throw new Error('a rack has no root circle');
  const isInternal = spec.kind === 'internal';
  const chordError = 0.001 * spec.module;
  const half = isInternal ? traceInternalHalf(spec, chordError) : traceHalf(spec, chordError);
  const side = isInternal ? -1 : 1;
  const bottom = findDiameters(spec).root / 2;
  let least = Number.POSITIVE_INFINITY;
  // The root arc itself falls away from the blade's end on both sides of the axis; it holds no blade up.
  for (let k = 2; k < half.length; k += 2) {
    const before = side * (half[k - 1] - bottom) - above;
    const here = side * (half[k + 1] - bottom) - above;
    if (here < 0) continue;
    const share = before >= 0 ? 1 : here / (here - before);
    least = Math.min(least, half[k], half[k] + share * (half[k - 2] - half[k]));
  }
  return 2 * least;
}
