import type { CheckedMesh } from './check-pair.ts';
import type { DriveMesh, DriveWheel } from './drive-model.ts';
import { emptyReport } from './report-mesh.ts';

/** A belt between two pulleys: what its ratio rests on, and whether it can lie round both. */
export function checkBelt(mesh: DriveMesh, driver: DriveWheel, driven: DriveWheel): CheckedMesh {
  const notes = [driver, driven].flatMap((wheel) => wheel.notes.map((note) => `"${wheel.id}" ${note}`));
  const isCounted = driver.teeth !== undefined && driven.teeth !== undefined;
  if (mesh.slipPercent > 0) notes.push(`slips by ${mesh.slipPercent} %, as given`);
  else if (!isCounted)
    notes.push('no slip is reckoned; a flat or round belt under load slips by a percent or two');
  if (!isCounted) {
    notes.push("its ratio is as good as the two diameters; the belt's own thickness adds to both");
  }
  if (mesh.isCrossed) notes.push('crossed: the driven pulley turns the other way');
  const [one, other] = [driver.diameterMm, driven.diameterMm];
  const isTight =
    mesh.center !== undefined &&
    one !== undefined &&
    other !== undefined &&
    mesh.center.mm + 2 * mesh.center.uMm < (one + other) / 2;
  return {
    report: emptyReport(mesh, notes),
    troubles: isTight
      ? [
          {
            kind: 'cannot-mesh',
            about: [driver.id, driven.id],
            message: `at ${mesh.center?.mm} mm the pulleys "${driver.id}" and "${driven.id}" would run into each other`,
            remedy: 'Measure the distance between the shafts, or the two diameters, again.',
          },
        ]
      : [],
  };
}
