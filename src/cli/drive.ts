import { checkDrive, type DriveReport, parseJob } from '../index.ts';
import type { CommandOutput } from './command-output.ts';
import { reportDrive } from './report-drive.ts';
import { tellNotices } from './tell-notices.ts';

/**
 * The verb `drive`: what the drive does. The answer is no where a mesh jams, where the drive contradicts itself or its
 * wish, or where neither ratio nor travel can be said.
 */
export function driveCommand(bytes: Uint8Array): CommandOutput {
  const { job, notices } = parseJob(bytes);
  const report = checkDrive(job);
  const lines =
    (job.wheels ?? []).length === 0
      ? ['The job has no wheels yet. Add them, and which drives which.']
      : reportDrive(report, job);
  return { json: report, lines, notes: tellNotices(notices), exitCode: isNo(report) ? 1 : 0 };
}

function isNo(report: DriveReport): boolean {
  const { wanted } = report;
  const isUnknown = report.ratio === null && report.travelMmPerTurn === null;
  const isAgainstWish = wanted !== null && (!wanted.within || wanted.directionHolds === false);
  const isImpossible = report.troubles.some(({ kind }) => kind === 'contradiction' || kind === 'cannot-mesh');
  return isUnknown || isAgainstWish || isImpossible || report.meshes.some((mesh) => mesh.verdict === 'jams');
}
