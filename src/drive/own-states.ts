import { buildSpace } from '../readings/hypothesis-space.ts';
import { listMeasuredLengths } from '../readings/measured-length.ts';
import type { CountChance } from '../readings/weigh-counts.ts';
import { type WeighedWheel, weighWheel } from '../readings/weigh-wheel.ts';
import type { WheelEvidence } from '../readings/wheel-evidence.ts';
import type { PitchLabels } from './pitch-labels.ts';
import { listToothStates, type ToothState } from './tooth-states.ts';
import { listLostCounts } from './weigh-inferred.ts';

/** A wheel of the drive as the joint takes it: its evidence without mates, and a spec where that alone is known. */
export interface DriveWheel {
  readonly evidence: WheelEvidence;
  readonly spec?: {
    readonly teeth: number;
    readonly module: number;
    readonly pressureAngle: number;
    readonly profileShift: number;
  };
}

/** What is known of a wheel before its mates speak. */
export type OwnStates =
  | { readonly of: 'measured'; readonly weighed: WeighedWheel; readonly states: readonly ToothState[] }
  | { readonly of: 'spec'; readonly states: readonly ToothState[] }
  /** Nothing of its teeth but the count, if that */
  | { readonly of: 'bare'; readonly counts: readonly CountChance[]; readonly isCounted: boolean }
  /** Something of its teeth, but not the count */
  | { readonly of: 'fragment'; readonly counts: readonly CountChance[] };

/** What a wheel's own readings, or its spec where there are none, make of it. */
export function findOwnStates({ evidence, spec }: DriveWheel, labels: PitchLabels): OwnStates {
  const hasTeeth = listMeasuredLengths(evidence).length > 0 || evidence.readings.some(isRolled);
  const space = buildSpace(evidence);
  if (hasTeeth && space.counts.length > 0) {
    const weighed = weighWheel(evidence, space);
    return { of: 'measured', weighed, states: listToothStates(weighed, labels) };
  }
  if (!hasTeeth && spec) return { of: 'spec', states: listSpecStates(spec, space, labels) };
  if (hasTeeth) return { of: 'fragment', counts: listLostCounts() };
  return space.counts.length > 0
    ? { of: 'bare', counts: space.counts, isCounted: true }
    : { of: 'bare', counts: listLostCounts(), isCounted: false };
}

function isRolled(reading: WheelEvidence['readings'][number]): boolean {
  return reading.of === 'hand-roll' && reading.spec.moduleMm !== undefined;
}

/** A wheel that only its spec tells of: the sizes that lie at its module, at its angle. */
function listSpecStates(
  spec: NonNullable<DriveWheel['spec']>,
  space: ReturnType<typeof buildSpace>,
  labels: PitchLabels,
): ToothState[] {
  const angles = [...new Set(space.racks.map((rack) => rack.pressureAngleDeg))];
  const deg = (spec.pressureAngle * 180) / Math.PI;
  const angle = angles.reduce((best, one) => (Math.abs(one - deg) < Math.abs(best - deg) ? one : best));
  const state = { teeth: spec.teeth, mean: spec.profileShift, variance: specShiftSpread ** 2, part: -1 };
  const listed = space.pitches.filter(
    (pitch) => pitch.system !== 'free' && Math.abs(pitch.module / spec.module - 1) < specRounding,
  );
  const free = { system: 'free' as const, size: spec.module, module: spec.module, logWeight: 0, spread: 0 };
  return (listed.length > 0 ? listed : [free]).map((pitch) => ({
    ...state,
    label: labels.find(pitch, angle, spec.module),
    weight: 1 / Math.max(1, listed.length),
  }));
}

/** A shift in a spec is good to two decimals. */
const specShiftSpread = 0.02;
/** A module in a spec may be rounded to three digits. */
const specRounding = 0.001;
