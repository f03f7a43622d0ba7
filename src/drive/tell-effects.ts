import type { WantedReport } from './drive-report.ts';

/**
 * What an error of the speed comes to, as the person meets it. `errorPercent` as in the report: positive, slower.
 * Nothing where there is no error to speak of. `isTravel`: the output is a bar, which has no clock and no pitch.
 *
 * An output slower by e % takes (1 + e/100) as long: 36 e seconds more an hour of what it should have done. Pitch falls
 * by 1200 log2(1 + e/100) cents (a cent: the 1200th part of an octave, A. J. Ellis).
 *
 * @example 0.1 %: 3.6 seconds an hour, 1 mm in a meter, 1.73 cents
 */
export function tellEffects(errorPercent: number, isTravel: boolean): WantedReport['effects'] {
  if (Math.abs(errorPercent) < nothing) return [];
  const factor = 1 + errorPercent / 100;
  const isSlow = errorPercent > 0;
  const seconds = 36 * errorPercent;
  const clock = {
    kind: 'seconds-an-hour',
    value: seconds,
    words: `${tell(Math.abs(seconds))} seconds an hour ${isSlow ? 'slow' : 'fast'}`,
  } as const;
  if (isTravel) {
    const off = -errorPercent;
    const words = `where it should move 100 mm, the bar moves ${tell(Math.abs(off))} mm ${off < 0 ? 'less' : 'more'}`;
    return [{ kind: 'travel-mm', value: off, words }];
  }
  const perMeter = 1000 * (1 / factor - 1);
  const cents = -1200 * Math.log2(factor);
  return [
    clock,
    {
      kind: 'travel-mm',
      value: perMeter,
      words: `paper, tape or a belt that it draws moves ${tell(Math.abs(perMeter))} mm ${
        isSlow ? 'less' : 'more'
      } than a meter in the time of one`,
    },
    {
      kind: 'cents',
      value: cents,
      words: `sound comes out ${tell(Math.abs(cents))} cents ${isSlow ? 'flat' : 'sharp'} (100 cents are a semitone)`,
    },
  ];
}

/** Below this, percent: rounding, not an error. */
const nothing = 1e-9;

function tell(value: number): string {
  return String(Number(value.toPrecision(3)));
}
