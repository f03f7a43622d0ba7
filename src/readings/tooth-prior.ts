import {
  shiftOfPinions,
  shiftOfWheels,
  sizeScale,
  thinning,
  tipLoss,
} from '../../gear-library/tooth-variation.ts';
import type { WheelEvidence } from './wheel-evidence.ts';

/** A normal part of a mixture. */
export interface NormalPart {
  readonly logWeight: number;
  readonly mean: number;
  readonly spread: number;
}

/**
 * Profile shift x before any reading, as a mixture of normals: wheels that a rack cuts cleanly are mostly standard,
 * pinions below the undercut limit 2 h_a/sin² α (in virtual teeth z/cos³ β) mostly are not.
 */
export function listShifts(
  kind: WheelEvidence['kind'],
  teeth: number,
  pressureAngle: number,
  helixAngle: number,
  addendum: number,
): NormalPart[] {
  if (kind === 'rack') return [{ logWeight: 0, mean: 0, spread: 0.005 }];
  const virtual = teeth / Math.cos(helixAngle) ** 3;
  const limit = (2 * addendum) / Math.sin(pressureAngle) ** 2;
  const isPinion = kind === 'external' && virtual < Math.min(limit, greatestPinion);
  const least = Math.max(0, (addendum * (limit - virtual)) / limit);
  return (isPinion ? shiftOfPinions : shiftOfWheels).map(({ center, spread, weight }) => ({
    logWeight: Math.log(weight),
    mean: center === 'least' ? least : center,
    spread,
  }));
}

// Wheels of low pressure angle undercut up to 32 teeth, but nobody shifts a 25-tooth wheel for that.
const greatestPinion = 17.5;

/** Tip loss in modules on the radius before any reading. */
export function listTipLosses(wheel: WheelEvidence): NormalPart[] {
  const worn = isWorn(wheel);
  return tipLoss.map(({ mean, spread, weight, weightWorn }) => ({
    logWeight: Math.log(worn ? weightWorn : weight),
    mean,
    spread,
  }));
}

/** Thinning for backlash in modules of arc before any reading; wear takes more. */
export function findThinning(wheel: WheelEvidence): { mean: number; spread: number } {
  return isWorn(wheel)
    ? { mean: thinning.meanWorn, spread: thinning.spreadWorn }
    : { mean: thinning.mean, spread: thinning.spread };
}

/** Relative size error of the whole wheel, one standard deviation. */
export function findScaleSpread(wheel: WheelEvidence): number {
  if (wheel.damage.some((damage) => damage.kind === 'swollen')) return sizeScale.swollen.spread;
  return wheel.material !== undefined && metals.has(wheel.material)
    ? sizeScale.metal.spread
    : sizeScale.plastic.spread;
}

const metals = new Set(['brass', 'steel']);

function isWorn(wheel: WheelEvidence): boolean {
  return wheel.damage.some((damage) => damage.kind === 'worn' || damage.kind === 'crumbling');
}
