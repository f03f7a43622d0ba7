import { rollingLimits } from '../../gear-library/rolling-limits.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import type { DriveWheel } from './drive-model.ts';
import type { DriveTrouble } from './drive-report.ts';

/** Helices that can't lie along each other, by the limit that rolling has. */
export function checkHelices(
  driver: DriveWheel,
  one: GearSpec,
  driven: DriveWheel,
  other: GearSpec,
): DriveTrouble[] {
  const isRing = one.kind === 'internal' || other.kind === 'internal';
  const [first, second] = [one, other].map(findBaseHelix);
  const apart = Math.abs(isRing ? first - second : first + second);
  if (apart <= rollingLimits.helix.most) return [];
  const isHand = Math.abs(isRing ? first + second : first - second) <= rollingLimits.helix.most;
  return [
    {
      kind: 'cannot-mesh',
      about: [driver.id, driven.id],
      message: isHand
        ? `the helices of "${driver.id}" and "${driven.id}" are of ${isRing ? 'opposite hands' : 'one hand'}, so they don't run on parallel shafts`
        : `the helices of "${driver.id}" and "${driven.id}" stand ${((apart * 180) / Math.PI).toFixed(1)} degrees apart`,
      remedy: isRing
        ? 'With a ring both are of one hand; look which way each leans.'
        : 'On parallel shafts one is right hand and the other left; look which way each leans.',
    },
  ];
}

function findBaseHelix({ helixAngle, pressureAngle }: GearSpec): number {
  return Math.asin(Math.sin(helixAngle) * Math.cos(pressureAngle));
}
