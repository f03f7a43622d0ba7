import { checkWanted } from '../drive/check-wanted.ts';
import type { DriveModel } from '../drive/drive-model.ts';
import { findEnds } from '../drive/find-ends.ts';
import { toNumber } from '../numeric/rational.ts';
import type { SpeedEffect } from './need.ts';
import { findOutput } from './output-speed.ts';

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
  const outputWith = (teeth: number): number | undefined => {
    const wheels = model.wheels.map((wheel) => (wheel.id === wheelId ? { ...wheel, teeth } : wheel));
    const output = findOutput({ ...model, wheels });
    return output && toNumber(output.turns) * output.step;
  };
  const before = outputWith(teethNow);
  return (teeth) => {
    const found = known.get(teeth);
    if (found !== undefined) return found;
    const effect = compare(model, before, teeth === teethNow ? before : outputWith(teeth));
    known.set(teeth, effect);
    return effect;
  };
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
