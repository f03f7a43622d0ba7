import { rollFeel } from '../../gear-library/roll-feel.ts';
import type { HandRollReading, Reading } from './wheel-evidence.ts';

/**
 * The log likelihood of what rolled trial gears felt like, for a wheel of this module and angle: a trial gear runs
 * as its base pitch π m cos α agrees with the wheel's (gear-library/roll-feel has the shares).
 */
export function weighHandRolls(
  readings: readonly Reading[],
): (module: number, pressureAngle: number) => number {
  const rolls = readings.filter(
    (reading): reading is HandRollReading =>
      reading.of === 'hand-roll' && reading.spec.moduleMm !== undefined,
  );
  if (rolls.length === 0) return () => 0;
  return (module, pressureAngle) => {
    let log = 0;
    for (const { spec, felt } of rolls) {
      const trial = (spec.moduleMm ?? module) * Math.cos(((spec.pressureAngleDeg ?? 20) * Math.PI) / 180);
      const mismatch = Math.abs(trial / (module * Math.cos(pressureAngle)) - 1);
      const row = rollFeel.find((entry) => mismatch <= entry.upTo) ?? rollFeel[rollFeel.length - 1];
      log += Math.log(row[felt]);
    }
    return log;
  };
}
