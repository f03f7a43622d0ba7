import type { ReactNode } from 'react';
import { breakPoints, drawCircle, drawPoints, type Point } from '../acts/sketch/draw-points.ts';
import { SplitGear } from '../acts/sketch/SplitSketch.tsx';
import { makeSketchGear, placeTeeth } from '../acts/sketch/sketch-gear.ts';
import './HappenedPicture.css';
import type { DamageKind } from './happening.ts';

const place = { x: 56, y: 56, turn: Math.PI / 2 };

/** A gear in that state; what isn't there any more is drawn in the line of what is missing. */
export function HappenedPicture({ state }: { readonly state: DamageKind | 'lost' | 'sound' }): ReactNode {
  return (
    <svg className="happened-picture" viewBox="0 0 112 112" aria-hidden="true">
      {draw(state)}
    </svg>
  );
}

function draw(state: DamageKind | 'lost' | 'sound'): ReactNode {
  const gear = makeSketchGear({ kind: 'external', teeth: 14, isSplit: false, isHelical: false });
  const at = (radius: number): { x: number; y: number; turn: number; scale: number } => ({
    ...place,
    scale: radius / gear.tip,
  });
  const hole = drawCircle([56, 56], 13);
  const outline = (radius: number): string => drawPoints(placeTeeth(gear, at(radius)), true);
  switch (state) {
    case 'split':
      return <SplitGear x={56} y={57} radius={48} gap={0.16} teeth={14} />;
    case 'teeth-missing':
      return (
        <>
          <path className="line-known" d={drawPoints(placeTeeth(gear, at(48), 1, 11))} />
          <path className="line-rival" d={drawPoints(placeTeeth(gear, at(48), 12, 3))} />
          <path
            className="line-thin"
            d={drawPoints(
              breakPoints(lastOf(placeTeeth(gear, at(48), 11, 1)), placeTeeth(gear, at(48), 1, 1)[0]),
            )}
          />
          <path className="line-known" d={hole} />
        </>
      );
    case 'worn': {
      const cut = gear.root + 0.5 * (gear.tip - gear.root);
      // Worn teeth: what stood beyond the cut is drawn in toward it, and rounds off.
      const worn = placeTeeth(
        {
          ...gear,
          points: gear.points.map(([x, y]): Point => {
            const radius = Math.hypot(x, y);
            const left = radius <= cut ? radius : cut + 0.35 * (radius - cut);
            return [(x * left) / radius, (y * left) / radius];
          }),
        },
        at(48),
      );
      return (
        <>
          <path className="line-known" d={drawPoints(worn, true)} />
          <path className="line-rival" d={outline(48)} />
          <path className="line-known" d={hole} />
        </>
      );
    }
    case 'swollen':
      return (
        <>
          <path className="line-known" d={outline(51)} />
          <path className="line-rival" d={outline(44)} />
          <path className="line-known" d={hole} />
        </>
      );
    case 'crumbling':
      return (
        <>
          <path className="line-known" d={drawPoints(placeTeeth(gear, at(48), 1, 8))} />
          <path className="line-known" d={drawPoints(placeTeeth(gear, at(48), 10, 2))} />
          <path
            className="line-thin"
            d={drawPoints([
              ...breakPoints(lastOf(placeTeeth(gear, at(48), 11, 1)), [56, 34]),
              ...breakPoints([56, 34], placeTeeth(gear, at(48), 1, 1)[0]),
            ])}
          />
          <path
            className="line-thin"
            d={drawPoints(
              breakPoints(lastOf(placeTeeth(gear, at(48), 8, 1)), placeTeeth(gear, at(48), 10, 1)[0]),
            )}
          />
          <path
            className="line-known"
            d={crumbs.map(([x, y, r]) => drawPoints(crumb(x, y, r), true)).join('')}
          />
          <path className="line-known" d={hole} />
        </>
      );
    case 'lost':
      return (
        <>
          <path className="line-rival" d={outline(48)} />
          <path className="line-rival" d={hole} />
        </>
      );
    case 'sound':
      return (
        <>
          <path className="line-known" d={outline(48)} />
          <path className="line-known" d={hole} />
        </>
      );
  }
}

const crumbs: readonly (readonly [number, number, number])[] = [
  [74, 12, 5],
  [88, 22, 4],
  [68, 24, 3],
  [98, 90, 5],
  [104, 78, 3],
];

function crumb(x: number, y: number, r: number): Point[] {
  return [0, 1, 2, 3, 4].map((i): Point => {
    const angle = (i * 2 * Math.PI) / 5 + x;
    const reach = r * (i % 2 === 0 ? 1 : 0.7);
    return [x + reach * Math.cos(angle), y + reach * Math.sin(angle)];
  });
}

function lastOf(points: readonly Point[]): Point {
  return points[points.length - 1];
}
