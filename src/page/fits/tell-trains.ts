import type { Job, SubstitutesReport, TrainRow, TrainsReport } from '../../index.ts';
import type { Certainty } from '../slip/Verdict.tsx';
import { nameWheel } from '../words/name-wheel.ts';
import { withNames } from '../words/with-names.ts';
import { asSentence } from './tell-fits.ts';

export interface TrainFitWords {
  readonly sentence: string;
  readonly certainty: Certainty;
  readonly word: string;
  readonly more: readonly string[];
}

/** The best that can be put on the posts as they are, and whether anything can beat it. */
export function tellTrains(report: SubstitutesReport, row: TrainRow | undefined, job: Job): TrainFitWords {
  const { trains } = report;
  const singles = report.wheels.filter((wheel) => wheel.rows.some((one) => one.fits));
  const more = [...(trains?.notes ?? []), ...report.notes].map((note) => asSentence(withNames(note, job)));
  if (!trains || !row) {
    if (singles.length === 0)
      return {
        sentence: 'Nothing here fits.',
        certainty: 'nothing-fits',
        word: 'nothing that was rolled turns',
        more,
      };
    const names = singles.map((wheel) => nameWheel(job, wheel.id)).join(', ');
    return {
      sentence: `One gear for another: something fits for ${names}.`,
      certainty: 'likely',
      word: 'gear by gear',
      more,
    };
  }
  const word = trains.proven
    ? `proven: the best of ${tellCount(trains.space)} on these posts`
    : `best so far, ${Math.floor(trains.searchedPercent)} % of ${tellCount(trains.space)} searched`;
  if (!row.fits) {
    const why = row.verdict === 'turns' ? `${tellError(row)} than wanted` : 'it does not run smoothly';
    return {
      sentence: `No train on these posts keeps the speed; the nearest: ${why}.`,
      certainty: 'nothing-fits',
      word,
      more,
    };
  }
  const gears = row.newParts === 1 ? '1 new gear keeps' : `${row.newParts} new gears keep`;
  const error = row.errorPercent === 0 ? 'exactly' : `within ${tellPercent(row.errorPercent)}`;
  return {
    sentence: `${gears} the speed ${error}, on the posts as they are.`,
    certainty: trains.proven ? 'certain' : 'likely',
    word,
    more,
  };
}

/** A train that is worth showing first: what fits, with the fewest new gears, then the nearest. */
export function chooseTrain(trains: TrainsReport | null): TrainRow | undefined {
  const fitting = (trains?.rows ?? []).filter((row) => row.fits);
  return (
    fitting.toSorted(
      (a, b) => a.newParts - b.newParts || Math.abs(a.errorPercent) - Math.abs(b.errorPercent),
    )[0] ?? trains?.rows[0]
  );
}

/** The counts that change, pair by pair: `16 : 64, 20 : 60`. */
export function nameTrain(row: TrainRow): string {
  return row.meshes.map((mesh) => `${mesh.driver.teeth} : ${mesh.driven.teeth}`).join(', ');
}

export function tellError({ errorPercent }: TrainRow): string {
  if (errorPercent === 0) return 'exact';
  return `${tellPercent(errorPercent)} ${errorPercent > 0 ? 'slower' : 'faster'}`;
}

function tellPercent(percent: number): string {
  return `${Number(Math.abs(percent).toPrecision(2))} %`;
}

export function tellTrainRuns({ verdict, meshes }: TrainRow): string {
  const least = Math.min(...meshes.map((mesh) => mesh.backlashMinMm));
  const word = verdict === 'turns' ? 'turns' : verdict === 'rough' ? 'runs rough' : 'jams';
  return verdict === 'jams' ? word : `${word}, ${least.toFixed(2)} mm of play`;
}

export function tellNew({ newParts, accept }: TrainRow, job: Job): string {
  const names = accept.map((one) => nameWheel(job, one.wheelId)).join('; ');
  return newParts === 0 ? 'no new gear' : `new: ${names}`;
}

/** How hard its made wheels are to make. */
export function tellFine({ fineness, meshes }: TrainRow): string {
  const isMade = meshes.some((mesh) => mesh.driver.from === 'made' || mesh.driven.from === 'made');
  if (!isMade) return 'nothing to make';
  return fineness <= 0 ? 'coarse enough to print' : 'finer than the usual printer likes';
}

function tellCount(count: number): string {
  return count < 1e6
    ? String(count).replace(/\B(?=(\d{3})+$)/g, ' ')
    : `${Number(count.toPrecision(2)).toExponential().replace('e+', ' × 10^')}`;
}
