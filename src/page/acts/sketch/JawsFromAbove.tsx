import type { ReactNode } from 'react';
import { InsideJaws, OutsideJaws } from './Caliper.tsx';
import { drawBox, hatchBox } from './draw-points.ts';

/**
 * The side view that goes with a front view: a gear lying flat, the jaws reaching down over it, or, inside, a ring cut
 * through and the inside jaws in it.
 */
export function JawsFromAbove({
  x,
  isInside,
}: {
  readonly x: number;
  readonly isInside: boolean;
}): ReactNode {
  const top = 122;
  const bottom = 152;
  const table = <path className="line-thin" d={`M${x - 50} ${bottom}H${x + 50}`} />;
  if (isInside) {
    return (
      <>
        {[-1, 1].map((side) => {
          const box = [
            Math.min(side * 26, side * 42) + x,
            top,
            Math.max(side * 26, side * 42) + x,
            bottom,
          ] as const;
          return (
            <g key={side}>
              <path className="line-thin" d={hatchBox(...box)} />
              <path className="line-known" d={drawBox(...box)} />
            </g>
          );
        })}
        <path className="line-known" d={`M${x - 26} ${top}H${x + 26}M${x - 26} ${bottom}H${x + 26}`} />
        <InsideJaws left={x - 26} right={x + 26} tip={bottom - 4} bar={62} />
      </>
    );
  }
  return (
    <>
      {table}
      <path className="line-known" d={drawBox(x - 30, top, x + 30, bottom)} />
      <path className="line-thin" d={`M${x - 19} ${top}V${bottom}M${x + 19} ${top}V${bottom}`} />
      <path className="line-axis" d={`M${x} ${top - 10}V${bottom + 10}`} />
      <OutsideJaws left={x - 19} right={x + 19} tip={bottom - 3} bar={62} blade={5} thinFrom={110} />
    </>
  );
}
