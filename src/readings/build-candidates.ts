import type { PitchSystem } from '../../gear-library/pitch-series.ts';
import { findBasePitch } from '../involute/base-pitch.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { findTipLand, referenceToothThickness } from '../involute/tooth-thickness.ts';
import type { HypothesisSpace } from './hypothesis-space.ts';
import type { MeasuredLength } from './measured-length.ts';
import { causeMoments, type SettledPart } from './settle-parts.ts';

/** One thing the wheel may be: a system, size, angle and count, racks and unknowns summed out. */
export interface Candidate {
  readonly system: PitchSystem | 'free';
  readonly size: number;
  readonly moduleMm: number;
  readonly pressureAngleDeg: number;
  readonly teeth: number;
  readonly probability: number;
  /** The most probable rack at mean shift and thinning, as made. */
  readonly spec: GearSpec;
  readonly rackName: string;
  /** Standard deviations of what the readings settle. */
  readonly uncertainty: {
    readonly moduleMm: number;
    readonly profileShift: number;
    readonly thinningMm: number;
    readonly helixAngleDeg: number;
  };
  /** Mean tip loss on the radius, mm: wear, rounding or a maker's shortening. */
  readonly tipLossMm: number;
  readonly derived: {
    readonly referenceDiameterMm: number | null;
    readonly baseDiameterMm: number | null;
    readonly tipDiameterMm: number | null;
    readonly rootDiameterMm: number | null;
    readonly basePitchMm: number;
    readonly toothThicknessMm: number;
    readonly tipLandMm: number | null;
  };
  readonly residuals: readonly Residual[];
}

export interface Residual {
  readonly reading: number;
  readonly of: string;
  readonly read: number;
  readonly expected: number;
  readonly unit: 'mm';
  readonly sigmas: number;
}

/** The candidates that the settled parts belong to, most probable first. */
export function buildCandidates(
  space: HypothesisSpace,
  lengths: readonly MeasuredLength[],
  parts: readonly SettledPart[],
): Candidate[] {
  const groups = new Map<number, SettledPart[]>();
  for (const part of parts) {
    const group = groups.get(part.candidate);
    if (group) group.push(part);
    else groups.set(part.candidate, [part]);
  }
  return [...groups.values()]
    .map((group) => buildCandidate(space, lengths, group))
    .sort((a, b) => b.probability - a.probability);
}

function buildCandidate(
  space: HypothesisSpace,
  lengths: readonly MeasuredLength[],
  group: readonly SettledPart[],
): Candidate {
  const probability = group.reduce((sum, part) => sum + part.probability, 0);
  const lead = findLeadingRack(group);
  const { pitch, tooth } = lead;
  // The named rack's own shift: averaged over its parts, for another rack explains the same tip with another shift.
  const same = group.filter((part) => part.tooth.rack.rack.key === tooth.rack.rack.key);
  const scale = averageMoments(same, (part) => {
    const spread = Math.hypot(part.pitch.spread, space.scaleSpread);
    const cause = causeMoments(part, 'scale');
    // Of a free module the cell's share of the scale is the module's own.
    const own = part.pitch.system === 'free' ? 1 : 0;
    return {
      mean: part.pitch.module * (1 + own * spread * cause.mean),
      variance: own * (part.pitch.module * spread) ** 2 * cause.variance,
    };
  });
  const shift = averageMoments(same, (part) => {
    const cause = causeMoments(part, 'shift');
    const { mean, spread } = part.tooth.shift;
    return { mean: mean + spread * cause.mean, variance: spread ** 2 * cause.variance };
  });
  const thinned = averageMoments(same, (part) => {
    const cause = causeMoments(part, 'thinning');
    const { mean, spread } = space.thinning;
    return { mean: mean + spread * cause.mean, variance: spread ** 2 * cause.variance };
  });
  const loss = averageMoments(same, (part) => {
    const cause = causeMoments(part, 'tipLoss');
    const { mean, spread } = part.tipLoss;
    return { mean: mean + spread * cause.mean, variance: spread ** 2 * cause.variance };
  });
  const helix = averageMoments(same, (part) => {
    const cause = causeMoments(part, 'helix');
    return {
      mean: part.tooth.tooth.helixAngle + part.tooth.helixSpread * cause.mean,
      variance: part.tooth.helixSpread ** 2 * cause.variance,
    };
  });
  const module = pitch.system === 'free' ? scale.mean : pitch.module;
  const { addendum, dedendum, extraDedendum, rootRadius } = tooth.rack.rack;
  const spec: GearSpec = {
    kind: space.wheel.kind,
    teeth: tooth.count.teeth,
    module,
    pressureAngle: tooth.rack.pressureAngle,
    helixAngle: helix.mean,
    profileShift: space.wheel.kind === 'rack' ? 0 : shift.mean,
    addendum,
    dedendum: dedendum + extraDedendum / module,
    rootRadius,
    thinning: Math.max(0, thinned.mean) * module,
    tipDiameter: null,
  };
  return {
    system: pitch.system,
    size: pitch.system === 'free' ? module : pitch.size,
    moduleMm: module,
    pressureAngleDeg: tooth.rack.pressureAngleDeg,
    teeth: tooth.count.teeth,
    probability,
    spec,
    rackName: tooth.rack.rack.name,
    uncertainty: {
      moduleMm: scale.deviation,
      profileShift: space.wheel.kind === 'rack' ? 0 : shift.deviation,
      thinningMm: thinned.deviation * module,
      helixAngleDeg: (helix.deviation * 180) / Math.PI,
    },
    tipLossMm: Math.max(0, loss.mean) * module,
    derived: derive(spec),
    residuals: lengths.map((length, i): Residual => {
      const expected =
        group.reduce((sum, part) => sum + part.probability * part.expected[i], 0) / probability;
      return {
        reading: length.index,
        of: length.of,
        read: length.value,
        expected,
        unit: 'mm',
        sigmas: (length.value - expected) / Math.hypot(Math.sqrt(length.noise), length.zeroDeviation),
      };
    }),
  };
}

function derive(spec: GearSpec): Candidate['derived'] {
  const shared = {
    basePitchMm: findBasePitch(spec),
    toothThicknessMm: referenceToothThickness(spec),
  };
  if (spec.kind === 'rack') {
    return {
      ...shared,
      referenceDiameterMm: null,
      baseDiameterMm: null,
      tipDiameterMm: null,
      rootDiameterMm: null,
      tipLandMm: null,
    };
  }
  const { reference, base, tip, root } = findDiameters(spec);
  return {
    ...shared,
    referenceDiameterMm: reference,
    baseDiameterMm: base,
    tipDiameterMm: tip,
    rootDiameterMm: root,
    tipLandMm: tip > base ? findTipLand(spec) : null,
  };
}

/** A part of the most probable rack (and, of a free module, the most probable cell). */
function findLeadingRack(group: readonly SettledPart[]): SettledPart {
  const totals = new Map<string, number>();
  for (const part of group) {
    const key = part.tooth.rack.rack.key;
    totals.set(key, (totals.get(key) ?? 0) + part.probability);
  }
  const [leading] = [...totals].reduce((best, entry) => (entry[1] > best[1] ? entry : best));
  return group
    .filter((part) => part.tooth.rack.rack.key === leading)
    .reduce((best, part) => (part.probability > best.probability ? part : best));
}

function averageMoments(
  parts: readonly SettledPart[],
  momentsOf: (part: SettledPart) => { mean: number; variance: number },
): { mean: number; deviation: number } {
  let total = 0;
  let mean = 0;
  for (const part of parts) {
    total += part.probability;
    mean += part.probability * momentsOf(part).mean;
  }
  mean /= total;
  // About the mean, not by difference of squares: that leaves a spread of 1e-8 where there is none.
  let square = 0;
  for (const part of parts) {
    const moments = momentsOf(part);
    square += part.probability * (moments.variance + (moments.mean - mean) ** 2);
  }
  return { mean, deviation: Math.sqrt(square / total) };
}
