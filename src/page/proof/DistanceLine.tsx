import type { ReactNode } from 'react';
import type { PairDrawing } from '../../index.ts';

/**
 * Distances of the posts along a line: dashed where the pair jams, thin where it turns, wide where it runs smoothly. A tick
 * stands at the measured one, with what it may be either way.
 */
export function DistanceLine(props: {
  readonly pair: PairDrawing;
  readonly x: number;
  readonly y: number;
  readonly width: number;
}): ReactNode {
  const { pair, x, y, width } = props;
  const { centerMm, uMm, freeFromMm, smoothFromMm } = pair;
  const marks = [freeFromMm, smoothFromMm].filter((one) => one !== undefined);
  const least = Math.min(centerMm - 2 * uMm, ...marks);
  const most = Math.max(centerMm + 2 * uMm, ...marks);
  const room = Math.max((most - least) * 0.25, 0.02);
  const from = least - room;
  const to = most + room;
  const toX = (mm: number): number => x + ((Math.min(to, Math.max(from, mm)) - from) / (to - from)) * width;
  // A ring's pinion is freer nearer: the line then reads the other way.
  const isInward = marks.some((mm) => mm < centerMm - 1e-9);
  const end = isInward ? x : x + width;
  const start = isInward ? x + width : x;
  const free = freeFromMm === undefined ? end : toX(freeFromMm);
  const smooth = smoothFromMm === undefined ? end : toX(smoothFromMm);
  // Below the measured distance only what was rolled there is known.
  const known = pair.range.find((one) => one.isFree)?.mm;
  const freeStart = freeFromMm === centerMm && known !== undefined ? toX(known) : free;
  return (
    <g>
      <path className="line-hidden" d={`M${start} ${y}H${freeStart}`} />
      <path className="line-thin" d={`M${freeStart} ${y}H${end}`} />
      {smoothFromMm !== undefined && <path className="line-known" d={`M${smooth} ${y}H${end}`} />}
      <path className="line-thin" d={`M${toX(centerMm)} ${y - 10}v20`} />
      {uMm > 0 && (
        <path
          className="line-thin"
          d={`M${toX(centerMm - 2 * uMm)} ${y - 5}v10M${toX(centerMm + 2 * uMm)} ${y - 5}v10`}
        />
      )}
    </g>
  );
}
