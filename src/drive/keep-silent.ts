import { listShifts } from '../readings/tooth-prior.ts';
import type { CountChance } from '../readings/weigh-counts.ts';
import type { WheelEvidence } from '../readings/wheel-evidence.ts';
import type { WheelMessage } from './hear-mate.ts';
import type { PitchLabels } from './pitch-labels.ts';
import type { ToothState } from './tooth-states.ts';

/** What a wheel says that nothing is known of but its counts: the same of every label. */
export function keepSilent(
  kind: WheelEvidence['kind'],
  counts: readonly CountChance[],
  labels: PitchLabels,
): WheelMessage {
  const made = new Map<number, ReadonlyMap<number, readonly ToothState[]>>();
  return {
    kind,
    labels: undefined,
    isBare: true,
    radius: undefined,
    counts: counts.map(({ teeth }) => teeth),
    statesOf(label) {
      let found = made.get(label);
      if (!found) {
        const { pressureAngle } = labels.describe(label);
        found = new Map(
          counts.map(({ teeth, weight }) => [
            teeth,
            listShifts(kind, teeth, pressureAngle, 0, 1).map((shift) => ({
              label,
              teeth,
              weight: weight * Math.exp(shift.logWeight),
              mean: shift.mean,
              variance: shift.spread ** 2,
              part: -1,
            })),
          ]),
        );
        made.set(label, found);
      }
      return found;
    },
  };
}
