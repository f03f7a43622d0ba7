import type { ReactNode } from 'react';
import type { DrawnGear } from '../../index.ts';
import { strengthOf } from './FrontView.tsx';
import { shapeJaw } from './jaw-shapes.ts';
import type { SetJaws } from './set-jaws.ts';

export interface JawsProps {
  readonly jaws: SetJaws;
  readonly lead: DrawnGear;
  readonly pxPerMm: number;
}

const sides = [1, -1] as const;

/** A pair of caliper jaws, mm, y up, in axes turned along the direction of measuring. */
export function Jaws({ jaws, lead, pxPerMm }: JawsProps): ReactNode {
  const { place, opening, rivalPins } = jaws;
  const px = 1 / pxPerMm;
  const shapes = sides.map((side) => ({
    side,
    shape: shapeJaw(place, side, lead.moduleMm, lead.tipDiameterMm / 2, px),
  }));
  const turn = `rotate(${(place.angle * 180) / Math.PI})`;
  return (
    <g transform={turn}>
      {rivalPins.flatMap(({ gear, along, across }) =>
        [1, -1].map((side) => (
          <circle
            key={`${side} ${gear.candidate}`}
            className="line-rival"
            style={{ opacity: strengthOf(gear, lead) }}
            cx={side * along}
            cy={across}
            r={place.pin?.radius}
          />
        )),
      )}
      {place.pin &&
        [1, -1].map((side) => (
          <circle
            key={side}
            className="line-hand"
            cx={side * (place.pin?.along ?? 0)}
            cy={place.pin?.across}
            r={place.pin?.radius}
          />
        ))}
      {shapes.map(({ side, shape }) => (
        <g
          key={side}
          className="Jaws-jaw"
          style={{ transform: `translate(${place.middle + (side * opening) / 2}px, 0)` }}
        >
          <g transform={`scale(${shape.isInside ? -side : side} 1)`}>
            <path className="line-hand Jaws-body" d={shape.outline} />
            <path className="line-hand Jaws-hatch" d={shape.hatch} />
          </g>
        </g>
      ))}
    </g>
  );
}
