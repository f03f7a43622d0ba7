import type { ReactNode } from 'react';
import { isOdd, type SketchSubject } from '../sketch-subject.ts';
import { Arrow } from './Arrow.tsx';
import { drawBox, drawCircle, type Point } from './draw-points.ts';
import { GearLine, rimRadius } from './GearLine.tsx';
import { JawsFromAbove } from './JawsFromAbove.tsx';
import { findPinRadius } from './rest-pin.ts';
import { type GearPlace, makeSketchGear } from './sketch-gear.ts';

/** Inside jaws in a ring with teeth inside: on the tips, in the bottoms, or between two pins. */
export function InsideSketch(props: {
  readonly subject: SketchSubject;
  readonly at: 'tips' | 'bottoms' | 'pins';
}): ReactNode {
  const { subject, at } = props;
  const gear = makeSketchGear(subject);
  const z = gear.teeth;
  const off = isOdd(subject) ? Math.PI / (2 * z) : 0;
  const scale = 84 / rimRadius(gear);
  const place: GearPlace = { x: 104, y: 100, scale, turn: off + (at === 'tips' ? 0 : Math.PI / z) };
  const pin = (0.26 * 2 * Math.PI * gear.tip) / z;
  const center = at === 'pins' ? findPinRadius(gear, pin) : 0;
  const radius = at === 'tips' ? gear.tip : at === 'bottoms' ? gear.root : center - pin;
  const onPin = at === 'pins' ? center : radius;
  const y = place.y - onPin * Math.sin(off) * scale;
  const edge = (at === 'pins' ? center * Math.cos(off) - pin : radius * Math.cos(off)) * scale;
  const thin = at === 'bottoms' ? 2.5 : 5;
  const deep = at === 'bottoms' ? 26 : 12;
  return (
    <>
      <GearLine gear={gear} place={place} />
      {at === 'pins' &&
        [1, -1].map((side) => {
          const middle: Point = [place.x + side * center * Math.cos(off) * scale, y];
          return (
            <path key={side} className="line-hand act-sketch-metal" d={drawCircle(middle, pin * scale)} />
          );
        })}
      {[1, -1].map((side) => (
        <path
          key={side}
          className="line-hand act-sketch-metal"
          d={drawBox(
            place.x + Math.min(side * edge, side * (edge - deep)),
            y - thin,
            place.x + Math.max(side * edge, side * (edge - deep)),
            y + thin,
          )}
        />
      ))}
      <Arrow from={[place.x - edge + deep + 4, y]} to={[place.x + edge - deep - 4, y]} both hand />
      <JawsFromAbove x={258} isInside />
    </>
  );
}
