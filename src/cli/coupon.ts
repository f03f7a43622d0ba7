import { layCoupon } from '../index.ts';
import type { CommandOutput } from './command-output.ts';
import { wrapText } from './wrap-text.ts';
import { writeFiles } from './write-files.ts';

export interface CouponCommandOptions {
  readonly process: string;
  readonly out: string;
  readonly force?: boolean;
}

/** The verb `coupon`: writes the coupon of a process and the file for its readings, all or none. */
export async function couponCommand(options: CouponCommandOptions): Promise<CommandOutput> {
  const { process, files, steps } = layCoupon(options.process);
  const paths = await writeFiles(options.out, files, options.force === true);
  return {
    json: { process, steps, files: files.map(({ bytes }, k) => ({ path: paths[k], bytes: bytes.length })) },
    lines: [
      ...paths.map((path) => `  ${path}`),
      '',
      ...steps.flatMap((step, k) => wrapText(step, `  ${k + 1}. `)),
    ],
    notes: [],
    exitCode: 0,
  };
}
