import type { ReactNode } from 'react';
import type { Fits } from './use-fits.ts';

/** How far a search is, with a way to end it with the best so far. */
export function Searching({ fits }: { readonly fits: Fits }): ReactNode {
  if (!fits.isWorking) return null;
  const { progress } = fits;
  const words = !progress
    ? 'Looking …'
    : progress.wheelId === null
      ? `${progress.done} % of the trains are searched …`
      : `Rolling ${progress.done + 1} of ${progress.of} …`;
  return (
    <div className="entry">
      <p role="status">{words}</p>
      <div className="entry-row">
        <button type="button" onClick={fits.stop}>
          That will do: take the best so far
        </button>
      </div>
    </div>
  );
}
