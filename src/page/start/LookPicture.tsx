import type { ReactNode } from 'react';
import './LookPicture.css';
import type { Look } from './look.ts';
import { makeLookBodies } from './look-bodies.ts';
import { paintBodies } from './solid-picture.ts';

const size = 112;

/** A gear of that look, lying on a table; decoration beside its word. */
export function LookPicture({ look }: { readonly look: Look }): ReactNode {
  return (
    <svg className="look-picture" viewBox={`0 0 ${size} ${size}`} aria-hidden="true">
      {paintBodies(makeLookBodies(look), size).map(({ fill, line }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a picture's bodies never move
        <g key={i}>
          <path className="look-picture-face" d={fill} />
          <path className="look-picture-line" d={line} />
        </g>
      ))}
    </svg>
  );
}
