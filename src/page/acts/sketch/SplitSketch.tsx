import type { ReactNode } from 'react';
import { Arrow } from './Arrow.tsx';
import { drawPoints, type Point } from './draw-points.ts';
import { makeSketchGear, placePoint } from './sketch-gear.ts';

/** A gear split from its hole through one space, open at the rim, with a slip of card in the gap. */
export function SplitSketch(): ReactNode {
  const [x, y] = [160, 106];
  return (
    <>
      <SplitGear x={x} y={y} radius={82} gap={0.16} />
      <path
        className="line-hand act-sketch-metal"
        d={drawPoints([
          [x - 5.2, 8],
          [x - 5.2, 52],
          [x + 5.2, 52],
          [x + 5.2, 8],
        ])}
      />
      <Arrow from={[x - 46, 20]} to={[x - 10, 20]} />
      <Arrow from={[x + 46, 20]} to={[x + 10, 20]} />
    </>
  );
}

/** A gear whose rim stands open at the top by `gap` rad. */
export function SplitGear(props: {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly gap: number;
  readonly teeth?: number | undefined;
}): ReactNode {
  const { x, y, radius, gap, teeth = 16 } = props;
  const gear = makeSketchGear({ kind: 'external', teeth, isSplit: true, isHelical: false });
  const scale = radius / gear.tip;
  // The rim is squeezed into what the gap leaves of the round, starting in the middle of a space.
  const squeeze = 1 - gap / (2 * Math.PI);
  const open = ([px, py]: Point, isLast: boolean): Point => {
    const angle = isLast ? 2 * Math.PI : (Math.atan2(py, px) + Math.PI / teeth + 4 * Math.PI) % (2 * Math.PI);
    const at = Math.PI / 2 + gap / 2 + angle * squeeze;
    const r = Math.hypot(px, py);
    return placePoint([r * Math.cos(at), r * Math.sin(at)], { x, y, scale, turn: 0 });
  };
  const rim = [...gear.points, gear.points[0]].map((point, i, all) =>
    open(
      i === 0
        ? [
            Math.hypot(...point) * Math.cos(-Math.PI / teeth + 1e-6),
            Math.hypot(...point) * Math.sin(-Math.PI / teeth + 1e-6),
          ]
        : point,
      i === all.length - 1,
    ),
  );
  const bore = Array.from({ length: 41 }, (_, i): Point => {
    const at = Math.PI / 2 - gap / 2 - (i / 40) * (2 * Math.PI - gap);
    return [x + gear.bore * scale * Math.cos(at), y - gear.bore * scale * Math.sin(at)];
  });
  return <path className="line-known" d={drawPoints([...rim, ...bore], true)} />;
}
