import { stackPart } from '../solid/part-stack.ts';
import type { WheelForm } from '../solid/wheel-form.ts';

/** A part's length along its axis, mm: teeth, hubs, flanges and all. Throws the Fails of `stackPart`. */
export function findPartLength(form: WheelForm): number {
  if (form.spec.kind === 'rack') return form.faceWidth;
  const { walls } = stackPart(form);
  const low = walls.reduce((least, wall) => Math.min(least, wall.low), Number.POSITIVE_INFINITY);
  return walls.reduce((most, wall) => Math.max(most, wall.high), low) - low;
}
