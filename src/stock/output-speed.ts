import type { DriveModel } from '../drive/drive-model.ts';
import { findEnds } from '../drive/find-ends.ts';
import { rackNode, shaftNode } from '../drive/list-relations.ts';
import { findRackStep } from '../drive/rack-travel.ts';
import { solveSpeeds } from '../drive/solve-speeds.ts';
import type { Rational } from '../numeric/rational.ts';

export interface Output {
  /** Turns of the output for one of the input, without sign; of a rack: teeth that pass */
  readonly turns: Rational;
  /** mm of travel a tooth; 1 where the output is a shaft */
  readonly step: number;
}

/** What comes out of a drive; undefined where it can't be said, or stands still. */
export function findOutput(model: DriveModel): Output | undefined {
  const ends = findEnds(model);
  const { speeds, contradictions } = solveSpeeds(model, ends.from);
  if (contradictions.length > 0) return undefined;
  const step = ends.rack ? findRackStep(model, ends.rack) : 1;
  const node = ends.rack ? rackNode(ends.rack.id) : ends.to === undefined ? undefined : shaftNode(ends.to);
  const turns = node === undefined ? undefined : speeds.get(node)?.turns;
  if (!turns || step === undefined || turns.num === 0n) return undefined;
  return { turns: turns.num < 0n ? { ...turns, num: -turns.num } : turns, step };
}
