import type { ReactNode } from 'react';
import { drawBox, drawPoints } from './draw-points.ts';

/** A small gear on a pointed stick stood in putty, from the side, with the two jaws end on: both hands are free. */
export function PuttyStand({ x }: { readonly x: number }): ReactNode {
  const ground = 176;
  return (
    <>
      <path className="line-thin" d={`M${x - 44} ${ground}H${x + 44}`} />
      <path
        className="line-known act-sketch-metal"
        d={`M${x - 30} ${ground}C${x - 28} ${ground - 30} ${x - 8} ${ground - 30} ${x} ${ground - 28}S${x + 30} ${ground - 22} ${x + 31} ${ground}Z`}
      />
      <path
        className="line-known"
        d={drawPoints([
          [x - 4, ground - 28],
          [x - 3, 66],
          [x, 50],
          [x + 3, 66],
          [x + 4, ground - 28],
        ])}
      />
      <path className="line-known act-sketch-metal" d={drawBox(x - 18, 82, x + 18, 108)} />
      <path className="line-thin" d={`M${x - 11} 82V108M${x - 4} 82V108M${x + 4} 82V108M${x + 11} 82V108`} />
      <path className="line-hand act-sketch-metal" d={drawBox(x - 32, 88, x - 18, 100)} />
      <path className="line-hand act-sketch-metal" d={drawBox(x + 18, 88, x + 32, 100)} />
    </>
  );
}
