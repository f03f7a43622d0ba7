import { Fail } from './fail.ts';
import { parseCounts } from './trains/parse-counts.ts';
import { parseRatio } from './trains/parse-ratio.ts';
import { searchTrains, type TrainAnswer, type TrainProgress } from './trains/search-trains.ts';

/** What may be typed or given: numbers as text too, so that what was typed is read in one place. */
export interface FindTrainsOptions {
  /** Input speed over output speed: 12.5, '12,5', '12/7', '1:6.931' */
  readonly ratio: string | number;
  /** Meshing pairs, 1 to 8 */
  readonly pairs: string | number;
  /** Counts that a wheel may have: '12-120', '20,24,30-40', or a list */
  readonly teeth: string | readonly number[];
  /** How many trains; 20 where left out */
  readonly top?: string | number;
  /** Farthest that the ratio may be off, either way, percent, below 100 */
  readonly tolerancePercent?: string | number;
  /** All pairs on the same two axes at one module: z1 + z2 = z3 + z4 */
  readonly reverted?: boolean;
  /** No pair shares a factor */
  readonly hunting?: boolean;
  /** Lets a count stand on both sides */
  readonly idlers?: boolean;
}

/**
 * Searches the best trains of so many pairs for a ratio, exactly. The search runs as it is asked for, stride by stride:
 * the first says how large it is, each next one how far it is, and answering `'stop'` gives the best so far.
 *
 * Throws Fail `bad-value` at once, before the search, for a value that makes no sense.
 */
export function findTrains(
  options: FindTrainsOptions,
): Generator<TrainProgress, TrainAnswer, 'stop' | undefined> {
  const tolerance = options.tolerancePercent;
  return searchTrains({
    wanted: parseRatio(String(options.ratio), 'ratio'),
    pairs: readWhole(options.pairs, 'pairs', mostPairs),
    counts: parseCounts(typeof options.teeth === 'string' ? options.teeth : options.teeth.join(','), 'teeth'),
    top: readWhole(options.top ?? usualTop, 'top', mostTrains),
    ...(tolerance === undefined ? {} : { tolerance: readPercent(tolerance) / 100 }),
    isReverted: options.reverted === true,
    isHunting: options.hunting === true,
    allowsIdlers: options.idlers === true,
  });
}

// Trains with more pairs are built of two shorter ones.
const mostPairs = 8;

const usualTop = 20;

// A list that nobody reads, and each train costs time.
const mostTrains = 1000;

function readWhole(typed: string | number, field: string, most: number): number {
  const text = String(typed).trim();
  const value = /^\d{1,9}$/.test(text) ? Number(text) : 0;
  if (value >= 1 && value <= most) return value;
  throw new Fail(
    'bad-value',
    field,
    `${text === '' ? 'nothing' : text.slice(0, 40)} is not a whole number from 1 to ${most}`,
    `Give a whole number from 1 to ${most}.`,
    { typed },
  );
}

function readPercent(typed: string | number): number {
  const text = String(typed).trim().replace(/\s*%$/, '').replace(',', '.');
  const value = /^(\d+\.?\d*|\.\d+)(e-?\d{1,2})?$/i.test(text) ? Number(text) : Number.NaN;
  if (value >= 0 && value < 100) return value;
  throw new Fail(
    'bad-value',
    'tolerance',
    `${String(typed).slice(0, 40)} is no percentage from 0 to below 100`,
    'Give how far off the ratio may be, in percent, such as 0.1.',
    { typed },
  );
}
