import { type ReactNode, useState } from 'react';
import { editWheel, type JobReading, putReading } from '../state/edit-job.ts';
import { findReading } from '../state/slot.ts';
import { Choice } from './Choice.tsx';
import type { EntryProps } from './entry-props.ts';
import { LengthEntry } from './LengthEntry.tsx';
import { readField } from './read-field.ts';
import { TakeField } from './TakeField.tsx';

/** A bore: by drills, the one that goes and the one that stops, or by inside jaws. */
export function BoreEntry(props: EntryProps): ReactNode {
  const { wheel, unit, text, onType, onTake } = props;
  const [how, setHow] = useState<'drill' | 'jaws'>('drill');
  const [stops, setStops] = useState('');
  const take = (): string | undefined => {
    const goes = readField(text, unit);
    const stopped = stops.trim() === '' ? undefined : readField(stops, unit);
    if ('wrong' in goes) return goes.wrong;
    if (stopped && 'wrong' in stopped) return stopped.wrong;
    if (stopped && stopped.lengths[0] <= goes.lengths[0]) {
      return 'The drill that stops is the thicker one: look at the two again.';
    }
    const reading: JobReading = {
      of: 'bore',
      goesMm: goes.lengths[0],
      ...(stopped ? { stopsMm: stopped.lengths[0] } : {}),
    };
    onTake(`bore ${text}`, (job) =>
      editWheel(job, wheel.id, (one) => putReading(one, reading, findReading(one, { of: 'bore' }))),
    );
    return undefined;
  };
  const choice = (
    <Choice
      legend="How is it measured?"
      options={[
        { value: 'drill', words: 'by drill: goes, stops' },
        { value: 'jaws', words: 'by the inside jaws' },
      ]}
      chosen={how}
      onChoose={setHow}
    />
  );
  if (how === 'jaws') {
    return (
      <div className="entry">
        {choice}
        <LengthEntry {...props} />
      </div>
    );
  }
  return (
    <div className="entry">
      {choice}
      <TakeField
        label="The thickest drill that goes in"
        text={text}
        mode="decimal"
        onType={onType}
        onTake={take}
        unit={<span className="entry-hint">{unit}</span>}
      >
        <label className="entry-small">
          The next one, that stops{' '}
          <input
            value={stops}
            inputMode="decimal"
            onChange={(event) => setStops(event.currentTarget.value)}
          />{' '}
          {unit}
        </label>
      </TakeField>
    </div>
  );
}
