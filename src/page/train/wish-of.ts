import type { Wanted } from '../state/edit-train.ts';

/** The terms in which a person may know what should come out. */
export type WishTerm = 'ratio' | 'rpm' | 'seconds' | 'speed' | 'travel';

interface TermWords {
  readonly term: WishTerm;
  readonly words: string;
  /** Only the motor's speed makes a ratio of it */
  readonly needsMotor: boolean;
}

export const wishTerms: readonly TermWords[] = [
  { term: 'rpm', words: 'turns of the output a minute', needsMotor: true },
  { term: 'seconds', words: 'seconds for one turn or one stroke', needsMotor: true },
  { term: 'speed', words: 'speed of paper, tape or belt on a roller', needsMotor: true },
  { term: 'ratio', words: 'turns of the motor for one of the output', needsMotor: false },
];

/** A bar goes along: its own term stands alone. */
export const barTerms: readonly TermWords[] = [
  { term: 'travel', words: 'mm that the bar moves for one turn of the motor', needsMotor: false },
];

/**
 * What a person typed, in their own terms, as the job file keeps it: what follows from it is worked out anew each time.
 * Undefined where a speed has no roller that it is the speed of.
 */
export function wishOf(term: WishTerm, value: number, rollerMm: number | undefined): Wanted | undefined {
  switch (term) {
    case 'ratio':
      return { ratio: value };
    case 'travel':
      return { travelMmPerTurn: value };
    case 'rpm':
      return { turnsPerMinute: value };
    case 'seconds':
      return { secondsForStroke: value };
    case 'speed':
      return rollerMm === undefined ? undefined : { beltSpeedMmPerS: value, rollerDiameterMm: rollerMm };
  }
}

/** In which terms what is wanted was said; undefined where nothing was. */
export function termOf(wanted: Wanted | undefined): WishTerm | undefined {
  if (wanted?.ratio !== undefined) return 'ratio';
  if (wanted?.travelMmPerTurn !== undefined) return 'travel';
  if (wanted?.turnsPerMinute !== undefined) return 'rpm';
  if (wanted?.beltSpeedMmPerS !== undefined) return 'speed';
  return wanted?.secondsForStroke === undefined ? undefined : 'seconds';
}
