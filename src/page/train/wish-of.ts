import type { Wanted } from '../state/edit-train.ts';

/** The terms in which a person may know what should come out. */
export type WishTerm = 'ratio' | 'rpm' | 'seconds' | 'speed' | 'travel';

export const wishTerms: readonly {
  readonly term: WishTerm;
  readonly words: string;
  readonly needsMotor: boolean;
}[] = [
  { term: 'rpm', words: 'turns of the output a minute', needsMotor: true },
  { term: 'seconds', words: 'seconds for one turn of the output', needsMotor: true },
  { term: 'speed', words: 'speed of paper, tape or belt on a roller', needsMotor: true },
  { term: 'ratio', words: 'turns of the motor for one of the output', needsMotor: false },
];

/** A bar goes along: its own term stands alone. */
export const barTerms: typeof wishTerms = [
  { term: 'travel', words: 'mm that the bar moves for one turn of the motor', needsMotor: false },
];

/**
 * What a person typed as the job file keeps it. `rpm` is the motor's; a roller's surface runs at π d n, so a speed v mm/s
 * is 60 v/(π d) turns a minute. Undefined where the term needs the motor's speed and there is none.
 */
export function wishOf(
  term: WishTerm,
  value: number,
  rpm: number | undefined,
  rollerMm: number | undefined,
): Pick<Wanted, 'ratio' | 'travelMmPerTurn'> | undefined {
  if (term === 'ratio') return { ratio: value };
  if (term === 'travel') return { travelMmPerTurn: value };
  if (rpm === undefined) return undefined;
  if (term === 'rpm') return { ratio: rpm / value };
  if (term === 'seconds') return { ratio: (rpm * value) / 60 };
  return rollerMm === undefined ? undefined : { ratio: (rpm * Math.PI * rollerMm) / (60 * value) };
}
