import { type BasicRack, basicRacks } from '../../gear-library/basic-racks.ts';
import { type PitchSystem, pitchSizes } from '../../gear-library/pitch-series.ts';
import {
  angleWeights,
  freeModule,
  rackWeights,
  rareSize,
  sizeWeights,
  systemWeights,
} from '../../gear-library/priors.ts';
import type { Machine } from './wheel-evidence.ts';

/** One size that the wheel may have, with its weight before any reading. */
export interface PitchHypothesis {
  readonly system: PitchSystem | 'free';
  /** mm, teeth an inch, or inches; for free the module at the middle of its cell */
  readonly size: number;
  readonly module: number;
  readonly logWeight: number;
  /** Relative spread of the module: 0 for a listed size, a cell's for free. */
  readonly spread: number;
}

/** One angle and rack that the wheel may have, with its weight in each system. */
export interface RackHypothesis {
  readonly pressureAngleDeg: number;
  /** rad */
  readonly pressureAngle: number;
  readonly rack: BasicRack;
  readonly logWeight: Readonly<Record<PitchSystem | 'free', number>>;
}

/** Every size with its weight before any reading, smallest module first; weights sum to 1. */
export function listPitches(machine: Machine): PitchHypothesis[] {
  const made = machine.made ?? 'unknown';
  const share = (system: PitchSystem | 'free'): number =>
    systemWeights.find((entry) => entry.made === made && entry.system === system)?.weight ?? 0;
  const weightOf = (system: PitchSystem, size: number): number =>
    sizeWeights.find((entry) => entry.system === system && entry.size === size)?.weight ?? rareSize.weight;
  const totals = { module: 0, 'diametral-pitch': 0, 'circular-pitch': 0 };
  for (const { system, size } of pitchSizes) totals[system] += weightOf(system, size);
  const listed = pitchSizes.map(({ system, size, module }): PitchHypothesis => {
    const weight = (share(system) * weightOf(system, size)) / totals[system];
    return { system, size, module, logWeight: Math.log(weight), spread: 0 };
  });
  return [...listed, ...listFreeCells(share('free'))].sort((a, b) => a.module - b.module);
}

// Cells so narrow that their overlapping bells make a flat floor, yet the model stays linear in
// the module across one of them.
const cellStep = 0.015;
const cellSpread = 0.6 * cellStep;

function listFreeCells(share: number): PitchHypothesis[] {
  const count = Math.round(Math.log(freeModule.greatest / freeModule.least) / cellStep);
  const logWeight = Math.log(share / count);
  return Array.from({ length: count }, (_, i) => {
    const module = freeModule.least * Math.exp((i + 0.5) * cellStep);
    return { system: 'free' as const, size: module, module, logWeight, spread: cellSpread };
  });
}

/** Every pressure angle and rack with its weight in each system. */
export function listRacks(machine: Machine): RackHypothesis[] {
  const before1960 = machine.decade !== undefined && machine.decade < 1960;
  const systems = ['module', 'diametral-pitch', 'circular-pitch', 'free'] as const;
  const angles = [...new Set(angleWeights.map((entry) => entry.pressureAngleDeg))].sort((a, b) => a - b);
  return angles.flatMap((pressureAngleDeg) => {
    const group = pressureAngleDeg === 20 ? 'twenty' : pressureAngleDeg === 14.5 ? 'old' : 'other';
    return Object.values(basicRacks).flatMap((rack): RackHypothesis[] => {
      const logs = systems.map((system) => {
        const angle = angleWeights.find(
          (entry) => entry.systems.includes(system) && entry.pressureAngleDeg === pressureAngleDeg,
        );
        const depth = rackWeights.find(
          (entry) => entry.systems.includes(system) && entry.angles === group && entry.rack === rack.key,
        );
        if (!angle || !depth) return Number.NEGATIVE_INFINITY;
        return Math.log((before1960 ? angle.weightBefore1960 : angle.weight) * depth.weight);
      });
      if (logs.every((log) => log === Number.NEGATIVE_INFINITY)) return [];
      const [module, diametral, circular, free] = logs;
      return [
        {
          pressureAngleDeg,
          pressureAngle: (pressureAngleDeg * Math.PI) / 180,
          rack,
          logWeight: { module, 'diametral-pitch': diametral, 'circular-pitch': circular, free },
        },
      ];
    });
  });
}
