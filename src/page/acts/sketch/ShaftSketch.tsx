import type { ReactNode } from 'react';
import { Arrow } from './Arrow.tsx';
import { OutsideJaws } from './Caliper.tsx';
import { drawBox, drawCircle, drawPoints, type Point } from './draw-points.ts';

/** Jaws on a shaft, the shaft end on: round, or one jaw on its flat. */
export function ShaftSketch({ hasFlat }: { readonly hasFlat: boolean }): ReactNode {
  const radius = 46;
  const [x, y] = [160, 84];
  const flat = 26;
  const half = Math.acos(flat / radius);
  const count = 60;
  const round = Array.from({ length: count + 1 }, (_, i): Point => {
    const angle = half + (2 * (Math.PI - half) * i) / count;
    return [x - radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
  const left = hasFlat ? x - flat : x - radius;
  return (
    <>
      <path className="line-known" d={hasFlat ? drawPoints(round, true) : drawCircle([x, y], radius)} />
      <path className="line-axis" d={`M${x - 60} ${y}H${x + 60}M${x} ${y - 60}V${y + 60}`} />
      <OutsideJaws left={left} right={x + radius} tip={20} bar={162} />
      <Arrow from={[left - 66, 128]} to={[left - 30, 128]} hand />
      <Arrow from={[x + radius + 66, 128]} to={[x + radius + 30, 128]} hand />
    </>
  );
}

/** Two posts in their plate: the jaws outside over both, or inside between them. */
export function PostsSketch(): ReactNode {
  return (
    <>
      {[
        { x: 84, isOver: true },
        { x: 236, isOver: false },
      ].map(({ x, isOver }) => (
        <g key={x}>
          <path className="line-known" d={`M${x - 66} 150H${x + 66}M${x - 66} 164H${x + 66}`} />
          {[-1, 1].map((side) => (
            <path
              key={side}
              className="line-known"
              d={drawBox(x + side * 32 - 8, 84, x + side * 32 + 8, 150)}
            />
          ))}
          <path className="line-axis" d={`M${x - 32} 70V174M${x + 32} 70V174`} />
          {isOver ? (
            <OutsideJaws left={x - 40} right={x + 40} tip={142} bar={34} blade={6} />
          ) : (
            <BetweenJaws x={x} />
          )}
          <text className="act-sketch-word" x={x} y={192}>
            {isOver ? 'over both' : 'between'}
          </text>
        </g>
      ))}
    </>
  );
}

function BetweenJaws({ x }: { readonly x: number }): ReactNode {
  const jaw = (side: number): Point[] => [
    [x + side * 24, 142],
    [x + side * 24, 34],
    [x + side * 8, 34],
    [x + side * 8, 100],
    [x + side * 20, 142],
  ];
  return (
    <>
      <path className="line-hand act-sketch-metal" d={drawBox(x - 48, 18, x + 48, 34)} />
      <path className="line-hand act-sketch-metal" d={drawPoints(jaw(-1), true)} />
      <path className="line-hand act-sketch-metal" d={drawPoints(jaw(1), true)} />
    </>
  );
}
