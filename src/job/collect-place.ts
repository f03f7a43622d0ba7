import { takingsOf } from '../readings/measured-length.ts';
import type { LengthReading } from '../readings/wheel-evidence.ts';
import type { NeedPlace } from '../stock/need.ts';
import { collectEvidence } from './collect-evidence.ts';
import type { Job, Wheel } from './job-schema.ts';

/**
 * The place that a wheel has, as its spec says it and else as it was measured: shaft, bore, width, length, and whether it
 * is one piece with another wheel. The bore of a split wheel is not trusted.
 */
export function collectPlace(job: Job, wheel: Wheel): NeedPlace {
  const isSplit = (wheel.damage ?? []).some(({ kind }) => kind === 'split');
  const bore = wheel.spec?.bore;
  // A grooved bore is no shape that stock has: it counts as one that nobody knows.
  const shape = bore?.shape === 'double-d' ? 'd' : bore?.shape;
  const specBore = bore?.diameterMm ?? bore?.acrossFlatsMm;
  const bored = specBore ?? (isSplit ? undefined : (findLength(job, wheel, 'bore') ?? findPlugged(wheel)));
  return {
    shaft: findLength(job, wheel, 'shaft'),
    bore:
      shape === 'none'
        ? { shape, diameter: 0 }
        : bored === undefined || shape === 'spline' || shape === 'knurl'
          ? undefined
          : { shape: shape ?? 'round', diameter: bored },
    faceWidth: wheel.spec?.faceWidthMm ?? findLength(job, wheel, 'face-width'),
    overallLength: findLength(job, wheel, 'overall-length'),
    isJoined:
      wheel.part !== undefined &&
      (job.wheels ?? []).some(({ id, part }) => id !== wheel.id && part === wheel.part),
  };
}

/** The mean of the takings, what the closed jaws show taken off. */
function findLength(job: Job, wheel: Wheel, of: LengthReading['of']): number | undefined {
  const evidence = collectEvidence(job, wheel);
  for (const reading of evidence.readings) {
    if (reading.of !== of) continue;
    const takings = takingsOf(reading as LengthReading);
    if (takings === undefined) continue;
    const all = typeof takings === 'number' ? [takings] : takings;
    const mean = all.reduce((sum, value) => sum + value, 0) / all.length;
    return Math.round((mean - (job.kit?.zeroMm ?? 0)) * 1e4) / 1e4;
  }
  return undefined;
}

/** A bore found by drills: between what goes and what stops. */
function findPlugged(wheel: Wheel): number | undefined {
  for (const reading of wheel.readings ?? []) {
    if (reading.of !== 'bore' || reading.goesMm === undefined) continue;
    return reading.stopsMm === undefined ? reading.goesMm : (reading.goesMm + reading.stopsMm) / 2;
  }
  return undefined;
}
