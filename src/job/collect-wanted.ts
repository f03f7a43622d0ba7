import { wantedTolerance } from '../../gear-library/mesh-priors.ts';
import type { WantedCounts } from '../drive/count-by-ratio.ts';
import { isCovered } from './collect-evidence.ts';
import { findWantedRatio } from './find-wanted-ratio.ts';
import type { Job, Wheel } from './job-schema.ts';

/** The ratio wanted and the wheels whose counts make it; undefined where no ratio or no plain way is known. */
export function collectWanted(job: Job): WantedCounts | undefined {
  const ratio = findWantedRatio(job);
  const from = job.wanted?.from ?? job.motor?.shaft;
  const to = job.wanted?.to;
  if (ratio === undefined || from === undefined || to === undefined) return undefined;
  const steps = findWay(job, from, to);
  const way = steps && multiply(job, steps);
  if (!way) return undefined;
  // A tolerance is what the machine may be off by at most: two deviations.
  const percent = Math.max(job.wanted?.tolerancePercent ?? wantedTolerance.percent, leastPercent);
  return { ratio, spread: percent / 200, ...way };
}

/** No count could be told apart more finely, and nothing may be divided by 0. */
const leastPercent = 0.02;

interface Step {
  readonly driver: string;
  readonly driven: string;
  readonly kind: 'teeth' | 'worm' | 'belt';
}

/** The way of meshes from shaft to shaft, fewest meshes first. */
function findWay(job: Job, from: string, to: string): readonly Step[] | undefined {
  const ends: { shaft: string; steps: readonly Step[] }[] = [{ shaft: from, steps: [] }];
  const seen = new Set([from]);
  for (const { shaft, steps } of ends) {
    if (shaft === to) return steps;
    for (const { driver, driven, kind, carrier } of job.meshes ?? []) {
      if (driver === undefined || driven === undefined || carrier !== undefined) continue;
      for (const [a, b] of [
        [driver, driven],
        [driven, driver],
      ]) {
        const next = shaftOf(job, b);
        if (shaftOf(job, a) !== shaft || seen.has(next)) continue;
        seen.add(next);
        ends.push({ shaft: next, steps: [...steps, { driver: a, driven: b, kind: kind ?? 'teeth' }] });
      }
    }
  }
  return undefined;
}

/** What a wheel turns with: its shaft, or that of the piece it is part of, or itself alone. */
function shaftOf(job: Job, id: string): string {
  const wheels = job.wheels ?? [];
  const wheel = wheels.find((one) => one.id === id);
  if (wheel?.shaft !== undefined) return wheel.shaft;
  if (wheel?.part === undefined) return id;
  return wheels.find((one) => one.part === wheel.part && one.shaft !== undefined)?.shaft ?? wheel.part;
}

function multiply(job: Job, steps: readonly Step[]): Pick<WantedCounts, 'exponents' | 'factor'> | undefined {
  const exponents = new Map<string, number>();
  let factor = 1;
  for (const { driver, driven, kind } of steps) {
    const wheels = [driver, driven].map((id) => job.wheels?.find((one) => one.id === id));
    if (kind === 'teeth' && wheels.every((wheel) => wheel && isCovered(wheel))) {
      exponents.set(driven, (exponents.get(driven) ?? 0) + 1);
      exponents.set(driver, (exponents.get(driver) ?? 0) - 1);
      continue;
    }
    const [from, to] = wheels.map((wheel) => sizeOf(wheel, kind));
    if (to === undefined || from === undefined) return undefined;
    factor *= to / from;
  }
  return { exponents, factor };
}

/** A pulley's diameter, else its teeth; a worm's starts; the teeth of a wheel whose kind is not worked out. */
function sizeOf(wheel: Wheel | undefined, kind: Step['kind']): number | undefined {
  if (kind === 'belt' && wheel?.diameterMm !== undefined) return wheel.diameterMm;
  const counted = wheel?.readings?.find((reading) => reading.of === 'teeth' && reading.count !== undefined);
  return (counted?.of === 'teeth' ? counted.count : undefined) ?? wheel?.spec?.teeth;
}
