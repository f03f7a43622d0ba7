import { type FoundCompensation, findCompensation, formatCompensation, parseCompensation } from '../index.ts';
import type { CommandOutput } from './command-output.ts';
import { wrapText } from './wrap-text.ts';
import { writeFiles } from './write-files.ts';

export interface CalibrateCommandOptions {
  readonly out?: string;
  readonly force?: boolean;
}

/** The verb `calibrate`: what a machine's coupons say of it; with a folder, the file with the figures put in. */
export async function calibrateCommand(
  bytes: Uint8Array,
  options: CalibrateCommandOptions,
): Promise<CommandOutput> {
  const file = parseCompensation(bytes);
  const found = findCompensation(file);
  const { figures, uncertainty, calibration, from, process } = found;
  const paths =
    options.out === undefined
      ? []
      : await writeFiles(
          options.out,
          [
            {
              name: 'compensation.json',
              bytes: new TextEncoder().encode(
                formatCompensation({
                  ...file,
                  compensation: figures,
                  ...(uncertainty === undefined ? {} : { uncertainty }),
                }),
              ),
            },
          ],
          options.force === true,
        );
  return {
    json: { process, from, ...calibration, compensation: figures, uncertainty: uncertainty ?? null, paths },
    lines: tellCompensation(found, paths),
    notes: [],
    exitCode: 0,
  };
}

function tellCompensation(found: FoundCompensation, paths: readonly string[]): string[] {
  const { figures: c, uncertainty: u, calibration, from } = found;
  const row = (name: string, value: number, give: number | undefined): string =>
    `  ${name.padEnd(14)}${value.toFixed(3).padStart(8)} a side ${(2 * value).toFixed(3).padStart(8)} on the diameter${give === undefined ? '' : `   ± ${give.toFixed(3)} a side`}`;
  const leftOut = calibration.readings.filter(({ isLeftOut }) => isLeftOut);
  return [
    ...wrapText(
      from === 'coupons'
        ? `What this machine adds, from ${calibration.coupons} ${calibration.coupons === 1 ? 'coupon' : 'coupons'}, mm; one print differs from the next by ${calibration.betweenPrintsMm.toFixed(3)} a side.`
        : from === 'stated'
          ? 'What this machine adds, as it was set, mm.'
          : 'No coupon has a value yet: what is usual for the process, mm.',
    ),
    row('outside', c.outsidePerSideMm, u?.outsidePerSideMm),
    row('teeth', c.teethPerSideMm, u?.teethPerSideMm),
    row('holes', c.holesPerSideMm, u?.holesPerSideMm),
    row('first layers', c.firstLayerPerSideMm, u?.firstLayerPerSideMm),
    `  ${'length'.padEnd(14)}${c.scalePercent.toFixed(2).padStart(8)} percent`,
    ...leftOut.flatMap(({ coupon, reading, readMm, expectedMm }) =>
      wrapText(
        `Left out: coupon ${coupon + 1}, reading ${reading + 1}: ${readMm.toFixed(2)} mm where ${expectedMm.toFixed(2)} was expected. Measure it again.`,
        '  ',
      ),
    ),
    ...(calibration.coupons === 1
      ? wrapText('One coupon is little: print two more and add their readings.', '  ')
      : []),
    ...paths.map((path) => `  ${path}`),
  ];
}
