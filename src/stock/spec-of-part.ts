import type { GearSpec } from '../involute/gear-spec.ts';
import { findShiftFromOutside } from './shift-from-outside.ts';
import type { StockPart } from './stock-part.ts';

/**
 * The toothing of a part, at one of the sizes it may have: full depth after ISO 53 A, since nothing that is sold as
 * a stock gear says its rack, no thinning, tips as measured where they were. Where the size is a guess from the outside,
 * the shift follows from the size.
 */
export function specOfPart(part: StockPart, size = part.sizes[0]): GearSpec {
  const { tipDiameter } = part;
  const profileShift =
    part.isGuess && tipDiameter !== null
      ? (findShiftFromOutside(part.teeth, size.module, tipDiameter) ?? 0)
      : part.profileShift;
  return {
    kind: 'external',
    teeth: part.teeth,
    module: size.module,
    pressureAngle: part.pressureAngle,
    helixAngle: 0,
    profileShift,
    addendum: 1,
    dedendum: 1.25,
    rootRadius: 0.38,
    thinning: 0,
    tipDiameter,
  };
}
