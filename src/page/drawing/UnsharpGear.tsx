import type { ReactNode } from 'react';
import { traceUnsharp, unsharpRadius } from './unsharp-gear.ts';

/** A gear that could be many, about the origin: lines of rivals over each other. */
export function UnsharpGear({
  kind,
  radius,
}: {
  readonly kind: 'external' | 'internal' | 'rack';
  readonly radius: number;
}): ReactNode {
  const scale = radius / unsharpRadius;
  return (
    <>
      <g transform={`scale(${scale})`}>
        {traceUnsharp(kind).map(({ path, share }) => (
          <path key={share} className="line-rival" style={{ opacity: share }} d={path} />
        ))}
      </g>
      {kind === 'internal' && <circle className="line-rival" r={radius} />}
      {kind !== 'rack' && (
        <path
          className="line-axis"
          d={`M${-radius - 12} 0H${radius + 12}M0 ${-radius - 12}V${radius + 12}`}
        />
      )}
    </>
  );
}
