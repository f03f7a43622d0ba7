import type { ReactNode } from 'react';
import type { Wheel } from '../../index.ts';
import { isSpecified } from '../state/is-specified.ts';
import { isSplit } from '../state/is-split.ts';
import { drawFreehand } from './freehand.ts';
import { countMissing } from './missing-teeth.ts';
import { gapsInCircle } from './train-circle.ts';

export interface TrainGearProps {
  readonly wheel: Wheel;
  /** The report's verdict; absent: not worked out */
  readonly verdict?: string | undefined;
  readonly isOpen: boolean;
}

const radius = 14;

/**
 * One gear on the train line, 40 px: a continuous circle once it is known what it is, double-dotted while it could be
 * several, gaps where teeth are gone, a freehand line where it split. The button around it says its name.
 */
export function TrainGear({ wheel, verdict, isOpen }: TrainGearProps): ReactNode {
  const isKnown = verdict === 'certain' || verdict === 'likely' || isSpecified(wheel);
  const hasGaps = countMissing(wheel, 1000) > 0;
  const isLost = wheel.state === 'lost';
  return (
    <svg className="TrainGear" width="40" height="40" viewBox="-20 -20 40 40" aria-hidden="true">
      <path className={isKnown ? 'line-known' : 'line-rival'} d={gapsInCircle(radius, hasGaps ? 3 : 0)} />
      {isLost ? <path className="line-hidden" d="M-4 0H4M0 -4V4" /> : <circle className="line-thin" r="3" />}
      {isSplit(wheel) && <path className="line-thin" d={drawFreehand([2, -3], [8, -18], 1.6)} />}
      {isOpen && <circle className="line-known" r="18.5" />}
    </svg>
  );
}

/** The whole train on the same line: two circles that touch. */
export function WholeTrain({ isOpen }: { readonly isOpen: boolean }): ReactNode {
  return (
    <svg className="TrainGear" width="40" height="40" viewBox="-20 -20 40 40" aria-hidden="true">
      <circle className="line-known" cx="-6" cy="4" r="8" />
      <circle className="line-known" cx="6" cy="-4" r="6.4" />
      <circle className="line-thin" cx="-6" cy="4" r="1.5" />
      <circle className="line-thin" cx="6" cy="-4" r="1.5" />
      {isOpen && <circle className="line-known" r="18.5" />}
    </svg>
  );
}
