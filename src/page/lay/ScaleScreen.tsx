import { type ReactNode, useEffect, useId, useRef, useState } from 'react';
import {
  bankCard,
  greatestPixelsPerMm,
  holdScale,
  isCardStanding,
  leastPixelsPerMm,
  usualPixelsPerMm,
} from './bank-card.ts';

/** A bank card's outline whose right and lower edges are moved until they lie under a real card's. */
export function ScaleScreen({ onScaled }: { readonly onScaled: (pixelsPerMm: number) => void }): ReactNode {
  const id = useId();
  const table = useRef<HTMLDivElement>(null);
  const [room, setRoom] = useState(800);
  const [scale, setScale] = useState(usualPixelsPerMm);
  useEffect(() => {
    const element = table.current;
    if (!element) return;
    const watch = new ResizeObserver(() => setRoom(element.clientWidth));
    watch.observe(element);
    setRoom(element.clientWidth);
    return () => watch.disconnect();
  }, []);
  const stands = isCardStanding(room);
  const acrossMm = stands ? bankCard.shortMm : bankCard.longMm;
  const downMm = stands ? bankCard.longMm : bankCard.shortMm;
  // One press moves the far edge by half a pixel: finer than an eye can lay a card.
  const step = 0.5 / acrossMm;
  const greatest = Math.min(greatestPixelsPerMm, Math.max(leastPixelsPerMm + step, (room - 8) / acrossMm));
  const shown = Math.min(scale, greatest);
  const move = (to: number): void => setScale(Math.min(greatest, holdScale(to)));
  return (
    <div className="scale-screen">
      <ol>
        <li>Lay any bank card on the outline, against its left and upper edge.</li>
        <li>Press + or − until the right edge lies just under the card’s edge.</li>
      </ol>
      <div className="scale-screen-act">
        <button type="button" aria-label="Smaller" onClick={() => move(shown - step)}>
          −
        </button>
        <input
          id={`${id}-range`}
          type="range"
          aria-label="Width of the outline"
          aria-valuetext={`${Math.round(shown * acrossMm)} pixels across`}
          min={leastPixelsPerMm}
          max={greatest}
          step={step}
          value={shown}
          onChange={(event) => move(Number(event.target.value))}
        />
        <button type="button" aria-label="Larger" onClick={() => move(shown + step)}>
          +
        </button>
        <button type="button" className="next" onClick={() => onScaled(shown)}>
          It fits
        </button>
      </div>
      <div className="scale-screen-table" ref={table}>
        <svg
          width={acrossMm * shown + 4}
          height={downMm * shown + 4}
          role="img"
          aria-label={`Outline of a bank card, ${stands ? 'standing' : 'lying'}`}
        >
          <rect
            className="line-known"
            x={2}
            y={2}
            width={acrossMm * shown}
            height={downMm * shown}
            rx={bankCard.cornerMm * shown}
          />
          <path
            className="line-hand"
            d={`M${acrossMm * shown + 2} ${bankCard.cornerMm * shown + 2}V${(downMm - bankCard.cornerMm) * shown + 2}`}
          />
          <text className="scale-screen-word" x={(acrossMm * shown) / 2} y={(downMm * shown) / 2}>
            bank card
          </text>
        </svg>
      </div>
      <p className="scale-screen-note">
        Once is enough for this screen. Do it again after zooming the page or moving to another screen.
      </p>
    </div>
  );
}
