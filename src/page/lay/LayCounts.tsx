import { type ReactNode, useState } from 'react';
import type { LaidCount } from './LayOnDrawing.tsx';

/** The gear at true size, one count after another, and the question that each is asked. */
export function LayCounts(props: {
  readonly pixelsPerMm: number;
  readonly counts: readonly LaidCount[];
  readonly onCounted: (chosen: { readonly teeth: number; readonly sure: boolean }) => void;
  readonly onClose: () => void;
}): ReactNode {
  const { pixelsPerMm, counts, onCounted, onClose } = props;
  const [at, setAt] = useState(0);
  const [refused, setRefused] = useState<readonly number[]>([]);
  const shown = counts[Math.min(at, counts.length - 1)];
  if (!shown) {
    return (
      <div className="lay-counts">
        <p>
          There is no gear to lay on yet: count the teeth as well as you can, and measure across the tips.
        </p>
        <button type="button" className="next" onClick={onClose}>
          Back
        </button>
      </div>
    );
  }
  const refuse = (): void => {
    const now = refused.includes(shown.teeth) ? refused : [...refused, shown.teeth];
    setRefused(now);
    const next = [...counts.keys()]
      .map((k) => (at + 1 + k) % counts.length)
      .find((k) => !now.includes(counts[k].teeth));
    if (next !== undefined) setAt(next);
  };
  const isNone = counts.every(({ teeth }) => refused.includes(teeth));
  return (
    <div className="lay-counts">
      <div className="lay-counts-side">
        <ol>
          <li>Lay the broken gear on the outline, hole over hole.</li>
          <li>Close one eye and look straight down.</li>
          <li>Turn the gear until one tooth lies on a tooth, then look round.</li>
        </ol>
        <div className="lay-counts-turn">
          <button type="button" disabled={at === 0} onClick={() => setAt(at - 1)}>
            <span aria-hidden="true">‹</span> Fewer
          </button>
          <p className="lay-counts-figure" aria-live="polite">
            {shown.teeth} teeth
          </p>
          <button type="button" disabled={at >= counts.length - 1} onClick={() => setAt(at + 1)}>
            More <span aria-hidden="true">›</span>
          </button>
        </div>
        <p className="lay-counts-question">A tooth under every tooth?</p>
        <div className="lay-counts-answers">
          <button type="button" onClick={() => onCounted({ teeth: shown.teeth, sure: true })}>
            Yes
          </button>
          <button type="button" onClick={refuse}>
            No
          </button>
          <button type="button" onClick={() => onCounted({ teeth: shown.teeth, sure: false })}>
            Not sure
          </button>
        </div>
        <p className="lay-counts-note" aria-live="polite">
          {isNone
            ? 'None of these fits. That happens when the size is still open: take one more reading, then try again.'
            : refused.length > 0
              ? `No so far: ${refused.join(', ')}.`
              : 'This tells how many teeth it has; it is no way to measure it.'}
        </p>
      </div>
      <TrueSize count={shown} pixelsPerMm={pixelsPerMm} />
    </div>
  );
}

/** One outline at true size, tooth 0 up, with its axis lines and the hole's place. */
function TrueSize({
  count,
  pixelsPerMm,
}: {
  readonly count: LaidCount;
  readonly pixelsPerMm: number;
}): ReactNode {
  const { outline, teeth } = count;
  const size = findSize(outline);
  const margin = 12;
  const width = (size.right - size.left) * pixelsPerMm + 2 * margin;
  const height = (size.top - size.bottom) * pixelsPerMm + 2 * margin;
  const toX = (x: number): number => Math.round(100 * ((x - size.left) * pixelsPerMm + margin)) / 100;
  const toY = (y: number): number => Math.round(100 * ((size.top - y) * pixelsPerMm + margin)) / 100;
  let path = '';
  for (let i = 0; i < outline.length; i += 2) {
    path += `${i === 0 ? 'M' : 'L'}${toX(outline[i])} ${toY(outline[i + 1])}`;
  }
  const isRound = size.left < 0 && size.bottom < 0 && size.right - size.left < 1.2 * (size.top - size.bottom);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a gear larger than the screen is moved by keyboard too
    <section className="lay-counts-glass" tabIndex={0} aria-label="The gear at true size">
      <svg width={width} height={height} role="img" aria-label={`A gear of ${teeth} teeth at true size`}>
        {isRound && <path className="line-axis" d={`M0 ${toY(0)}H${width}M${toX(0)} 0V${height}`} />}
        <path className="line-known" d={`${path}Z`} />
      </svg>
    </section>
  );
}

function findSize(outline: Float64Array): { left: number; right: number; bottom: number; top: number } {
  const size = { left: 0, right: 0, bottom: 0, top: 0 };
  for (let i = 0; i < outline.length; i += 2) {
    size.left = Math.min(size.left, outline[i]);
    size.right = Math.max(size.right, outline[i]);
    size.bottom = Math.min(size.bottom, outline[i + 1]);
    size.top = Math.max(size.top, outline[i + 1]);
  }
  return size;
}
