import type { ReactNode } from 'react';
import { kindOf, type Wheel } from '../../index.ts';
import type { Slot } from '../state/slot.ts';
import { DimensionLabel } from './DimensionLabel.tsx';
import { listDimensions } from './list-dimensions.ts';
import { TitleBlock, type TitleBlockProps } from './TitleBlock.tsx';
import { UnsharpGear } from './UnsharpGear.tsx';
import './EmptySheet.css';

export interface EmptySheetProps {
  readonly wheel: Wheel;
  readonly active?: Slot | undefined;
  readonly isWorking: boolean;
  readonly unit: 'mm' | 'in';
  readonly titleBlock: Omit<TitleBlockProps, 'scale' | 'unit' | 'isNarrow'>;
  readonly width: number;
  readonly height: number;
  readonly onTouch: (slot: Slot) => void;
}

/** Nothing is known yet: some gear, and the one thing to begin with. */
export function EmptySheet(props: EmptySheetProps): ReactNode {
  const { wheel, active, isWorking, unit, width, height, onTouch } = props;
  const kind = kindOf(wheel);
  const isNarrow = width < 560;
  const radius = Math.max(48, Math.min(width - 64, height - (isNarrow ? 40 : 80) - 48) / 2);
  const y = (height - (isNarrow ? 40 : 56)) / 2;
  const [first] = listDimensions({ wheel, asked: [], active, unit });
  const buttonWidth = 176;
  const buttonY = kind === 'rack' ? y + radius * 0.3 : y - 24;
  return (
    <div className={isWorking ? 'EmptySheet EmptySheet-working' : 'EmptySheet'} aria-busy={isWorking}>
      <svg
        className="EmptySheet-lines"
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label="A gear of which nothing is known yet"
      >
        <g transform={`translate(${width / 2} ${y}) scale(1 -1)`}>
          <UnsharpGear kind={kind} radius={radius} />
        </g>
      </svg>
      <DimensionLabel
        dimension={first}
        box={{ x: (width - buttonWidth) / 2, y: buttonY, width: buttonWidth, height: 48 }}
        sheet={{ width, height }}
        onTouch={onTouch}
      />
      <TitleBlock {...props.titleBlock} unit={unit} isNarrow={isNarrow} />
    </div>
  );
}
