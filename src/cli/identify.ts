import { identify, parseJob } from '../index.ts';
import type { CommandOutput } from './command-output.ts';
import { reportIdentity } from './report-identity.ts';
import { tellNotices } from './tell-notices.ts';

export interface IdentifyOptions {
  readonly wheel?: string;
}

/**
 * The verb `identify`: what each wheel of the job is, or the one named, and what to measure next. The answer is no
 * where the job has no wheel, or where no gear gives a wheel's readings.
 */
export function identifyCommand(bytes: Uint8Array, options: IdentifyOptions): CommandOutput {
  const { job, notices } = parseJob(bytes);
  const report = identify(job, options.wheel === undefined ? {} : { wheelId: options.wheel });
  const isNo = report.wheels.length === 0 || report.wheels.some((wheel) => wheel.verdict === 'nothing-fits');
  const lines =
    report.wheels.length === 0
      ? ['The job has no wheels yet. Add one with its tooth count and what you measured.']
      : reportIdentity(report, job);
  return { json: report, lines, notes: tellNotices(notices), exitCode: isNo ? 1 : 0 };
}
