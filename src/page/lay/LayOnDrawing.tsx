import { type ReactNode, useId } from 'react';
import { LayCounts } from './LayCounts.tsx';
import './LayOnDrawing.css';
import { ScaleScreen } from './ScaleScreen.tsx';

/** A count with its outline, mm, as the core traces it. */
export interface LaidCount {
  readonly teeth: number;
  readonly outline: Float64Array;
}

/**
 * Lay the broken gear on the screen: first the screen is scaled with a bank card, then the gear stands at true size
 * with one count after another, and the person says which has a tooth under every tooth. It tells a count, no length.
 */
export function LayOnDrawing(props: {
  readonly pixelsPerMm?: number | undefined;
  readonly onScaled: (pixelsPerMm: number) => void;
  readonly counts: readonly LaidCount[];
  readonly onCounted: (chosen: { readonly teeth: number; readonly sure: boolean }) => void;
  readonly onClose: () => void;
}): ReactNode {
  const { pixelsPerMm, onScaled, counts, onCounted, onClose } = props;
  const id = useId();
  return (
    <section className="lay-on-drawing" aria-labelledby={`${id}-title`}>
      <header className="lay-on-drawing-head">
        <h2 id={`${id}-title`}>
          {pixelsPerMm === undefined ? 'First, the size of your screen' : 'Lay it on the drawing'}
        </h2>
        <button type="button" className="plain" onClick={onClose}>
          Close
        </button>
      </header>
      {pixelsPerMm === undefined ? (
        <ScaleScreen onScaled={onScaled} />
      ) : (
        <LayCounts pixelsPerMm={pixelsPerMm} counts={counts} onCounted={onCounted} onClose={onClose} />
      )}
    </section>
  );
}
