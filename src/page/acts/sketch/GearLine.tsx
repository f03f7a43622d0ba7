import type { ReactNode } from 'react';
import { breakPoints, drawCircle, drawPoints } from './draw-points.ts';
import { type GearPlace, placeTeeth, type SketchGear } from './sketch-gear.ts';

/** Below this pitch teeth drawn wide would run together, so they are drawn narrow. */
const finePitch = 6;

/** A whole gear from the front: its outline and, on an external one, its hole; an internal one gets its rim. */
export function GearLine(props: { readonly gear: SketchGear; readonly place: GearPlace }): ReactNode {
  const { gear, place } = props;
  const isInside = gear.tip < gear.root;
  const other = isInside ? rimRadius(gear) : gear.bore;
  return (
    <>
      <path className={lineFor(gear, place)} d={drawPoints(placeTeeth(gear, place), true)} />
      <path className="line-known" d={drawCircle([place.x, place.y], other * place.scale)} />
    </>
  );
}

/** A piece of a gear: `count` teeth from `first` on, ended by a freehand break line. */
export function GearPiece(props: {
  readonly gear: SketchGear;
  readonly place: GearPlace;
  readonly first: number;
  readonly count: number;
}): ReactNode {
  const { gear, place, first, count } = props;
  const run = placeTeeth(gear, place, first, count);
  const end = run[run.length - 1];
  // A ring's stock lies outside its teeth.
  const isInside = gear.tip < gear.root;
  const depth = isInside ? -34 : 34;
  const inward = ([x, y]: readonly [number, number]): readonly [number, number] => {
    const length = Math.hypot(place.x - x, place.y - y);
    const step = Math.min(depth, 0.6 * length) / length;
    return [x + step * (place.x - x), y + step * (place.y - y)];
  };
  const a = inward(end);
  const b = inward(run[0]);
  return (
    <>
      <path className={lineFor(gear, place)} d={drawPoints(run)} />
      <path
        className="line-thin"
        d={drawPoints([
          ...breakPoints(end, a),
          ...breakPoints(a, b).slice(1),
          ...breakPoints(b, run[0]).slice(1),
        ])}
      />
    </>
  );
}

/** The outside of an internal gear's ring, mm: as much stock behind the teeth as one is deep and a half. */
export function rimRadius(gear: SketchGear): number {
  return gear.root + 1.5 * (gear.root - gear.tip);
}

function lineFor(gear: SketchGear, place: GearPlace): string {
  const pitch = (2 * Math.PI * Math.max(gear.tip, gear.root) * place.scale) / gear.teeth;
  return pitch < finePitch ? 'line-thin' : 'line-known';
}
