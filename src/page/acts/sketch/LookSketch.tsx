import type { ReactNode } from 'react';
import { drawCircle, drawPoints } from './draw-points.ts';
import { GearLine } from './GearLine.tsx';
import { makeSketchGear, placeTeeth } from './sketch-gear.ts';

/** A gear under a lens; where it is broken, the teeth that are gone in the line of what isn't there. */
export function LookSketch({ isBroken }: { readonly isBroken: boolean }): ReactNode {
  const gear = makeSketchGear({ kind: 'external', teeth: 18, isSplit: false, isHelical: false });
  const place = { x: 140, y: 100, scale: 78 / gear.tip, turn: Math.PI / 3 };
  const gone = 3;
  return (
    <>
      {isBroken ? (
        <>
          <path className="line-known" d={drawPoints(placeTeeth(gear, place, 0, gear.teeth - gone))} />
          <path className="line-rival" d={drawPoints(placeTeeth(gear, place, -gone, gone))} />
          <path className="line-known" d={drawCircle([place.x, place.y], gear.bore * place.scale)} />
        </>
      ) : (
        <GearLine gear={gear} place={place} />
      )}
      <path className="line-hand" d={drawCircle([214, 82], 40)} />
      <path className="line-hand" d="M239 113L288 168L296 160L246 106" />
    </>
  );
}
