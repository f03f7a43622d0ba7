import type { RollPair } from './drive/check-pair.ts';
import type { DriveReport } from './drive/drive-report.ts';
import { reportDrive } from './drive/report-drive.ts';
import { Fail } from './fail.ts';
import { collectDrive } from './job/collect-drive.ts';
import type { Job } from './job/job-schema.ts';
import { openIdentities } from './job/open-identities.ts';
import { roundDrive } from './job/round-drive.ts';
import { type RollingOptions, rollPair } from './rolling/roll-pair.ts';
import type { RolledWheel } from './rolling/rolled-wheel.ts';

/** More meshes than any machine at a bench has are rolled at fewer distances, so that the answer comes in seconds. */
const manyMeshes = 50;
const manyNote =
  'with so many meshes each is rolled at three distances, and not sought from which it would turn';

/**
 * What a job's drive does: ratio, direction, every shaft's speed, every mesh checked and rolled, and what keeps any of
 * that from being said.
 */
export function checkDrive(job: Job): DriveReport {
  const model = collectDrive(job, openIdentities(job));
  if (model.meshes.length <= manyMeshes) return roundDrive(reportDrive(model, rememberPairs({})));
  const report = reportDrive(model, rememberPairs({ distances: 3, seeksDistance: false }));
  return roundDrive({ ...report, notes: [...report.notes, manyNote] });
}

/** The same with nothing rolled, for who asks about speeds, torques and distances alone. */
export function checkDriveUnrolled(job: Job): DriveReport {
  return roundDrive(reportDrive(collectDrive(job, openIdentities(job))));
}

/** Rolls each pair at a distance once, however often it stands in the drive. */
function rememberPairs(effort: RollingOptions): RollPair {
  const known = new Map<string, ReturnType<RollPair>>();
  return (driver, driven, at) => {
    const key = JSON.stringify([driver, driven, at]);
    const proof = known.get(key) ?? roll(driver, driven, at, effort);
    known.set(key, proof);
    return proof;
  };
}

/** A wheel that its spec gives no outline is an answer about that mesh, not the end of all others. */
function roll(
  driver: RolledWheel,
  driven: RolledWheel,
  at: { readonly mm: number; readonly u: number },
  effort: RollingOptions,
): ReturnType<RollPair> {
  try {
    return rollPair(driver, driven, at, effort);
  } catch (error) {
    if (!(error instanceof Fail)) throw error;
    return { verdict: 'no-outline', message: error.message, remedy: error.remedy };
  }
}
