/**
 * What small machines hold, as weights: where an answer starts before the first reading. Every figure here is a
 * judgment of ours, from what the trade says it finds; none is a published statistic. Each says its reason. They
 * are modest on purpose: two honest readings outweigh them.
 */

import type { RackKey } from './basic-racks.ts';
import type { PitchSystem } from './pitch-series.ts';

const judgment = 'common practice, no published source';

export interface Weighted {
  readonly weight: number;
  readonly reason: string;
  readonly source: string;
}

/** How often a system occurs, by where the machine was made. `free`: a module that no series lists. */
export const systemWeights: readonly (Weighted & {
  readonly made: 'metric-land' | 'inch-land' | 'unknown';
  readonly system: PitchSystem | 'free';
})[] = [
  {
    made: 'unknown',
    system: 'module',
    weight: 0.67,
    reason: 'most small machines to be found are metric',
    source: judgment,
  },
  {
    made: 'unknown',
    system: 'diametral-pitch',
    weight: 0.29,
    reason: 'inch machines and hobby parts',
    source: judgment,
  },
  {
    made: 'unknown',
    system: 'circular-pitch',
    weight: 0.01,
    reason: 'rare on small wheels',
    source: judgment,
  },
  { made: 'unknown', system: 'free', weight: 0.03, reason: 'moulds cut to fit a distance', source: judgment },
  { made: 'metric-land', system: 'module', weight: 0.87, reason: 'metric drawings', source: judgment },
  {
    made: 'metric-land',
    system: 'diametral-pitch',
    weight: 0.09,
    reason: 'bought-in inch parts, licensed designs',
    source: judgment,
  },
  { made: 'metric-land', system: 'circular-pitch', weight: 0.005, reason: 'rare', source: judgment },
  {
    made: 'metric-land',
    system: 'free',
    weight: 0.035,
    reason: 'moulds cut to fit a distance',
    source: judgment,
  },
  {
    made: 'inch-land',
    system: 'module',
    weight: 0.3,
    reason: 'metric modules in imported sub-assemblies',
    source: judgment,
  },
  { made: 'inch-land', system: 'diametral-pitch', weight: 0.65, reason: 'inch drawings', source: judgment },
  { made: 'inch-land', system: 'circular-pitch', weight: 0.02, reason: 'old stock', source: judgment },
  {
    made: 'inch-land',
    system: 'free',
    weight: 0.03,
    reason: 'moulds cut to fit a distance',
    source: judgment,
  },
];

const common = 'usual in small machines';
const seen = 'seen now and then';
const rare = 'listed, rarely met in small machines';

/** Share of a size within its system; sizes not named here get `rareSize`. */
export const sizeWeights: readonly (Weighted & { readonly system: PitchSystem; readonly size: number })[] = [
  ...(
    [
      [0.2, 0.02, seen],
      [0.25, 0.02, seen],
      [0.3, 0.06, common],
      [0.35, 0.012, seen],
      [0.4, 0.11, common],
      [0.45, 0.012, seen],
      [0.5, 0.22, common],
      [0.55, 0.01, seen],
      [0.6, 0.1, common],
      [0.65, 0.008, seen],
      [0.7, 0.04, seen],
      [0.75, 0.025, seen],
      [0.8, 0.1, common],
      [0.9, 0.012, seen],
      [1, 0.12, common],
      [1.25, 0.03, seen],
      [1.5, 0.04, seen],
      [2, 0.025, seen],
    ] as const
  ).map(([size, weight, reason]) => ({ system: 'module', size, weight, reason, source: judgment }) as const),
  ...(
    [
      [16, 0.03, seen],
      [20, 0.06, seen],
      [24, 0.1, common],
      [32, 0.2, common],
      [40, 0.03, seen],
      [48, 0.23, common],
      [64, 0.18, common],
      [72, 0.04, seen],
      [80, 0.03, seen],
      [96, 0.04, seen],
      [120, 0.015, seen],
    ] as const
  ).map(
    ([size, weight, reason]) =>
      ({ system: 'diametral-pitch', size, weight, reason, source: judgment }) as const,
  ),
];

export const rareSize: Weighted = { weight: 0.003, reason: rare, source: judgment };

/** A free module lies anywhere between these, all ratios alike. */
export const freeModule = {
  least: 0.15,
  greatest: 4,
  reason: 'from watch-like to kitchen machines',
  source: judgment,
};

/** Share of a pressure angle, degrees, by system; `before` 1960 the old angle leads in inch systems. */
export const angleWeights: readonly (Weighted & {
  readonly systems: readonly (PitchSystem | 'free')[];
  readonly pressureAngleDeg: number;
  readonly weightBefore1960: number;
})[] = [
  {
    systems: ['module'],
    pressureAngleDeg: 20,
    weight: 0.92,
    weightBefore1960: 0.835,
    reason: 'ISO 53',
    source: judgment,
  },
  {
    systems: ['module'],
    pressureAngleDeg: 14.5,
    weight: 0.02,
    weightBefore1960: 0.06,
    reason: 'inch habit on metric sizes',
    source: judgment,
  },
  {
    systems: ['module'],
    pressureAngleDeg: 15,
    weight: 0.02,
    weightBefore1960: 0.07,
    reason: 'older metric practice',
    source: judgment,
  },
  {
    systems: ['module'],
    pressureAngleDeg: 17.5,
    weight: 0.01,
    weightBefore1960: 0.01,
    reason: rare,
    source: judgment,
  },
  {
    systems: ['module'],
    pressureAngleDeg: 22.5,
    weight: 0.005,
    weightBefore1960: 0.005,
    reason: rare,
    source: judgment,
  },
  {
    systems: ['module'],
    pressureAngleDeg: 25,
    weight: 0.015,
    weightBefore1960: 0.01,
    reason: 'strong pinions',
    source: judgment,
  },
  {
    systems: ['module'],
    pressureAngleDeg: 30,
    weight: 0.01,
    weightBefore1960: 0.01,
    reason: rare,
    source: judgment,
  },
  {
    systems: ['diametral-pitch', 'circular-pitch'],
    pressureAngleDeg: 20,
    weight: 0.66,
    weightBefore1960: 0.35,
    reason: 'the later inch standard',
    source: judgment,
  },
  {
    systems: ['diametral-pitch', 'circular-pitch'],
    pressureAngleDeg: 14.5,
    weight: 0.29,
    weightBefore1960: 0.6,
    reason: 'the older inch standard, long kept for spares',
    source: judgment,
  },
  {
    systems: ['diametral-pitch', 'circular-pitch'],
    pressureAngleDeg: 25,
    weight: 0.025,
    weightBefore1960: 0.02,
    reason: 'strong pinions',
    source: judgment,
  },
  {
    systems: ['diametral-pitch', 'circular-pitch'],
    pressureAngleDeg: 22.5,
    weight: 0.01,
    weightBefore1960: 0.01,
    reason: rare,
    source: judgment,
  },
  {
    systems: ['diametral-pitch', 'circular-pitch'],
    pressureAngleDeg: 17.5,
    weight: 0.005,
    weightBefore1960: 0.01,
    reason: rare,
    source: judgment,
  },
  {
    systems: ['diametral-pitch', 'circular-pitch'],
    pressureAngleDeg: 30,
    weight: 0.01,
    weightBefore1960: 0.01,
    reason: rare,
    source: judgment,
  },
  {
    systems: ['free'],
    pressureAngleDeg: 20,
    weight: 0.9,
    weightBefore1960: 0.85,
    reason: 'the common angle',
    source: judgment,
  },
  {
    systems: ['free'],
    pressureAngleDeg: 14.5,
    weight: 0.06,
    weightBefore1960: 0.11,
    reason: 'the older angle',
    source: judgment,
  },
  {
    systems: ['free'],
    pressureAngleDeg: 25,
    weight: 0.04,
    weightBefore1960: 0.04,
    reason: 'strong pinions',
    source: judgment,
  },
];

/** Share of a rack by system and angle. */
export const rackWeights: readonly (Weighted & {
  readonly systems: readonly (PitchSystem | 'free')[];
  readonly angles: 'twenty' | 'old' | 'other';
  readonly rack: RackKey;
})[] = [
  {
    systems: ['module'],
    angles: 'twenty',
    rack: 'full',
    weight: 0.84,
    reason: 'ISO 53 A, B and C differ at the root corner only',
    source: judgment,
  },
  {
    systems: ['module'],
    angles: 'twenty',
    rack: 'deep',
    weight: 0.06,
    reason: 'ISO 53 D: ground or shaved wheels',
    source: judgment,
  },
  {
    systems: ['module'],
    angles: 'twenty',
    rack: 'stub',
    weight: 0.04,
    reason: 'short strong teeth',
    source: judgment,
  },
  {
    systems: ['module'],
    angles: 'twenty',
    rack: 'tall',
    weight: 0.06,
    reason: 'fine mechanics',
    source: judgment,
  },
  {
    systems: ['diametral-pitch'],
    angles: 'twenty',
    rack: 'fineInch',
    weight: 0.72,
    reason: 'from 20 DP on the fine-pitch rack is the rule',
    source: judgment,
  },
  {
    systems: ['diametral-pitch'],
    angles: 'twenty',
    rack: 'full',
    weight: 0.22,
    reason: 'cut with a metric-like rack',
    source: judgment,
  },
  {
    systems: ['diametral-pitch'],
    angles: 'twenty',
    rack: 'stub',
    weight: 0.06,
    reason: 'short strong teeth',
    source: judgment,
  },
  {
    systems: ['diametral-pitch', 'circular-pitch', 'module', 'free'],
    angles: 'old',
    rack: 'oldFull',
    weight: 0.7,
    reason: 'the depth that came with 14.5°',
    source: judgment,
  },
  {
    systems: ['diametral-pitch', 'module'],
    angles: 'old',
    rack: 'fineInch',
    weight: 0.3,
    reason: 'later fine-pitch wheels',
    source: judgment,
  },
  {
    systems: ['circular-pitch', 'free'],
    angles: 'old',
    rack: 'full',
    weight: 0.3,
    reason: 'later cutters',
    source: judgment,
  },
  {
    systems: ['circular-pitch', 'free'],
    angles: 'twenty',
    rack: 'full',
    weight: 1,
    reason: 'the common depth',
    source: judgment,
  },
  {
    systems: ['module', 'diametral-pitch', 'circular-pitch', 'free'],
    angles: 'other',
    rack: 'full',
    weight: 1,
    reason: 'the common depth',
    source: judgment,
  },
];
