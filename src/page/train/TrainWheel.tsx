import { memo, type ReactNode, useMemo } from 'react';
import type { TrainDrawing } from '../../index.ts';
import { traceWheel } from './trace-wheel.ts';

/**
 * One wheel on its place, px, as an element of its own: the browser turns it without drawing it again. Its line says how
 * sure it is: wide where it is known, double-dotted where it could be several or is lost.
 */
export const TrainWheel = memo(function TrainWheel(props: {
  readonly wheel: TrainDrawing['wheels'][number];
  readonly x: number;
  readonly y: number;
  readonly pxPerMm: number;
  readonly gone: ReadonlySet<number>;
  readonly isKnown: boolean;
  readonly isLost: boolean;
  readonly isChanged: boolean;
}): ReactNode {
  const { wheel, x, y, pxPerMm: s, gone, isKnown, isLost, isChanged } = props;
  const key = [...gone].join(' ');
  // biome-ignore lint/correctness/useExhaustiveDependencies: the set is known by its members
  const paths = useMemo(() => traceWheel(wheel, gone), [wheel, key]);
  const line = isChanged ? 'line-hand' : isKnown && !isLost ? 'line-known' : 'line-rival';
  const slides = wheel.form === 'rack' || wheel.form === 'worm';
  const half = halfSize(wheel);
  const box = {
    left: x - half.x * s,
    top: y - half.y * s,
    width: 2 * half.x * s,
    height: 2 * half.y * s,
  };
  const view = `${-half.x} ${-half.y} ${2 * half.x} ${2 * half.y}`;
  const moving = (
    <svg
      className="TrainSheet-turned"
      viewBox={view}
      data-turns={wheel.id}
      style={slides ? undefined : { transform: `rotate(${(-wheel.phase * 180) / Math.PI}deg)` }}
      aria-hidden="true"
    >
      <g
        transform={
          slides && wheel.form === 'rack' ? `scale(1 -1) translate(${phaseOf(wheel)} 0)` : 'scale(1 -1)'
        }
      >
        {wheel.form === 'worm' ? (
          <path className="line-thin" d={paths.sliding} />
        ) : (
          <path
            className={`${line} TrainSheet-body`}
            fillRule="evenodd"
            d={paths.body}
            strokeLinejoin="round"
          />
        )}
        {paths.gone && <path className="line-rival" d={paths.gone} />}
        {!slides && <circle className="TrainSheet-pen" cx={wheel.rootRadius * 0.82} r={2.5 / s} />}
      </g>
    </svg>
  );
  if (!slides)
    return (
      <div className="TrainSheet-wheel" style={box}>
        {moving}
      </div>
    );
  return (
    <div
      className="TrainSheet-wheel TrainSheet-clip"
      style={{ ...box, transform: `rotate(${(-wheel.along * 180) / Math.PI}deg)` }}
    >
      {wheel.form === 'worm' && (
        <svg className="TrainSheet-turned" viewBox={view} aria-hidden="true">
          <path className={`${line} TrainSheet-body`} d={paths.body} />
        </svg>
      )}
      {moving}
    </div>
  );
});

/** Half the element, mm: a little more than the lines take, as they are as wide as they are. */
function halfSize(wheel: TrainDrawing['wheels'][number]): { x: number; y: number } {
  const pitch = Math.PI * (wheel.moduleMm ?? 1);
  if (wheel.form === 'rack') return { x: wheel.reach - pitch, y: wheel.rootRadius };
  if (wheel.form === 'worm') return { x: 5 * pitch + 0.2, y: wheel.reach * 1.05 };
  return { x: wheel.reach * 1.03 + 0.1, y: wheel.reach * 1.03 + 0.1 };
}

/** Where the bar's teeth stand, within a pitch: its outline's tooth 0 lies on the left. */
function phaseOf(wheel: TrainDrawing['wheels'][number]): number {
  const pitch = Math.PI * (wheel.moduleMm ?? 1);
  const teeth = Math.round((2 * wheel.reach) / pitch);
  return -((teeth - 1) / 2) * pitch + (wheel.phase - Math.round(wheel.phase / pitch) * pitch);
}
