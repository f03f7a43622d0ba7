/** One thing that may have gone wrong with a typed value, and the value that was meant. */
export interface Repair {
  readonly kind: RepairKind;
  /** What was meant. */
  readonly value: number;
  /** log of the chance that a meant value comes out as the typed one this way, times |d meant / d typed|. */
  readonly logChance: number;
}

export type RepairKind = 'inch-for-mm' | 'radius-for-diameter' | 'swapped-digits' | 'lost-decimal';

/**
 * The values that a typed length may have stood for, one for each slip of unit, half, digit or decimal point.
 *
 * @param typed the value as typed, mm, positive
 * @param chances the chance of each kind
 * @param isDiameter whether half of it could have been written down
 * @example listRepairs(0.49, …) holds { kind: 'inch-for-mm', value: 12.446 }
 */
export function listRepairs(
  typed: number,
  chances: Readonly<Record<RepairKind, number>>,
  isDiameter: boolean,
): Repair[] {
  const repairs: Repair[] = [];
  const add = (kind: RepairKind, value: number, share: number, slope: number): void => {
    if (value > 0 && value !== typed) {
      repairs.push({ kind, value, logChance: Math.log(chances[kind] * share * slope) });
    }
  };
  add('inch-for-mm', typed * 25.4, 0.8, 25.4);
  add('inch-for-mm', typed / 25.4, 0.2, 1 / 25.4);
  if (isDiameter) add('radius-for-diameter', typed * 2, 1, 2);
  for (const power of [10, 100, 0.1, 0.01]) add('lost-decimal', typed * power, 0.25, power);
  const swaps = listDigitSwaps(typed);
  for (const value of swaps) add('swapped-digits', value, 1 / swaps.length, 1);
  return repairs;
}

/** The value with each pair of neighboring unlike digits exchanged, read to 0.01 at least. */
function listDigitSwaps(typed: number): number[] {
  const text = Number(typed.toFixed(3)).toString();
  const digits = text.includes('.') ? text.padEnd(text.indexOf('.') + 3, '0') : `${text}.00`;
  const found = new Set<number>();
  for (let i = 0; i + 1 < digits.length; i++) {
    const j = digits[i + 1] === '.' ? i + 2 : i + 1;
    if (digits[i] === '.' || j >= digits.length || digits[i] === digits[j]) continue;
    const swapped = `${digits.slice(0, i)}${digits[j]}${digits.slice(i + 1, j)}${digits[i]}${digits.slice(j + 1)}`;
    const value = Number(swapped);
    // An exchange in the last decimals moves the value less than it can be read to: no slip to find.
    if (Math.abs(value - typed) > 0.05) found.add(value);
  }
  return [...found];
}
