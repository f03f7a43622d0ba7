import type { ReactNode } from 'react';
import type { Slot } from '../state/slot.ts';
import type { Dimension } from './list-dimensions.ts';
import type { Box } from './part-labels.ts';
import './DimensionLabel.css';

export interface DimensionLabelProps {
  readonly dimension: Dimension;
  readonly box: Box;
  readonly sheet: { readonly width: number; readonly height: number };
  /** Absent on paper */
  readonly onTouch?: ((slot: Slot) => void) | undefined;
}

/** A dimension's name and figure; touching it opens its reading. Placed by parts of the sheet, so it scales with it. */
export function DimensionLabel({ dimension, box, sheet, onTouch }: DimensionLabelProps): ReactNode {
  const { name, value, isSuspect, isActive, spoken, slot } = dimension;
  const style = {
    left: `${(box.x / sheet.width) * 100}%`,
    top: `${(box.y / sheet.height) * 100}%`,
    width: box.width,
    height: box.height,
  };
  const words = (
    <>
      <span className={value === undefined ? 'DimensionLabel-open' : 'DimensionLabel-name'}>{name}</span>{' '}
      {value !== undefined && (
        <span className={isSuspect ? 'DimensionLabel-value DimensionLabel-suspect' : 'DimensionLabel-value'}>
          {value}
        </span>
      )}
    </>
  );
  if (!onTouch) {
    return (
      <span className="DimensionLabel" style={style}>
        {words}
      </span>
    );
  }
  return (
    <button
      type="button"
      className={isActive ? 'DimensionLabel DimensionLabel-active' : 'DimensionLabel'}
      style={style}
      aria-label={spoken}
      aria-current={isActive ? 'true' : undefined}
      onClick={() => onTouch(slot)}
    >
      {words}
    </button>
  );
}
