import type { ReactNode } from 'react';
import { breakPoints, drawBox, drawPoints, hatchBox } from './draw-points.ts';

/** Two gears cut through: in one a drill's shank goes into the hole, on the other the next thicker one stops. */
export function BoreSketch(): ReactNode {
  return (
    <>
      <Cut x={84} shank={11} end={166} />
      <Cut x={236} shank={15} end={92} />
      <text className="act-sketch-word" x={84} y={192}>
        goes
      </text>
      <text className="act-sketch-word" x={236} y={192}>
        stops
      </text>
    </>
  );
}

function Cut({
  x,
  shank,
  end,
}: {
  readonly x: number;
  readonly shank: number;
  readonly end: number;
}): ReactNode {
  const bore = 12;
  const top = 92;
  const bottom = 152;
  return (
    <>
      {[-1, 1].map((side) => {
        const box = [
          x + Math.min(side * bore, side * 46),
          top,
          x + Math.max(side * bore, side * 46),
          bottom,
        ] as const;
        const tooth = [
          x + Math.min(side * 46, side * 56),
          top,
          x + Math.max(side * 46, side * 56),
          bottom,
        ] as const;
        return (
          <g key={side}>
            <path className="line-thin" d={hatchBox(...box)} />
            <path className="line-known" d={drawBox(...box)} />
            <path className="line-known" d={drawBox(...tooth)} />
          </g>
        );
      })}
      <path className="line-known" d={`M${x - bore} ${top}H${x + bore}M${x - bore} ${bottom}H${x + bore}`} />
      <path className="line-axis" d={`M${x} 12V174`} />
      <path
        className="line-hand act-sketch-metal"
        d={drawPoints([
          [x + shank, 24],
          [x + shank, end],
          [x - shank, end],
          [x - shank, 24],
        ])}
      />
      <path className="line-hand" d={drawPoints(breakPoints([x - shank, 24], [x + shank, 24]))} />
    </>
  );
}
