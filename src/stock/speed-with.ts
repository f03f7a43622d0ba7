import { checkWanted } from '../drive/check-wanted.ts';
import type { DriveModel } from '../drive/drive-model.ts';
import { findEnds } from '../drive/find-ends.ts';
import { rackNode, shaftNode } from '../drive/list-relations.ts';
import { findRackStep } from '../drive/rack-travel.ts';
import { solveSpeeds } from '../drive/solve-speeds.ts';
import { toNumber } from '../numeric/rational.ts';
import type { SpeedEffect } from './need.ts';

/**
 * What another tooth count of one wheel does to the drive's output, worked out through the whole drive: an idler's does
 * nothing, a planet's goes by Willis. Null where the output's speed can't be said, before or after. Kept for counts
 * that were asked before.
 */
export function speedWith(
  model: DriveModel,
  wheelId: string,
  teethNow: number,
): (teeth: number) => SpeedEffect | null {
  const known = new Map<number, SpeedEffect | null>();
  const outputWith = (teeth: number): number | undefined =>
    findOutputSpeed({
      ...model,
      wheels: model.wheels.map((wheel) => (wheel.id === wheelId ? { ...wheel, teeth } : wheel)),
    });
  const before = outputWith(teethNow);
  return (teeth) => {
    const found = known.get(teeth);
    if (found !== undefined) return found;
    const effect = compare(model, before, teeth === teethNow ? before : outputWith(teeth));
    known.set(teeth, effect);
    return effect;
  };
}

/** Turns of the output for one of the input, without sign; of a rack its travel, mm. */
export function findOutputSpeed(model: DriveModel): number | undefined {
  const ends = findEnds(model);
  const { speeds, contradictions } = solveSpeeds(model, ends.from);
  if (contradictions.length > 0) return undefined;
  if (ends.rack) {
    const speed = speeds.get(rackNode(ends.rack.id));
    const step = findRackStep(model, ends.rack);
    return speed && step !== undefined ? Math.abs(toNumber(speed.turns)) * step : undefined;
  }
  const speed = ends.to === undefined ? undefined : speeds.get(shaftNode(ends.to));
  const turns = speed && Math.abs(toNumber(speed.turns));
  return turns === 0 ? undefined : turns;
}

function compare(
  model: DriveModel,
  before: number | undefined,
  after: number | undefined,
): SpeedEffect | null {
  if (before === undefined || after === undefined) return null;
  const isTravel = findEnds(model).rack !== undefined;
  const wanted = checkWanted(
    model.wanted,
    isTravel
      ? { ratio: null, travelMm: after, direction: null }
      : { ratio: { num: null, den: null, value: 1 / after }, travelMm: null, direction: null },
  );
  return {
    changePercent: (after / before - 1) * 100,
    errorPercent: wanted?.errorPercent ?? null,
    isWithin: wanted?.within ?? null,
  };
}
