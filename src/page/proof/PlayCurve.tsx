import type { ReactNode } from 'react';
import type { PairDrawing } from '../../index.ts';

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** More points than this in a line are finer than pixels. */
const mostPoints = 600;

/**
 * The play over one cycle: how far the driven wheel may turn either way while the driver goes on, mm. Between the two
 * lines it is free; where they cross it binds, and the stretch is marked.
 */
export function PlayCurve({ pair, box }: { readonly pair: PairDrawing; readonly box: Box }): ReactNode {
  const { at, low, high, tightestAt, pitches } = pair.play;
  const finite = [...low, ...high].filter((one) => Number.isFinite(one));
  if (at.length < 2 || finite.length === 0) return null;
  const least = Math.min(...finite, 0);
  const most = Math.max(...finite, 0);
  const span = Math.max(most - least, 0.01);
  const toX = (value: number): number => box.x + (value / pitches) * box.width;
  const toY = (value: number): number => box.y + box.height - ((value - least) / span) * box.height;
  const line = (values: Float64Array): string => {
    const every = Math.max(1, Math.ceil(values.length / mostPoints));
    let path = '';
    for (let k = 0; k < values.length; k += every) {
      const value = Math.min(most, Math.max(least, values[k]));
      path += `${path === '' ? 'M' : 'L'}${toX(at[k]).toFixed(1)} ${toY(value).toFixed(1)}`;
    }
    return path;
  };
  const isFree = pair.binds === undefined;
  return (
    <g>
      <path className="line-axis" d={`M${box.x} ${toY(0)}H${box.x + box.width}`} />
      <path className="line-thin" d={`M${box.x} ${box.y}V${box.y + box.height}H${box.x + box.width}`} />
      {[most, 0, least].map((value, k) => (
        <text
          // biome-ignore lint/suspicious/noArrayIndexKey: three marks, always the same
          key={k}
          className="ProofSheet-mark"
          x={box.x - 6}
          y={toY(value) + (k === 0 ? 12 : k === 2 ? 0 : 5)}
          textAnchor="end"
        >
          {value === 0 ? (k === 1 ? '0' : '') : `${value > 0 ? '+' : '−'}${Math.abs(value).toFixed(2)}`}
        </text>
      ))}
      <path className="line-known" d={line(high)} />
      <path className="line-known" d={line(low)} />
      {isFree ? (
        <path
          className="line-thin"
          d={`M${toX(tightestAt)} ${toY(valueAt(pair, high))}V${toY(valueAt(pair, low))}`}
        />
      ) : (
        listBinding(pair).map(([from, to]) => (
          <path
            key={from}
            className="line-hand"
            d={`M${toX(from)} ${box.y}H${toX(to)}M${toX(from)} ${box.y - 6}v12M${toX(to)} ${box.y - 6}v12`}
          />
        ))
      )}
    </g>
  );
}

/** Stretches of the cycle, in pitches, where nothing is left to the driven wheel. */
export function listBinding({ play: { at, low, high } }: PairDrawing): [number, number][] {
  const found: [number, number][] = [];
  let from: number | undefined;
  for (let k = 0; k < at.length; k++) {
    const binds = low[k] > high[k];
    if (binds) from ??= at[k];
    if (from !== undefined && (!binds || k === at.length - 1)) {
      found.push([from, at[k]]);
      from = undefined;
    }
  }
  return found;
}

function valueAt({ play }: PairDrawing, values: Float64Array): number {
  let k = 0;
  const turn = ((play.tightestAt % play.pitches) + play.pitches) % play.pitches;
  for (let i = 1; i < play.at.length; i++)
    if (Math.abs(play.at[i] - turn) < Math.abs(play.at[k] - turn)) k = i;
  return values[k];
}
