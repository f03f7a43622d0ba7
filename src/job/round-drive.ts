import type { DriveReport } from '../drive/drive-report.ts';
import { roundNumbers } from './round-numbers.ts';

/**
 * A drive's report with its lengths, angles and torques to nine decimals, as an identity's are, and its speeds to
 * twelve figures: a slow shaft's turns are small numbers, and nine decimals would take them away.
 */
export function roundDrive(report: DriveReport): DriveReport {
  const ratioOf = <R extends DriveReport['ratio']>(ratio: R): R =>
    ratio && { ...ratio, value: toFigures(ratio.value) };
  return {
    ...roundNumbers(report),
    ratio: ratioOf(report.ratio),
    shafts: report.shafts.map((shaft) => ({
      ...roundNumbers(shaft),
      rpm: shaft.rpm === null ? null : toFigures(shaft.rpm),
      turns: ratioOf(shaft.turns),
    })),
  };
}

function toFigures(value: number): number {
  return Number(value.toPrecision(12));
}
