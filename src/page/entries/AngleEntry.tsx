import { type ReactNode, useState } from 'react';
import { editWheel, putReading } from '../state/edit-job.ts';
import { findReading } from '../state/slot.ts';
import { Choice } from './Choice.tsx';
import type { EntryProps } from './entry-props.ts';
import { Field } from './Field.tsx';

/** The slant of the teeth, in degrees, and which way they lean. */
export function AngleEntry(props: EntryProps): ReactNode {
  const { wheel, slot, text, onType, onTake } = props;
  const [hand, setHand] = useState<'left' | 'right'>(wheel.look === 'slanted-left' ? 'left' : 'right');
  const [wrong, setWrong] = useState<string>();
  const take = (): void => {
    const degrees = Number(text.trim().replace(',', '.').replace('°', ''));
    if (text.trim() === '' || !(degrees >= 0 && degrees < 60)) {
      setWrong('Type the angle between tooth and axis in degrees: 0 to 60, such as 15.');
      return;
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
      <Field
        label="Degrees between tooth and axis"
        text={text}
        mode="decimal"
        wrong={wrong}
        onType={(typed) => {
          setWrong(undefined);
          onType(typed);
        }}
        onTake={take}
        unit={<span className="entry-hint">°</span>}
      />
      <div className="entry-row">
        <button type="button" className="next" onClick={take}>
          Take it
        </button>
      </div>
    </div>
  );
}
