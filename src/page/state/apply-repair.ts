import type { Wheel, WheelReport } from '../../index.ts';
import { type JobReading, putReading } from './edit-job.ts';

export type Suspect = WheelReport['suspect'][number];

/** The gear with a reading put right the way the slip says; the same gear where it can only be taken again. */
export function applyRepair(wheel: Wheel, { reading: index, repair }: Suspect): Wheel {
  const reading = wheel.readings?.[index];
  if (!reading || repair?.value === undefined) return wheel;
  if (repair.kind === 'count-off-by-one') {
    return putReading(wheel, { of: 'teeth', count: repair.value }, index);
  }
  const mm = (reading as { mm?: number | readonly number[] }).mm;
  const takings = mm === undefined ? [] : typeof mm === 'number' ? [mm] : mm;
  const factor = factorOf(repair, takings);
  const mended =
    factor === undefined || takings.length < 2
      ? Number(repair.value.toPrecision(12))
      : takings.map((one) => Number((one * factor).toPrecision(12)));
  return putReading(wheel, { ...reading, mm: mended } as JobReading, index);
}

/** Slips of unit, half and point change every taking by the same factor; swapped digits only one of them. */
function factorOf(repair: NonNullable<Suspect['repair']>, takings: readonly number[]): number | undefined {
  if (repair.kind === 'swapped-digits' || repair.value === undefined || takings.length === 0)
    return undefined;
  const mean = takings.reduce((sum, one) => sum + one, 0) / takings.length;
  const rough = repair.value / mean;
  const exact = [25.4, 1 / 25.4, 2, 10, 100, 0.1, 0.01].find((one) => Math.abs(one / rough - 1) < 0.02);
  return exact;
}

/** What the button of a repair says. */
export function nameRepair({ repair }: Suspect): string | undefined {
  if (repair?.value === undefined) return undefined;
  const value = Number(repair.value.toFixed(3));
  switch (repair.kind) {
    case 'inch-for-mm':
      return `It was inches: use ${value} mm`;
    case 'radius-for-diameter':
      return `It was half: use ${value} mm`;
    case 'swapped-digits':
      return `Digits swapped: use ${value} mm`;
    case 'lost-decimal':
      return `Lost point: use ${value} mm`;
    case 'count-off-by-one':
      return `Use ${value} teeth`;
    default:
      return undefined;
  }
}
