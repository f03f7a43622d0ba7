import { Fail } from './fail.ts';
import type { CompensationFile } from './job/compensation-file.ts';
import { roundNumbers } from './job/round-numbers.ts';
import { type Calibration, calibrate } from './making/calibrate.ts';
import type { Compensation, CompensationUncertainty } from './making/compensation.ts';
import { fillCompensation } from './making/fill-compensation.ts';
import { findProcess } from './making/find-process.ts';

/** What a machine does, and how that is known. */
export interface FoundCompensation {
  readonly process: string;
  readonly figures: Compensation;
  /** Undefined where a person set the figures and said nothing of it */
  readonly uncertainty: CompensationUncertainty | undefined;
  /** Read off coupons, set by a person, or what is usual for the process */
  readonly from: 'coupons' | 'stated' | 'usual';
  /** The same as a sentence */
  readonly origin: string;
  readonly calibration: Calibration;
}

/**
 * The compensation that a file stands for: worked out from its coupons where any has a value, else as a person set it,
 * else what is usual for its process, marked as that. Throws Fail `bad-usage` for a process that is not known or that works to the
 * drawing, and as `calibrate` does.
 */
export function findCompensation(file: CompensationFile): FoundCompensation {
  const process = findProcess(file.process);
  const coupons = (file.coupons ?? []).map(({ readings }) => readings ?? []);
  const calibration = roundNumbers(calibrate(process, coupons, file.kit));
  const whose = [file.machine, file.material].filter((one) => one !== undefined && one !== '').join(', ');
  const of = whose === '' ? 'this machine' : whose;
  const stated = file.compensation;
  if (calibration.coupons === 0 && stated) {
    return {
      process: process.key,
      figures: fillCompensation(stated),
      uncertainty: file.uncertainty && fillCompensation(file.uncertainty),
      from: 'stated',
      origin: `An allowance as set for ${of} is in this file: don't scale or offset it again.`,
      calibration,
    };
  }
  if (process.key === 'machine-shop') {
    throw new Fail(
      'bad-usage',
      'process',
      'a machine shop works to the drawing and gauges its own work: nothing is taken back for it',
      'Leave the compensation out.',
      { key: process.key },
    );
  }
  const from = calibration.coupons === 0 ? 'usual' : 'coupons';
  return {
    process: process.key,
    figures: calibration.compensation,
    uncertainty: calibration.uncertainty,
    from,
    origin:
      from === 'usual'
        ? `A typical allowance for a ${process.name} is in this file, not one measured on yours: print the coupon, or one part, and measure it.`
        : `An allowance measured on ${calibration.coupons} ${calibration.coupons === 1 ? 'coupon' : 'coupons'} of ${of} is in this file: don't scale or offset it again.`,
    calibration,
  };
}
