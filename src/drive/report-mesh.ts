import type { RollingProof } from '../rolling/rolling-proof.ts';
import type { DriveMesh } from './drive-model.ts';
import type { MeshReport } from './drive-report.ts';
import { tellReason } from './tell-reason.ts';

/** A mesh of which nothing was rolled. */
export function emptyReport(mesh: DriveMesh, notes: readonly string[]): MeshReport {
  return {
    kind: mesh.kind,
    driver: mesh.driver,
    driven: mesh.driven,
    centerMm: mesh.center?.mm ?? null,
    workingPressureAngleDeg: null,
    contactRatio: null,
    verdict: null,
    backlashMinMm: null,
    backlashMaxMm: null,
    transmissionErrorMm: null,
    centerUMm: mesh.center?.uMm ?? null,
    range: null,
    freeFromMm: null,
    smoothFromMm: null,
    notes,
  };
}

/** What rolling found, at the distance and over its uncertainty. */
export function reportProof(mesh: DriveMesh, proof: RollingProof, notes: readonly string[]): MeshReport {
  const { mean, range } = proof;
  const angle = mean.workingPressureAngle;
  const distances = range.map((one) => one.centerDistance);
  return {
    ...emptyReport(mesh, [...notes, ...proof.reasons.map((reason) => tellReason(reason, proof))]),
    workingPressureAngleDeg: angle === undefined ? null : (angle * 180) / Math.PI,
    contactRatio: finite(mean.contactRatio),
    verdict: proof.verdict,
    backlashMinMm: finite(mean.backlashLeast),
    backlashMaxMm: finite(mean.backlashGreatest),
    transmissionErrorMm: finite(mean.transmissionError),
    range: {
      centerLeastMm: Math.min(...distances),
      centerGreatestMm: Math.max(...distances),
      backlashMinMm: finite(Math.min(...range.map((one) => one.backlashLeast))),
      backlashMaxMm: finite(Math.max(...range.map((one) => one.backlashGreatest))),
      transmissionErrorMm: finite(Math.max(...range.map((one) => one.transmissionError))),
    },
    freeFromMm: proof.freeFrom ?? null,
    smoothFromMm: proof.smoothFrom ?? null,
  };
}

/** Null where no tooth holds the wheel, so that play and unevenness have no end. */
function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
