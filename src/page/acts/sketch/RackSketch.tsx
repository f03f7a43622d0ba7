import type { ReactNode } from 'react';
import { Arrow } from './Arrow.tsx';
import { drawBox, drawCircle, drawPoints } from './draw-points.ts';
import { RackPiece, rackSizes } from './RackPiece.tsx';

/** A bar's acts: from its back to the tips or to a pin, and from edge to edge along it. */
export function RackSketch(props: {
  readonly at: 'tips' | 'pin' | 'pitch';
  readonly pitches?: number | undefined;
}): ReactNode {
  const { at, pitches } = props;
  if (at === 'pitch') {
    const shown = 8;
    const on = Math.min(shown - 1, Math.max(1, pitches ?? 6));
    const pitch = 36;
    const { tipHalf, depth } = rackSizes(pitch);
    const first = 34 - tipHalf;
    const last = first + on * pitch;
    const point = (x: number): string =>
      drawPoints(
        [
          [x, 84],
          [x, 20],
          [x - 14, 20],
          [x - 14, 66],
        ],
        true,
      );
    return (
      <>
        <RackPiece x={16} tips={88} pitch={pitch} teeth={shown} />
        <path className="act-sketch-hand" d={markRackTooth(34, 88, pitch)} />
        <path className="act-sketch-hand" d={markRackTooth(34 + on * pitch, 88, pitch)} />
        <path className="line-hand act-sketch-metal" d={point(first)} />
        <path className="line-hand act-sketch-metal" d={point(last)} />
        <Arrow from={[first, 50]} to={[last, 50]} both />
        <path className="line-axis" d={`M4 ${88 + depth / 2}H316`} />
      </>
    );
  }
  const pitch = 48;
  const { depth, footHalf, tipHalf } = rackSizes(pitch);
  const tips = at === 'pin' ? 74 : 62;
  const pinRadius = 0.3 * pitch;
  // Tangent to both 20° flanks of the space in the middle.
  const halfAtTips = pitch / 2 - tipHalf;
  const slope = Math.PI / 9;
  const pinY = tips + halfAtTips / Math.tan(slope) - pinRadius / Math.sin(slope);
  const touch = at === 'pin' ? pinY - pinRadius : tips;
  const middle = 160;
  const x = middle - 2 * pitch;
  const bottom = tips + depth + 34;
  return (
    <>
      <RackPiece x={x} tips={tips} pitch={pitch} teeth={4} />
      {at === 'pin' && (
        <path className="line-hand act-sketch-metal" d={drawCircle([middle, pinY], pinRadius)} />
      )}
      <path
        className="line-hand act-sketch-metal"
        d={drawBox(middle - footHalf - 24, touch - 16, middle + footHalf + 24, touch)}
      />
      <path
        className="line-hand act-sketch-metal"
        d={drawBox(middle - footHalf - 24, bottom, middle + footHalf + 24, bottom + 16)}
      />
      <Arrow from={[middle, touch - 50]} to={[middle, touch - 18]} hand />
      <Arrow from={[middle, bottom + 48]} to={[middle, bottom + 18]} hand />
    </>
  );
}

function markRackTooth(middle: number, tips: number, pitch: number): string {
  const { tipHalf } = rackSizes(pitch);
  return drawPoints(
    [
      [middle - tipHalf, tips],
      [middle + tipHalf, tips],
      [middle + tipHalf + 3, tips + 10],
      [middle - tipHalf - 3, tips + 10],
    ],
    true,
  );
}
