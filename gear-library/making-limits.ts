/**
 * How far a made gear may stray and still run, for each way of making it. No standard grades printed gears or very
 * small ones, so these are judgments from what the processes reach and what a mesh forgives; a machine shop is asked
 * for ISO 286 and ISO 2768 instead where they have a figure.
 */
export interface MakingLimits {
  /** Key of processes.ts */
  readonly process: string;
  /** How much thinner a tooth may be at the reference circle than its spec, mm of arc; thicker is never allowed */
  readonly thinningMm: number;
  /** Across the tips, mm on the diameter */
  readonly outsideMm: readonly [number, number];
  /** Round bores, mm on the diameter, as drawn; a machine shop's are H7 up to 50 mm */
  readonly boreMm: readonly [number, number];
  /** Once round, teeth against bore, mm */
  readonly runoutMm: number;
  /** Class of ISO 2768-1 for widths, hubs and lengths */
  readonly general: 'f' | 'm';
  readonly reason: string;
  readonly source: string;
}

const practice = 'common practice, no published source';
const flanks =
  'a study of filament printed gears found a mean profile error of 0.067 mm a flank; the rest: common practice, no published source';

export const makingLimits: readonly MakingLimits[] = [
  {
    process: 'filament-0.4',
    thinningMm: 0.13,
    outsideMm: [-0.2, 0.05],
    boreMm: [0, 0.1],
    runoutMm: 0.1,
    general: 'm',
    reason:
      'both flanks stray by two thirds of a tenth; a tooth that is too thick jams, one that is thin only rattles',
    source: flanks,
  },
  {
    process: 'filament-0.25',
    thinningMm: 0.1,
    outsideMm: [-0.15, 0.05],
    boreMm: [0, 0.08],
    runoutMm: 0.08,
    general: 'm',
    reason: 'as with the wider nozzle, a little less',
    source: practice,
  },
  {
    process: 'filament-0.6',
    thinningMm: 0.18,
    outsideMm: [-0.3, 0.05],
    boreMm: [0, 0.15],
    runoutMm: 0.12,
    general: 'm',
    reason: 'wider lines, and the coarser teeth that they want forgive more',
    source: practice,
  },
  {
    process: 'resin',
    thinningMm: 0.05,
    outsideMm: [-0.1, 0.03],
    boreMm: [0, 0.05],
    runoutMm: 0.05,
    general: 'm',
    reason: 'a pixel a flank; fine teeth forgive no more',
    source: practice,
  },
  {
    process: 'powder-bed',
    thinningMm: 0.15,
    outsideMm: [-0.2, 0.05],
    boreMm: [-0.05, 0.1],
    runoutMm: 0.1,
    general: 'm',
    reason: 'grain and the spot of the laser, both flanks',
    source: practice,
  },
  {
    process: 'machine-shop',
    thinningMm: 0.03,
    outsideMm: [-0.09, 0],
    boreMm: [0, 0.03],
    runoutMm: 0.03,
    general: 'f',
    reason:
      'a hobbed gear of ordinary care; the figures for outside and bore stand where ISO 286 holds none here, over 50 mm',
    source: practice,
  },
  {
    process: 'laser-cut',
    thinningMm: 0.15,
    outsideMm: [-0.2, 0.05],
    boreMm: [-0.05, 0.1],
    runoutMm: 0.1,
    general: 'm',
    reason: 'the width of the cut varies, and its walls lean',
    source: practice,
  },
];

/** Fine teeth have less to give than a process strays: no tooth may lose more, in modules. */
export const leastTooth = {
  mostThinningModules: 0.15,
  reason: 'a tenth of the thickness of a tooth, and two to three times the usual backlash of a mesh',
  source: practice,
} as const;

/** Permissible deviations for sizes without a tolerance of their own, mm either way: over the start, up to the end. */
export interface GeneralLimit {
  readonly overMm: number;
  readonly upToMm: number;
  readonly f: number;
  readonly m: number;
  readonly source: string;
}

const general = 'ISO 2768-1:1989 table 1, linear dimensions: value from memory';

export const generalLimits: readonly GeneralLimit[] = [
  { overMm: 0, upToMm: 3, f: 0.05, m: 0.1, source: `${general}; the table begins at 0.5 mm` },
  { overMm: 3, upToMm: 6, f: 0.05, m: 0.1, source: general },
  { overMm: 6, upToMm: 30, f: 0.1, m: 0.2, source: general },
  { overMm: 30, upToMm: 120, f: 0.15, m: 0.3, source: general },
  { overMm: 120, upToMm: 400, f: 0.2, m: 0.5, source: general },
];

/** What a machine shop is asked for, and from where on ISO 1328-1 says anything. */
export const flankGrade = {
  grade: 9,
  leastModuleMm: 0.5,
  leastReferenceMm: 5,
  reason: 'what ordinary hobbing reaches; small slow drives want no better',
  source: 'scope: ISO 1328-1, from memory; the grade: common practice, no published source',
} as const;
