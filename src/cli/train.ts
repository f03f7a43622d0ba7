import {
  Fail,
  type FindTrainsOptions,
  type FoundTrain,
  findTrains,
  type TrainAnswer,
  type TrainProgress,
} from '../index.ts';
import type { CommandOutput } from './command-output.ts';
import { reportTrains, tellCount, tellShare } from './report-trains.ts';
import { wrapText } from './wrap-text.ts';

export interface TrainOptions {
  readonly ratio: string;
  readonly pairs: string;
  readonly teeth: string;
  readonly top?: string;
  readonly tolerance?: string;
  readonly reverted?: boolean;
  readonly hunting?: boolean;
  readonly idlers?: boolean;
  readonly seconds?: string;
}

/** So long a search goes on where nothing else is said. */
export const defaultSeconds = 30;

/**
 * The verb `train`: the best trains for a ratio. Says on standard error how large a long search is and how far it has
 * come; when its time is up, or at Ctrl-C, it answers with the best so far. The answer is no where no train is found.
 */
export async function trainCommand(
  { tolerance, seconds, ...rest }: TrainOptions,
  printError: (text: string) => void,
): Promise<CommandOutput> {
  const limit = readSeconds(seconds ?? String(defaultSeconds));
  const options: FindTrainsOptions = {
    ...rest,
    ...(tolerance === undefined ? {} : { tolerancePercent: tolerance }),
  };
  const answer = await runSearch(findTrains(options), limit, printError);
  const { proven, trains, visited, space } = answer;
  return {
    json: { proven, trains, visited, space },
    lines: reportTrains(answer, options, proven ? findBesides(options, trains[0]) : {}),
    notes: proven ? [] : [`${tellShare(answer.searched)} was searched: this is the best so far. ${narrow}`],
    exitCode: trains.length > 0 ? 0 : 1,
  };
}

/** Goes through a search until it ends, its time is up or Ctrl-C comes, and tells how it goes where that takes long. */
async function runSearch(
  search: ReturnType<typeof findTrains>,
  limit: number,
  printError: (text: string) => void,
): Promise<TrainAnswer> {
  const start = Date.now();
  let isStopped = false;
  const stop = (): void => {
    isStopped = true;
  };
  process.once('SIGINT', stop);
  try {
    let told = start;
    let rested = start;
    let next = search.next();
    if (!next.done) tellSize(next.value, limit, printError);
    while (!next.done) {
      const now = Date.now();
      if (now - rested > restEvery) {
        // A signal is heard only between two turns of the event loop.
        await new Promise((resolve) => setImmediate(resolve));
        rested = now;
      }
      if (now - told > tellEvery) {
        printError(
          `${tellShare(next.value.searched)} searched after ${Math.round((now - start) / 1000)} s\n`,
        );
        told = now;
      }
      next = search.next(isStopped || now - start > 1000 * limit ? 'stop' : undefined);
    }
    return next.value;
  } finally {
    process.removeListener('SIGINT', stop);
  }
}

const restEvery = 100;
const tellEvery = 5000;

function tellSize({ space, work }: TrainProgress, limit: number, printError: (text: string) => void): void {
  if (work < longWork) return;
  const hope =
    work < hopelessWork
      ? 'To search them all may take minutes.'
      : 'To search them all is not possible in sensible time.';
  const text = `There are ${tellCount(space)} such trains. ${hope} After ${limit} seconds, or at Ctrl-C, you get the best so far. ${narrow}`;
  printError(`${wrapText(text).join('\n')}\n`);
}

const narrow =
  'Fewer pairs, a narrower range or a list after --teeth make the search shorter; --seconds gives it more time.';

// Four pairs of 12 to 120 teeth are 12 million steps and take a second or two; five are 1.4 billion at most.
const longWork = 100_000_000;
// A quarter of an hour and more.
const hopelessWork = 30_000_000_000;

/** What else is worth saying: a train of fewer pairs that does as well, and the nearest where none is near enough. */
function findBesides(
  { tolerancePercent, ...options }: FindTrainsOptions,
  lead: FoundTrain | undefined,
): { readonly shorter?: FoundTrain; readonly nearest?: FoundTrain } {
  const pairs = Number(options.pairs);
  if (!lead) {
    if (tolerancePercent === undefined) return {};
    const [nearest] = finish(findTrains({ ...options, top: 1 }));
    return nearest ? { nearest } : {};
  }
  if (pairs === 1) return {};
  const [shorter] = finish(findTrains({ ...options, pairs: pairs - 1, top: 1 }));
  const missOf = ({ errorRelative }: FoundTrain): number => Math.abs(Math.log1p(errorRelative));
  return shorter && missOf(shorter) <= missOf(lead) * (1 + 1e-12) ? { shorter } : {};
}

/** A search no larger than the one that was just finished, to its end. */
function finish(search: ReturnType<typeof findTrains>): readonly FoundTrain[] {
  let next = search.next();
  while (!next.done) next = search.next();
  return next.value.trains;
}

function readSeconds(typed: string): number {
  const seconds = /^\d{1,6}(?:[.,]\d+)?$/.test(typed.trim()) ? Number(typed.replace(',', '.')) : 0;
  if (seconds > 0) return seconds;
  throw new Fail(
    'bad-value',
    'seconds',
    `${typed.slice(0, 40)} is no time in seconds`,
    `Give a number above 0, or leave --seconds out for ${defaultSeconds}.`,
    { typed },
  );
}
