import { describe, expect, test } from 'vitest';
import * as basicRacks from '../../gear-library/basic-racks.ts';
import * as cautions from '../../gear-library/cautions.ts';
import * as driveLimits from '../../gear-library/drive-limits.ts';
import * as fits from '../../gear-library/fits.ts';
import * as lasting from '../../gear-library/lasting.ts';
import * as makers from '../../gear-library/makers.ts';
import * as makingLimits from '../../gear-library/making-limits.ts';
import * as makingSettings from '../../gear-library/making-settings.ts';
import * as materials from '../../gear-library/materials.ts';
import * as meshPriors from '../../gear-library/mesh-priors.ts';
import * as pitchSeries from '../../gear-library/pitch-series.ts';
import * as printErrors from '../../gear-library/print-errors.ts';
import * as priors from '../../gear-library/priors.ts';
import * as processes from '../../gear-library/processes.ts';
import * as uncertainty from '../../gear-library/reading-uncertainty.ts';
import * as reworkLimits from '../../gear-library/rework-limits.ts';
import * as rollFeel from '../../gear-library/roll-feel.ts';
import * as rollingLimits from '../../gear-library/rolling-limits.ts';
import * as slips from '../../gear-library/slips.ts';
import * as stockRanges from '../../gear-library/stock-ranges.ts';
import * as strengthLimits from '../../gear-library/strength-limits.ts';
import * as variation from '../../gear-library/tooth-variation.ts';
import * as wormLocking from '../../gear-library/worm-locking.ts';

const modules = {
  basicRacks,
  makingLimits,
  makingSettings,
  meshPriors,
  pitchSeries,
  printErrors,
  priors,
  processes,
  uncertainty,
  rollFeel,
  rollingLimits,
  slips,
  variation,
  driveLimits,
  wormLocking,
  reworkLimits,
  stockRanges,
  materials,
  cautions,
  lasting,
  makers,
  fits,
  strengthLimits,
};

/** Every object in the library that holds a figure, with where it stands; a table within an entry shares its source. */
function listEntries(
  value: unknown,
  path: string,
  source?: unknown,
): [string, { readonly source?: unknown }][] {
  if (Array.isArray(value)) return value.flatMap((one, i) => listEntries(one, `${path}[${i}]`, source));
  if (typeof value !== 'object' || value === null) return [];
  const record = { source, ...(value as Record<string, unknown>) };
  const own = Object.values(record).some((one) => typeof one === 'number');
  const nested = Object.entries(record).flatMap(([key, one]) =>
    listEntries(one, `${path}.${key}`, record.source),
  );
  return own ? [[path, record], ...nested] : nested;
}

describe('the library', () => {
  test('has a source on every entry that holds a figure', () => {
    const entries = Object.entries(modules).flatMap(([name, module]) => listEntries({ ...module }, name));
    expect(entries.length).toBeGreaterThan(150);
    for (const [path, entry] of entries) {
      // Groups of entries stand for themselves when each member has a source of its own.
      expect(typeof entry.source === 'string' && entry.source.length > 5, `source of ${path}`).toBe(true);
    }
  });

  test('has weights that sum to one', () => {
    const sum = (list: readonly { readonly weight: number }[]): number =>
      list.reduce((total, one) => total + one.weight, 0);
    for (const made of ['unknown', 'metric-land', 'inch-land'] as const) {
      expect(sum(priors.systemWeights.filter((one) => one.made === made))).toBeCloseTo(1, 9);
    }
    for (const system of ['module', 'diametral-pitch', 'circular-pitch', 'free'] as const) {
      const angles = priors.angleWeights.filter((one) => one.systems.includes(system));
      expect(sum(angles), system).toBeCloseTo(1, 9);
      expect(
        angles.reduce((total, one) => total + one.weightBefore1960, 0),
        system,
      ).toBeCloseTo(1, 9);
      for (const group of ['twenty', 'old', 'other'] as const) {
        const racks = priors.rackWeights.filter(
          (one) => one.systems.includes(system) && one.angles === group,
        );
        expect(sum(racks), `${system} ${group}`).toBeCloseTo(1, 9);
      }
    }
    for (const list of [
      variation.shiftOfWheels,
      variation.shiftOfPinions,
      variation.tipLoss,
      variation.jawHabits,
      variation.mateShift,
    ]) {
      expect(sum(list)).toBeCloseTo(1, 9);
    }
    expect(variation.tipLoss.reduce((total, one) => total + one.weightWorn, 0)).toBeCloseTo(1, 9);
    for (const row of rollFeel.rollFeel) expect(row.smooth + row.bumps + row.jams).toBeCloseTo(1, 9);
  });

  test('lists each size once in its system, with the module it stands for', () => {
    const keys = pitchSeries.pitchSizes.map((one) => `${one.system} ${one.size}`);
    expect(new Set(keys).size).toBe(keys.length);
    const find = (system: string, size: number) =>
      pitchSeries.pitchSizes.find((one) => one.system === system && one.size === size)?.module;
    expect(find('diametral-pitch', 48)).toBeCloseTo(0.529167, 6);
    expect(find('module', 0.5)).toBe(0.5);
    // 1/16 inch along the circle (own arithmetic).
    expect(find('circular-pitch', 1 / 16)).toBeCloseTo(0.505317, 5);
  });
});
