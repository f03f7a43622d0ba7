import { lostCount } from '../../gear-library/mesh-priors.ts';
import { buildSpace } from '../readings/hypothesis-space.ts';
import type { CountChance } from '../readings/weigh-counts.ts';
import type { WeighedPart } from '../readings/weigh-space.ts';
import { type WeighedWheel, weighWheel } from '../readings/weigh-wheel.ts';
import type { WheelEvidence } from '../readings/wheel-evidence.ts';
import type { PitchLabels } from './pitch-labels.ts';

/** Labels that the mates allow, each with the counts that the distances allow. */
export type Support = ReadonlyMap<number, ReadonlySet<number>>;

/** Counts of a wheel that nobody counted, all ratios alike; weights sum to 1. */
export function listLostCounts(): CountChance[] {
  const { least, greatest } = lostCount;
  const counts = Array.from({ length: greatest - least + 1 }, (_, i) => least + i);
  const total = counts.reduce((sum, teeth) => sum + 1 / teeth, 0);
  return counts.map((teeth) => ({ teeth, weight: 1 / teeth / total, slip: false }));
}

/**
 * A wheel with little or nothing measured, weighed only where its mates allow: all that lies elsewhere would cost
 * much and say nothing. Logs stay comparable, so the weights are absolute.
 */
export function weighInferred(
  evidence: WheelEvidence,
  counts: readonly CountChance[],
  support: Support,
  labels: PitchLabels,
): WeighedWheel {
  const space = { ...buildSpace(evidence), counts };
  const parts: WeighedPart[] = [];
  let first: WeighedWheel | undefined;
  for (const count of counts) {
    const allowed = [...support].flatMap(([label, teeth]) =>
      teeth.has(count.teeth) ? [labels.describe(label)] : [],
    );
    if (allowed.length === 0) continue;
    const listed = new Set(allowed.map((one) => `${one.system} ${one.size}`));
    const free = allowed.filter((one) => one.isFree).map((one) => one.module);
    const angles = new Set(allowed.map((one) => one.pressureAngleDeg));
    const weighed = weighWheel(evidence, {
      ...space,
      counts: [count],
      pitches: space.pitches.filter((pitch) =>
        pitch.system === 'free'
          ? free.some((module) => Math.abs(Math.log(module / pitch.module)) < cellReach)
          : listed.has(`${pitch.system} ${pitch.size}`),
      ),
      racks: space.racks.filter((rack) => angles.has(rack.pressureAngleDeg)),
    });
    parts.push(...weighed.parts);
    first ??= weighed;
  }
  const whole = first ?? weighWheel(evidence, { ...space, counts: [] });
  return { ...whole, space, parts };
}

/** Relative: two of a cell's deviations and a bit. */
const cellReach = 0.02;
