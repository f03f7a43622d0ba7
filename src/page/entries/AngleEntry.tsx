import { type ReactNode, useState } from 'react';
import { editWheel, putReading } from '../state/edit-job.ts';
import { findReading } from '../state/slot.ts';
import { Choice } from './Choice.tsx';
import type { EntryProps } from './entry-props.ts';
import { TakeField } from './TakeField.tsx';

/** The slant of the teeth, in degrees, and which way they lean. */
export function AngleEntry(props: EntryProps): ReactNode {
  const { wheel, slot, text, onType, onTake } = props;
  const [hand, setHand] = useState<'left' | 'right'>(wheel.look === 'slanted-left' ? 'left' : 'right');
  const take = (): string | undefined => {
    const degrees = Number(text.trim().replace(',', '.').replace('°', ''));
    if (text.trim() === '' || !(degrees >= 0 && degrees < 60)) {
      return 'Type the angle between tooth and axis in degrees: 0 to 60, such as 15.';
    }
    onTake(`slant ${text}°`, (job) =>
      editWheel(job, wheel.id, (one) =>
        putReading(
          one,
          { of: 'helix-angle', deg: hand === 'left' ? -degrees : degrees },
          findReading(one, slot),
        ),
      ),
    );
    return undefined;
  };
  return (
    <div className="entry">
      <Choice
        legend="Axis upright, the teeth lean"
        options={[
          { value: 'right', words: 'to the right, going up' },
          { value: 'left', words: 'to the left, going up' },
        ]}
        chosen={hand}
        onChoose={setHand}
      />
      <TakeField
        label="Degrees between tooth and axis"
        text={text}
        mode="decimal"
        onType={onType}
        onTake={take}
        unit={<span className="entry-hint">°</span>}
      />
    </div>
  );
}
