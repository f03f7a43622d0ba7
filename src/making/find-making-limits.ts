import {
  flankGrade,
  generalLimits,
  leastTooth,
  type MakingLimits,
  makingLimits,
} from '../../gear-library/making-limits.ts';
import type { Process } from '../../gear-library/processes.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { findFitLimits } from '../strength/find-fit-limits.ts';

/** How far sizes of one part may stray, mm from the nominal, and where each figure comes from. */
export interface PartLimits {
  /** How much thinner than its spec a tooth may be, arc at the reference circle */
  readonly thinning: number;
  readonly runout: number;
  readonly outside: (diameter: number) => Deviation;
  readonly bore: (diameter: number) => Deviation;
  /** Widths, hubs, lengths, flats */
  readonly general: (size: number) => Deviation;
  /** What is said of the flanks: a grade, or why there is none */
  readonly flanks: string;
}

export interface Deviation {
  readonly lower: number;
  readonly upper: number;
  /** The tolerance class, or `judgment` */
  readonly basis: string;
}

/**
 * The limits that a process's parts are made to: for a machine shop ISO 286 (bore H7, outside h11, both to 50 mm) and
 * ISO 2768-1, for all other ways judgments of `gear-library/making-limits.ts`. ISO 1328-1 is named for cut gears that
 * it covers and never stretched to smaller ones.
 */
export function findMakingLimits(process: Process, spec: GearSpec): PartLimits {
  const limits = makingLimits.find((one) => one.process === process.key);
  if (!limits) throw new Error(`no limits for ${process.key}`);
  const isShop = process.key === 'machine-shop';
  const judged = ([lower, upper]: readonly [number, number]): Deviation => ({
    lower,
    upper,
    basis: 'judgment',
  });
  const fitted = (size: number, fitClass: string, other: readonly [number, number]): Deviation => {
    if (!isShop || size > greatestFit) return judged(other);
    const { lower, upper } = findFitLimits(size, fitClass);
    return { lower: lower / 1000, upper: upper / 1000, basis: `ISO 286 ${fitClass}` };
  };
  return {
    thinning: Math.min(limits.thinningMm, leastTooth.mostThinningModules * spec.module),
    runout: limits.runoutMm,
    outside: (diameter) => fitted(diameter, 'h11', limits.outsideMm),
    bore: (diameter) => fitted(diameter, 'H7', limits.boreMm),
    general: (size) => findGeneral(size, limits),
    flanks: tellFlanks(spec, isShop),
  };
}

/** Sizes that the fits of gear-library reach, mm. */
const greatestFit = 50;

function findGeneral(size: number, { general }: MakingLimits): Deviation {
  const row = generalLimits.find(({ overMm, upToMm }) => size > overMm && size <= upToMm);
  // Past the table its widest row stands in, and says so.
  const width = (row ?? generalLimits[generalLimits.length - 1])[general];
  return { lower: -width, upper: width, basis: row ? `ISO 2768-${general}` : 'judgment' };
}

function tellFlanks(spec: GearSpec, isShop: boolean): string {
  const { grade, leastModuleMm, leastReferenceMm } = flankGrade;
  const isTooSmall =
    spec.module < leastModuleMm || (spec.kind !== 'rack' && findDiameters(spec).reference < leastReferenceMm);
  if (isTooSmall) {
    return `No grade: ISO 1328-1 does not cover a module below ${leastModuleMm} mm or a reference diameter below ${leastReferenceMm} mm. The span and the runout stand for it.`;
  }
  return isShop
    ? `ISO 1328-1, grade ${grade} or better (judgment)`
    : 'No grade asked: the span and the runout stand for it.';
}
