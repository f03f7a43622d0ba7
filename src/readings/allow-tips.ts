import { involute } from '../involute/involute-function.ts';
import type { NormalPart } from './tooth-prior.ts';
import type { UnitTooth } from './tooth-response.ts';

/**
 * The tip losses of a toothing in the light of what can be made: a tooth that comes to a point below its tip can't, so
 * each part of the mixture weighs as much less as its shift and loss would point the teeth.
 *
 * The half angle of the tip land, ψ = (π/2 + 2 x tan α)/z + inv α − inv α_a, is linear enough in shift and loss for
 * the chance of ψ > 0 to be a normal distribution's. The same list comes back where no part is touched.
 *
 * @param shiftSpread standard deviation of the toothing's shift
 */
export function allowTips(
  tooth: UnitTooth,
  shiftSpread: number,
  tipLosses: readonly NormalPart[],
): readonly NormalPart[] {
  if (tooth.kind !== 'external') return tipLosses;
  const { profileShift } = tooth;
  if (findHalfLand(tooth, profileShift + surely * shiftSpread, 0) > 0) return tipLosses;
  return tipLosses.flatMap((part) => {
    const at = Math.max(0, part.mean);
    const land = findHalfLand(tooth, profileShift, at);
    const byShift = (findHalfLand(tooth, profileShift + step, at) - land) / step;
    const byLoss = (findHalfLand(tooth, profileShift, at + step) - land) / step;
    const chance = findNormalShare(land / Math.hypot(byShift * shiftSpread, byLoss * part.spread));
    return chance < least ? [] : [{ ...part, logWeight: part.logWeight + Math.log(chance) }];
  });
}

// A shift this many deviations out is rarer than any slip.
const surely = 4;
const step = 1e-3;
// Rarer than a slip of the pen; a mixture without any part left can't be made at all.
const least = 1e-4;

function findHalfLand(tooth: UnitTooth, shift: number, tipLoss: number): number {
  const { teeth, pressureAngle, helixAngle, addendum } = tooth;
  const transverse = Math.atan(Math.tan(pressureAngle) / Math.cos(helixAngle));
  const reference = teeth / Math.cos(helixAngle);
  const tip = reference + 2 * (addendum + shift - tipLoss);
  const base = reference * Math.cos(transverse);
  // Below the base circle a tooth has no involute left to be pointed by.
  if (tip <= base) return 0;
  return (
    (Math.PI / 2 + 2 * shift * Math.tan(pressureAngle)) / teeth +
    involute(transverse) -
    involute(Math.acos(base / tip))
  );
}

/** Φ(t) by its logistic likeness: within 0.01, and a weight needs no more. */
function findNormalShare(t: number): number {
  return 1 / (1 + Math.exp(-1.702 * t));
}
