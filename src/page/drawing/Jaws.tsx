import type { ReactNode } from 'react';
import { shapeJaw } from './jaw-shapes.ts';
import type { JawPlace } from './place-jaws.ts';

export interface JawsProps {
  readonly place: JawPlace;
  /** Between the faces now, mm: wider than what is measured until a length is typed */
  readonly opening: number;
  readonly moduleMm: number;
  readonly tipRadius: number;
  readonly pxPerMm: number;
}

/** A pair of caliper jaws, mm, y up, in axes turned along the direction of measuring. */
export function Jaws({ place, opening, moduleMm, tipRadius, pxPerMm }: JawsProps): ReactNode {
  const px = 1 / pxPerMm;
  const shape = shapeJaw(place, moduleMm, tipRadius, px);
  const turn = `rotate(${(place.angle * 180) / Math.PI})`;
  return (
    <g transform={turn}>
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
      {[1, -1].map((side) => (
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
