import type { Job, SubstituteRow, Wheel } from '../../index.ts';
import { editWheel, type JobReading } from '../state/edit-job.ts';

/** Readings of the place a gear stands in: they hold whatever stands there. */
const ofThePlace: readonly (JobReading['of'] | undefined)[] = ['shaft', 'center-distance'];

/**
 * The job with a substitute in its wheel's place: the wheel is what the row says, whole and sound. What was measured on
 * the old piece, and what was wrong with it, is kept under `replaced`; the shaft and the distances of the posts stay.
 */
export function acceptRow(job: Job, accept: SubstituteRow['accept']): Job {
  return accept.reduce(
    (one, { wheelId, spec }) => editWheel(one, wheelId, (wheel) => replace(wheel, spec)),
    job,
  );
}

function replace(wheel: Wheel, spec: SubstituteRow['accept'][number]['spec']): Wheel {
  const {
    readings = [],
    damage,
    state,
    spec: before,
    missing,
    tipWearMm,
    runoutMm,
    leftOut: _,
    ...rest
  } = wheel;
  const old = { state, damage, spec: before, missing, tipWearMm, runoutMm };
  const isOfPlace = (reading: JobReading): boolean => ofThePlace.includes(reading.of);
  return {
    ...rest,
    state: 'sound',
    spec,
    readings: readings.filter(isOfPlace),
    replaced: {
      ...Object.fromEntries(Object.entries(old).filter(([, value]) => value !== undefined)),
      readings: readings.filter((reading) => !isOfPlace(reading)),
      // What stood there before that is not forgotten either.
      ...(rest.replaced === undefined ? {} : { replaced: rest.replaced }),
    },
  };
}
