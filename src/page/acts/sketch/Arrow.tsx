import type { ReactNode } from 'react';
import { drawPoints, type Point } from './draw-points.ts';

/** A straight arrow with a filled head, 15° each side (ISO 129-1); `both` puts one at each end. */
export function Arrow(props: {
  readonly from: Point;
  readonly to: Point;
  readonly both?: boolean | undefined;
  /** Drawn as what the hand does */
  readonly hand?: boolean | undefined;
}): ReactNode {
  const { from, to, both, hand } = props;
  const line = hand ? 'line-hand' : 'line-thin';
  const fill = hand ? 'act-sketch-hand' : 'act-sketch-ink';
  return (
    <>
      <path className={line} d={drawPoints([from, to])} />
      <path className={fill} d={headAt(to, Math.atan2(to[1] - from[1], to[0] - from[0]))} />
      {both && <path className={fill} d={headAt(from, Math.atan2(from[1] - to[1], from[0] - to[0]))} />}
    </>
  );
}

/** An arrow along an arc about a point; angles in rad, clockwise on the screen from +x. */
export function RoundArrow(props: {
  readonly center: Point;
  readonly radius: number;
  readonly from: number;
  readonly to: number;
  readonly both?: boolean | undefined;
}): ReactNode {
  const { center, radius, from, to, both } = props;
  const count = 24;
  const points = Array.from({ length: count + 1 }, (_, i): Point => {
    const angle = from + ((to - from) * i) / count;
    return [center[0] + radius * Math.cos(angle), center[1] + radius * Math.sin(angle)];
  });
  const way = to > from ? Math.PI / 2 : -Math.PI / 2;
  // The head leans inward by half of what it spans, so that it lies on the arc.
  const lean = (Math.sign(way) * headLength) / 2 / radius;
  return (
    <>
      <path className="line-hand" d={drawPoints(points)} />
      <path className="act-sketch-hand" d={headAt(points[count], to + way - lean)} />
      {both && <path className="act-sketch-hand" d={headAt(points[0], from - way + lean)} />}
    </>
  );
}

const headLength = 11;

function headAt([x, y]: Point, angle: number): string {
  const half = Math.PI / 12;
  const corner = (turn: number): Point => [
    x - (headLength / Math.cos(half)) * Math.cos(angle + turn),
    y - (headLength / Math.cos(half)) * Math.sin(angle + turn),
  ];
  return drawPoints([[x, y], corner(half), corner(-half)], true);
}
