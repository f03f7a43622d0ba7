import { toNumber } from '../numeric/rational.ts';
import type { DriveModel, DriveWheel } from './drive-model.ts';
import type { DriveEnds } from './find-ends.ts';
import { shaftNode } from './list-relations.ts';
import { solveSpeeds } from './solve-speeds.ts';

/**
 * The count that one uncounted wheel would need for the wanted ratio, as it comes out: seldom whole where the wish is
 * rounded. Undefined without a ratio wished for, or where the ratio doesn't simply rise or fall with the count.
 *
 * @example 16/64, 16/64 and ?/60 for 48: 20
 */
export function findNeededCount(model: DriveModel, ends: DriveEnds, wheel: DriveWheel): number | undefined {
  const wished = model.wanted?.ratio;
  const { from, to } = ends;
  if (wished === undefined || from === undefined || to === undefined || wheel.kind === 'pulley')
    return undefined;
  const ratioWith = (teeth: number): number => {
    const wheels = model.wheels.map((one) => (one === wheel ? { ...one, teeth } : one));
    const speed = solveSpeeds({ ...model, wheels }, from).speeds.get(shaftNode(to));
    return speed ? Math.abs(1 / toNumber(speed.turns)) : Number.NaN;
  };
  const [one, two, four] = [1, 2, 4].map(ratioWith);
  const isLike = (quotient: number): boolean =>
    Math.abs(two / one / quotient - 1) < 1e-12 && Math.abs(four / two / quotient - 1) < 1e-12;
  if (isLike(2)) return wished / one;
  return isLike(0.5) ? one / wished : undefined;
}
