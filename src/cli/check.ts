import { checkMade, parseJob, tellMade } from '../index.ts';
import type { CommandOutput } from './command-output.ts';
import { tellNotices } from './tell-notices.ts';
import { wrapText } from './wrap-text.ts';

export interface CheckCommandOptions {
  readonly wheel: string;
}

/** The verb `check`: whether the part that was made for a wheel fits. The answer is no where it doesn't. */
export function checkCommand(bytes: Uint8Array, options: CheckCommandOptions): CommandOutput {
  const { job, notices } = parseJob(bytes);
  const report = checkMade(job, options.wheel);
  const [verdict, ...rest] = tellMade(report);
  return {
    json: report,
    lines: [...wrapText(`${report.wheel}: ${verdict}`), ...rest.flatMap((line) => wrapText(line, '  '))],
    notes: tellNotices(notices),
    exitCode: report.verdict === 'fits' ? 0 : 1,
  };
}
