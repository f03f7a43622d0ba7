import { wormLocking } from '../../gear-library/worm-locking.ts';
import type { CheckedMesh } from './check-pair.ts';
import type { DriveMesh, DriveWheel } from './drive-model.ts';
import { emptyReport } from './report-mesh.ts';

/** A worm and its wheel: not rolled, but whether the wheel can drive the worm back is told where the lead is known. */
export function checkWorm(mesh: DriveMesh, driver: DriveWheel, driven: DriveWheel): CheckedMesh {
  const worm = driver.kind === 'worm' || driven.kind !== 'worm' ? driver : driven;
  const notes = [driver, driven].flatMap((wheel) => wheel.notes.map((note) => `"${wheel.id}" ${note}`));
  notes.push('not rolled: a worm and its wheel touch in space, not in one plane');
  notes.push(...tellLocking(worm, worm === driven));
  return { report: emptyReport(mesh, notes), troubles: [] };
}

function tellLocking(worm: DriveWheel, isDrivenBack: boolean): string[] {
  const lead = findLeadAngle(worm);
  if (lead === undefined) {
    return [
      `whether the wheel could drive "${worm.id}" back is not known: give the worm's module and reference diameter`,
    ];
  }
  const deg = (lead * 180) / Math.PI;
  const told = `lead angle ${deg.toFixed(1)} degrees`;
  if (deg < wormLocking.holdsBelow.deg) {
    return [
      isDrivenBack
        ? `${told}: a wheel can't drive a worm so flat; below about ${wormLocking.holdsBelow.deg} degrees it locks itself`
        : `${told}: it locks itself, the wheel can't drive it back (below about ${wormLocking.holdsBelow.deg} degrees, common practice; shaking may still creep it)`,
    ];
  }
  if (deg < wormLocking.mayHoldBelow.deg) {
    return [`${told}: it may or may not hold against being driven back; grease and shaking decide`];
  }
  return [`${told}: the wheel can drive it back`];
}

/**
 * γ of a worm, rad: tan γ = m z1/d1 with the axial module, sin γ = m z1/d1 with the normal one (handbook practice);
 * undefined where a number is missing or the normal lead is longer than the circumference holds.
 *
 * @example one start, axial module 0.5, d1 6: 4.76 degrees
 */
export function findLeadAngle({ teeth, worm }: DriveWheel): number | undefined {
  if (teeth === undefined || !worm) return undefined;
  const { moduleMm, moduleIn, referenceDiameterMm } = worm;
  if (moduleMm === undefined || referenceDiameterMm === undefined) return undefined;
  const slope = (moduleMm * teeth) / referenceDiameterMm;
  if (moduleIn === 'axial') return Math.atan(slope);
  return slope <= 1 ? Math.asin(slope) : undefined;
}
