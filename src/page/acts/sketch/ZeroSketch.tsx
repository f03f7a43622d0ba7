import type { ReactNode } from 'react';
import { Arrow } from './Arrow.tsx';
import { drawBox, drawPoints } from './draw-points.ts';

/** A caliper with its jaws closed, light behind them, and the place to read. */
export function ZeroSketch(): ReactNode {
  return (
    <>
      <path className="line-hand act-sketch-metal" d={drawBox(20, 44, 304, 66)} />
      <path
        className="line-thin"
        d={Array.from({ length: 15 }, (_, i) => `M${160 + i * 9} 66v-${i % 5 === 0 ? 12 : 6}`).join('')}
      />
      <path
        className="line-hand act-sketch-metal"
        d={drawPoints(
          [
            [60, 184],
            [60, 44],
            [20, 44],
            [20, 92],
            [50, 126],
            [54, 184],
          ],
          true,
        )}
      />
      <path
        className="line-hand act-sketch-metal"
        d={drawPoints(
          [
            [60, 184],
            [60, 32],
            [152, 32],
            [152, 78],
            [96, 78],
            [96, 92],
            [70, 126],
            [66, 184],
          ],
          true,
        )}
      />
      <path className="line-known act-sketch-metal" d={drawBox(78, 40, 144, 70)} />
      <path className="line-known" d="M88 56h10M106 56h10M124 56h10" />
      <Arrow from={[22, 156]} to={[50, 156]} hand />
      <Arrow from={[98, 156]} to={[70, 156]} hand />
      <path
        className="line-thin"
        d={[-2, -1, 0, 1, 2]
          .map((i) => `M${196 - Math.abs(i) * 5} ${140 + i * 16}L${126} ${150 + i * 6}`)
          .join('')}
      />
      <path
        className="line-known"
        d="M236 156a18 18 0 1 0 0 -32a18 18 0 1 0 0 32M224 124v32M212 128h-8v24h8"
      />
    </>
  );
}
