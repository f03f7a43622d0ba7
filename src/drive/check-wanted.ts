import type { DriveWish } from './drive-model.ts';
import type { Ratio, WantedReport } from './drive-report.ts';
import { tellEffects } from './tell-effects.ts';

/** How what was found stands against what was wished; undefined where nothing was, or nothing can be said. */
export function checkWanted(
  wish: DriveWish | undefined,
  found: {
    readonly ratio: Ratio | null;
    readonly travelMm: number | null;
    readonly direction: 'same' | 'opposite' | null;
  },
): WantedReport | undefined {
  const { ratio, travelMmPerTurn, direction } = wish ?? {};
  const directionHolds =
    direction === undefined || found.direction === null ? null : found.direction === direction;
  const tolerancePercent = wish?.tolerancePercent ?? usualTolerance;
  const report = (errorPercent: number, effects: WantedReport['effects']): WantedReport => ({
    errorPercent,
    tolerancePercent,
    within: Math.abs(errorPercent) <= tolerancePercent + rounding,
    directionHolds,
    effects,
  });
  if (found.travelMm !== null && travelMmPerTurn !== undefined) {
    // Less travel is slower, and slower is positive.
    const error = (100 * (travelMmPerTurn - found.travelMm)) / travelMmPerTurn;
    return report(error, tellEffects(error, true));
  }
  if (found.ratio && ratio !== undefined) {
    const error = (100 * (found.ratio.value - ratio)) / ratio;
    return report(error, tellEffects(error, false));
  }
  if (found.ratio && directionHolds !== null) return report(0, []);
  return undefined;
}

/**
 * Percent, where nobody says how near it must be: what nobody notices on a feed, a tray or a toy. Common practice, no
 * published source.
 */
const usualTolerance = 0.5;

/** A ratio that is meant to be met exactly may be written with a last digit that a double rounds. */
const rounding = 1e-9;
