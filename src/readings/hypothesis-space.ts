import { helixUncertaintyDeg } from '../../gear-library/reading-uncertainty.ts';
import { tipLandKept } from '../../gear-library/tooth-variation.ts';
import type { MeasuredLength } from './measured-length.ts';
import { listPitches, listRacks, type PitchHypothesis, type RackHypothesis } from './pitch-prior.ts';
import { findScaleSpread, findThinning, listShifts, listTipLosses, type NormalPart } from './tooth-prior.ts';
import { type ResponseMode, respond, type UnitTooth } from './tooth-response.ts';
import { type CountChance, weighCounts } from './weigh-counts.ts';
import type { AngleReading, WheelEvidence } from './wheel-evidence.ts';

/** Everything that a wheel's hypotheses are made of, before any length is weighed. */
export interface HypothesisSpace {
  readonly wheel: WheelEvidence;
  readonly counts: readonly CountChance[];
  readonly pitches: readonly PitchHypothesis[];
  readonly racks: readonly RackHypothesis[];
  readonly tipLosses: readonly NormalPart[];
  readonly thinning: { readonly mean: number; readonly spread: number };
  readonly scaleSpread: number;
  readonly tipLandSpread: number;
  /** β as read at the tip with its spread, rad; undefined where nobody measured one: a spur wheel. */
  readonly helix: { readonly atTip: number; readonly spread: number } | undefined;
}

export function buildSpace(wheel: WheelEvidence): HypothesisSpace {
  const reading = wheel.readings.find((one): one is AngleReading => one.of === 'helix-angle');
  const slanted = reading !== undefined && reading.deg !== 0;
  return {
    wheel,
    counts: weighCounts(wheel.readings),
    pitches: listPitches(wheel.machine),
    racks: listRacks(wheel.machine),
    tipLosses: listTipLosses(wheel),
    thinning: findThinning(wheel),
    scaleSpread: findScaleSpread(wheel),
    tipLandSpread: tipLandKept.spread,
    helix: slanted
      ? {
          atTip: (reading.deg * Math.PI) / 180,
          spread: ((reading.uDeg ?? helixUncertaintyDeg.deg) * Math.PI) / 180,
        }
      : undefined,
  };
}

/** A count, a rack and a part of the shift prior: what fixes every response up to the module. */
export interface ToothHypothesis {
  readonly count: CountChance;
  readonly rack: RackHypothesis;
  readonly shift: NormalPart;
  readonly tooth: UnitTooth;
  /** Standard deviation of β, rad; 0 for a spur wheel */
  readonly helixSpread: number;
}

/** All toothings of a count and a rack, one for each part of the shift prior. */
export function listTeeth(
  space: HypothesisSpace,
  count: CountChance,
  rack: RackHypothesis,
): ToothHypothesis[] {
  const { wheel, helix } = space;
  const { addendum, dedendum, extraDedendum } = rack.rack;
  // tan β = tan β_a · d/d_a, and d/d_a = z/(z + 2 h_a cos β) to the accuracy that an inked helix has.
  const factor =
    helix === undefined || wheel.kind === 'rack'
      ? 1
      : count.teeth / (count.teeth + (wheel.kind === 'internal' ? -2 : 2) * addendum * Math.cos(helix.atTip));
  const helixAngle = helix === undefined ? 0 : Math.atan(Math.tan(helix.atTip) * factor);
  return listShifts(wheel.kind, count.teeth, rack.pressureAngle, helixAngle, addendum).map((shift) => ({
    count,
    rack,
    shift,
    helixSpread: helix === undefined ? 0 : helix.spread * factor,
    tooth: {
      kind: wheel.kind,
      teeth: count.teeth,
      pressureAngle: rack.pressureAngle,
      helixAngle,
      addendum,
      dedendum,
      extraDedendum,
      profileShift: shift.mean,
    },
  }));
}

/** Response modes with the slope by helix angle, which only helical wheels need. */
export function respondWithHelix(
  length: MeasuredLength,
  hypothesis: ToothHypothesis,
  module: number,
): readonly ResponseMode[] {
  const modes = respond(length, hypothesis.tooth, module);
  if (hypothesis.helixSpread === 0) return modes;
  const step = 1e-4;
  const turned = respond(
    length,
    { ...hypothesis.tooth, helixAngle: hypothesis.tooth.helixAngle + step },
    module,
  );
  return modes.map((one, i) => ({ ...one, byHelix: (turned[i].value - one.value) / step }));
}
