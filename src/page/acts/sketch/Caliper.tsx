import type { ReactNode } from 'react';
import { drawBox, drawPoints, type Point } from './draw-points.ts';

/** Where the two measuring faces are, how far the jaws reach, and where the bar lies (above or below them). */
export interface JawsAt {
  readonly left: number;
  readonly right: number;
  /** y of the thin ends */
  readonly tip: number;
  /** y of the bar's near edge */
  readonly bar: number;
  /** Thickness of the thin ends; the jaws' own where left out */
  readonly blade?: number | undefined;
  /** Jaws that are thin from here to their ends, so that they enter a space; a third of their length otherwise */
  readonly thinFrom?: number | undefined;
  /** Across the jaws where they meet the bar */
  readonly width?: number | undefined;
}

const barHeight = 16;

/** Outside jaws from the broad side: faces toward each other, backs sloping to thin ends, on their bar. */
export function OutsideJaws(props: JawsAt): ReactNode {
  const { left, right, tip, bar, blade = 7, width = 26 } = props;
  const thin = props.thinFrom ?? tip + (bar - tip) * 0.34;
  const toBar = bar > tip ? 1 : -1;
  const slope = thin + toBar * Math.min(28, Math.abs(bar - thin));
  const jaw = (face: number, out: number): Point[] => [
    [face, tip],
    [face, bar],
    [face + out * width, bar],
    [face + out * width, slope],
    [face + out * blade, thin],
    [face + out * blade * 0.7, tip],
  ];
  return (
    <>
      <Bar left={left - width - 8} right={right + width + 8} near={bar} isBelow={toBar > 0} />
      <path className="line-hand act-sketch-metal" d={drawPoints(jaw(left, -1), true)} />
      <path className="line-hand act-sketch-metal" d={drawPoints(jaw(right, 1), true)} />
    </>
  );
}

/** Inside jaws: two knives whose outer edges measure. `left` and `right` are those edges. */
export function InsideJaws(props: JawsAt): ReactNode {
  const { left, right, tip, bar } = props;
  const toBar = bar > tip ? 1 : -1;
  const width = Math.min(14, (right - left) / 2 - 2);
  const jaw = (edge: number, inward: number): Point[] => [
    [edge, tip],
    [edge, bar],
    [edge + inward * width, bar],
    [edge + inward * width, tip + toBar * 16],
    [edge + inward * 2, tip],
  ];
  return (
    <>
      <Bar left={left - 16} right={right + 16} near={bar} isBelow={toBar > 0} />
      <path className="line-hand act-sketch-metal" d={drawPoints(jaw(left, 1), true)} />
      <path className="line-hand act-sketch-metal" d={drawPoints(jaw(right, -1), true)} />
    </>
  );
}

/** The caliper's end stood on two shoulders at `shoulder`, its rod slid down to `bottom`. */
export function DepthRod(props: {
  readonly x: number;
  readonly shoulder: number;
  readonly bottom: number;
  readonly halfWidth: number;
  readonly rod?: number | undefined;
}): ReactNode {
  const { x, shoulder, bottom, halfWidth, rod = 3 } = props;
  return (
    <>
      <path
        className="line-hand act-sketch-metal"
        d={drawPoints([
          [x - halfWidth, 8],
          [x - halfWidth, shoulder],
          [x + halfWidth, shoulder],
          [x + halfWidth, 8],
        ])}
      />
      <path className="line-hand act-sketch-metal" d={drawBox(x - rod, shoulder, x + rod, bottom)} />
      <path className="line-hand" d={`M${x - rod} 8V${shoulder}M${x + rod} 8V${shoulder}`} />
    </>
  );
}

/** The bar that carries the jaws, with its slider over it on the right. */
function Bar(props: {
  readonly left: number;
  readonly right: number;
  readonly near: number;
  readonly isBelow: boolean;
}): ReactNode {
  const { left, right, near, isBelow } = props;
  const top = isBelow ? near : near - barHeight;
  return <path className="line-hand act-sketch-metal" d={drawBox(left, top, right, top + barHeight)} />;
}
