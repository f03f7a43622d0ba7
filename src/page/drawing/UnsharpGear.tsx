import type { ReactNode } from 'react';
import { traceUnsharp, unsharpRadius } from './unsharp-gear.ts';

/** A gear that could be many, about the origin: lines of rivals over each other. */
export function UnsharpGear({
  kind,
  radius,
  beyond = 12,
  most = 4,
}: {
  readonly kind: 'external' | 'internal' | 'rack';
  readonly radius: number;
  /** How far the axes reach past the tips */
  readonly beyond?: number | undefined;
  /** How many gears lie over each other */
  readonly most?: number | undefined;
}): ReactNode {
  const scale = radius / unsharpRadius;
  return (
    <>
      <g transform={`scale(${scale})`}>
        {traceUnsharp(kind)
          .slice(0, most)
          .map(({ path, share }) => (
            <path key={share} className="line-rival" style={{ opacity: share }} d={path} />
          ))}
      </g>
      {kind === 'internal' && <circle className="line-rival" r={radius} />}
      {kind !== 'rack' && (
        <path
          className="line-axis"
          d={`M${-radius - beyond} 0H${radius + beyond}M0 ${-radius - beyond}V${radius + beyond}`}
        />
      )}
    </>
  );
}
