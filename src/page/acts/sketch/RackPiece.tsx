import type { ReactNode } from 'react';
import { breakPoints, drawPoints, type Point } from './draw-points.ts';

/** Heights of a rack's teeth for a pitch: 20° flanks, 1 module up, 1.25 down. */
export function rackSizes(pitch: number): {
  readonly depth: number;
  readonly tipHalf: number;
  readonly footHalf: number;
} {
  const size = pitch / Math.PI;
  const slope = Math.tan(Math.PI / 9);
  return { depth: 2.25 * size, tipHalf: pitch / 4 - size * slope, footHalf: pitch / 4 + 1.25 * size * slope };
}

/** A bar with teeth up, `x` at its left break; the first tooth's middle lies half a pitch to the right. */
export function RackPiece(props: {
  readonly x: number;
  readonly tips: number;
  readonly pitch: number;
  readonly teeth: number;
  readonly back?: number | undefined;
}): ReactNode {
  const { x, tips, pitch, teeth, back = 34 } = props;
  const { depth, tipHalf, footHalf } = rackSizes(pitch);
  const foot = tips + depth;
  const end = x + teeth * pitch;
  const line: Point[] = [[x, foot]];
  for (let i = 0; i < teeth; i++) {
    const middle = x + (i + 0.5) * pitch;
    line.push(
      [middle - footHalf, foot],
      [middle - tipHalf, tips],
      [middle + tipHalf, tips],
      [middle + footHalf, foot],
    );
  }
  line.push([end, foot]);
  return (
    <>
      <path className="line-known" d={drawPoints(line)} />
      <path className="line-known" d={`M${x} ${foot + back}H${end}`} />
      <path className="line-thin" d={drawPoints(breakPoints([x, foot], [x, foot + back]))} />
      <path className="line-thin" d={drawPoints(breakPoints([end, foot], [end, foot + back]))} />
    </>
  );
}
