import type { DriveReport } from './drive/drive-report.ts';
import { reportDrive } from './drive/report-drive.ts';
import { collectDrive } from './job/collect-drive.ts';
import { collectEvidence } from './job/collect-evidence.ts';
import type { Job } from './job/job-schema.ts';
import { roundDrive } from './job/round-drive.ts';
import { identifyWheel } from './readings/identify-wheel.ts';

/**
 * What a job's drive does: ratio, direction, every shaft's speed, every mesh checked and rolled, and what keeps any of
 * that from being said.
 */
export function checkDrive(job: Job): DriveReport {
  const model = collectDrive(job, (wheel) => identifyWheel(collectEvidence(job, wheel)));
  return roundDrive(reportDrive(model));
}
