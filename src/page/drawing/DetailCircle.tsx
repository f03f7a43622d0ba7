import { type ReactNode, useId, useMemo } from 'react';
import type { WheelDrawing } from '../../index.ts';
import type { DrawingScale } from './choose-scale.ts';
import { strengthOf } from './FrontView.tsx';
import { Jaws } from './Jaws.tsx';
import type { SetJaws } from './set-jaws.ts';
import { touchPoint } from './touch-point.ts';
import { tracePoints, traceRack } from './trace-path.ts';

export interface DetailCircleProps {
  readonly drawing: WheelDrawing;
  readonly kind: 'external' | 'internal' | 'rack';
  readonly jaws: SetJaws;
  readonly scale: DrawingScale;
  readonly at: { readonly x: number; readonly y: number; readonly radius: number };
}

/** The place where a jaw touches, enlarged: there one sees the rivals part. CSS pixels, y down outside the circle. */
export function DetailCircle({ drawing, kind, jaws, scale, at }: DetailCircleProps): ReactNode {
  const clip = useId();
  const point = touchPoint(jaws.place);
  const s = scale.pxPerMm;
  const lead = drawing.gears[0];
  const paths = useMemo(
    () =>
      drawing.gears.map((gear) =>
        kind === 'rack'
          ? traceRack(gear).path
          : `${tracePoints(gear.outline, 0, gear.outline.length / 2 - 1)}Z`,
      ),
    [drawing, kind],
  );
  return (
    <g transform={`translate(${at.x} ${at.y})`}>
      <clipPath id={clip}>
        <circle r={at.radius} />
      </clipPath>
      <circle className="DetailCircle-ground" r={at.radius} />
      <g clipPath={`url(#${CSS.escape(clip)})`}>
        <g transform={`scale(${s} ${-s}) translate(${-point[0]} ${-point[1]})`}>
          {drawing.gears.map((gear, i) => (
            <path
              key={paths[i].slice(0, 40)}
              className={i === 0 ? 'line-known' : 'line-rival'}
              style={{ opacity: i === 0 ? 1 : strengthOf(gear, lead) }}
              d={paths[i]}
            />
          ))}
          <Jaws jaws={jaws} lead={lead} pxPerMm={s} />
        </g>
      </g>
      <circle className="line-thin" r={at.radius} />
    </g>
  );
}
