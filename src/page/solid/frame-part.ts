import type { ShapedPart } from '../../index.ts';

/** Where a part's middle lies and how far it reaches, so that it fits the sheet. mm */
export interface PartFrame {
  readonly toMiddle: readonly [number, number, number];
  /** Radius round its axis, or round an upright line through a rack's middle, that holds it */
  readonly radius: number;
  /** Half its length along that line */
  readonly half: number;
  /** From tooth to tooth at the tips */
  readonly pitch: number;
  /** The axis as a segment, past both ends; none for a rack */
  readonly axis: Float32Array;
}

export function framePart({ whole, form }: Pick<ShapedPart, 'whole' | 'form'>): PartFrame {
  const least = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const most = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const { positions } = whole.faces;
  for (let k = 0; k < positions.length; k++) {
    least[k % 3] = Math.min(least[k % 3], positions[k]);
    most[k % 3] = Math.max(most[k % 3], positions[k]);
  }
  // A round part's axis is its middle, also where an odd count of teeth reaches less far on one side.
  const isRack = form.kind === 'rack';
  const middle = [
    isRack ? (least[0] + most[0]) / 2 : 0,
    isRack ? (least[1] + most[1]) / 2 : 0,
    (least[2] + most[2]) / 2,
  ];
  let radius = 0;
  for (let k = 0; k < positions.length; k += 3)
    radius = Math.max(radius, Math.hypot(positions[k] - middle[0], positions[k + 1] - middle[1]));
  const half = (most[2] - least[2]) / 2;
  const past = 0.1 * (radius + half);
  return {
    toMiddle: [-middle[0], -middle[1], -middle[2]],
    radius,
    half,
    pitch: isRack ? form.tipDiameter / form.teeth : (Math.PI * form.tipDiameter) / form.teeth,
    axis: isRack ? new Float32Array(0) : Float32Array.of(0, 0, least[2] - past, 0, 0, most[2] + past),
  };
}

/** Pixels that a mm takes where the part, held at that pitch (rad) and any yaw, just fits a sheet of that size. */
export function fitPart(frame: PartFrame, pitch: number, width: number, height: number): number {
  const tall = 2 * (frame.radius * Math.abs(Math.sin(pitch)) + frame.half * Math.cos(pitch));
  return 0.92 * Math.min(width / (2 * frame.radius), height / tall);
}
