import type { JawPlace } from './place-jaws.ts';

/** Where the jaw on the measuring direction's side touches: x, y in the view's own axes, mm. */
export function touchPoint({
  angle,
  middle,
  opening,
  across,
  pin,
  shape,
}: JawPlace): readonly [number, number] {
  const along = pin ? pin.along + (shape === 'pins' ? pin.radius : -pin.radius) : middle + opening / 2;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return [along * c - across * s, along * s + across * c];
}
