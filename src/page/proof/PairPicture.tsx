import { type ReactNode, useId, useMemo } from 'react';
import type { PairDrawing } from '../../index.ts';
import { tracePoints } from '../drawing/trace-path.ts';

/**
 * The pair enlarged at its tightest spot, in a circle of `radius` px about (cx, cy). Each wheel is hatched its own way, as
 * parts that lie side by side are (ISO 128-50): where they would stand in each other, the hatching crosses.
 */
export function PairPicture(props: {
  readonly pair: PairDrawing;
  readonly cx: number;
  readonly cy: number;
  readonly radius: number;
  readonly pxPerMm: number;
}): ReactNode {
  const { pair, cx, cy, radius, pxPerMm: s } = props;
  const id = useId();
  const { x, y } = pair.spot;
  const sides = [pair.driver, pair.driven];
  const paths = useMemo(
    () =>
      [pair.driver, pair.driven].map(({ outline }) => `${tracePoints(outline, 0, outline.length / 2 - 1)}Z`),
    [pair],
  );
  return (
    <g>
      <defs>
        <clipPath id={`${id}-round`}>
          <circle cx={cx} cy={cy} r={radius} />
        </clipPath>
        {[45, -45].map((angle, k) => (
          <pattern
            key={angle}
            id={`${id}-hatch-${k}`}
            width="10"
            height="10"
            patternUnits="userSpaceOnUse"
            patternTransform={`rotate(${angle})`}
          >
            <path className="line-thin" d="M0 0V10" />
          </pattern>
        ))}
      </defs>
      <g clipPath={`url(#${id}-round)`}>
        {sides.map((side, k) => {
          const place = `translate(${cx - x * s} ${cy + y * s}) scale(${s} ${-s}) translate(${side.x} 0) rotate(${(side.turned * 180) / Math.PI}) translate(${side.moved} 0)`;
          return (
            <g key={side.wheelId}>
              {/* Hatching keeps its width and slant whatever the scale: the shape clips it. */}
              <clipPath id={`${id}-shape-${k}`}>
                <path d={paths[k]} transform={place} />
              </clipPath>
              <rect
                x={cx - radius}
                y={cy - radius}
                width={2 * radius}
                height={2 * radius}
                fill={`url(#${id}-hatch-${k})`}
                clipPath={`url(#${id}-shape-${k})`}
                opacity="0.6"
              />
              <path className="line-known" d={paths[k]} transform={place} />
            </g>
          );
        })}
        {sides.map((side) =>
          side.isRack ? null : (
            <circle
              key={side.wheelId}
              className="line-axis"
              cx={cx + (side.x - x) * s}
              cy={cy + y * s}
              r={side.pitchRadius * s}
            />
          ),
        )}
        <path className="line-axis" d={`M${cx - radius} ${cy + y * s}H${cx + radius}`} />
      </g>
      <circle className="line-thin" cx={cx} cy={cy} r={radius} />
      {pair.binds && (
        <circle
          className="line-hand"
          cx={cx + (pair.binds.x - x) * s}
          cy={cy - (pair.binds.y - y) * s}
          r="12"
        />
      )}
    </g>
  );
}
