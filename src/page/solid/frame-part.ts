import type { ShapedPart } from '../../index.ts';

/** Where a part's middle lies and how far it reaches, so that it fits the sheet however it is turned. mm */
export interface PartFrame {
  readonly toMiddle: readonly [number, number, number];
  /** Radius of a ball round its middle that holds it */
  readonly reach: number;
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
  let reach = 0;
  for (let k = 0; k < positions.length; k += 3)
    reach = Math.max(
      reach,
      Math.hypot(positions[k] - middle[0], positions[k + 1] - middle[1], positions[k + 2] - middle[2]),
    );
  const past = 0.12 * reach;
  return {
    toMiddle: [-middle[0], -middle[1], -middle[2]],
    reach,
    pitch: isRack ? form.tipDiameter / form.teeth : (Math.PI * form.tipDiameter) / form.teeth,
    axis: isRack ? new Float32Array(0) : Float32Array.of(0, 0, least[2] - past, 0, 0, most[2] + past),
  };
}
