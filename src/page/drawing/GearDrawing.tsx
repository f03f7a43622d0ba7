import type { ReactNode } from 'react';
import type { Wheel, WheelDrawing, WheelReport } from '../../index.ts';
import type { Slot } from '../state/slot.ts';
import { DrawingSheet } from './DrawingSheet.tsx';
import { EmptySheet } from './EmptySheet.tsx';
import { tellFocus } from './tell-focus.ts';
import { useBefore } from './use-before.ts';
import { useSize } from './use-size.ts';
import './GearDrawing.css';

export interface GearDrawingProps {
  readonly wheel: Wheel;
  /** Absent: nothing known yet */
  readonly report?: WheelReport | undefined;
  /** Outlines of what it could be, most likely first, and what each would show at `asked` */
  readonly drawing?: WheelDrawing | undefined;
  /** The rows of `drawing.expected` */
  readonly asked: readonly Slot[];
  /** The open act: its jaws stand on the drawing */
  readonly active?: Slot | undefined;
  /** The length being typed, mm: the jaws close on it */
  readonly typedMm?: number | undefined;
  /** The old answer is dimmed while a new one is worked out */
  readonly isWorking: boolean;
  readonly unit: 'mm' | 'in';
  readonly titleBlock: {
    readonly job: string;
    readonly gear: string;
    readonly material?: string | undefined;
    /** For example "An invented example" */
    readonly note?: string | undefined;
  };
  /** A dimension was touched */
  readonly onTouch: (slot: Slot) => void;
}

/** The gear as all it could still be, coming into focus; its dimensions are buttons. Fills the element it stands in. */
export function GearDrawing(props: GearDrawingProps): ReactNode {
  const [ref, size] = useSize<HTMLElement>({ width: 720, height: 560 });
  const before = useBefore(props.report);
  const { drawing, report } = props;
  return (
    <figure className="GearDrawing" ref={ref}>
      {drawing && drawing.gears.length > 0 ? (
        <DrawingSheet
          {...props}
          {...size}
          drawing={drawing}
          sentence={report ? tellFocus(before, report) : 'The gear from the front and from the side'}
        />
      ) : (
        <EmptySheet {...props} {...size} />
      )}
    </figure>
  );
}
