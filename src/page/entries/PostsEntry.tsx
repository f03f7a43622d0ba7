import { type ReactNode, useState } from 'react';
import { editWheel, type JobReading, putReading } from '../state/edit-job.ts';
import { dropCenter } from '../state/edit-train.ts';
import { findReading } from '../state/slot.ts';
import { Choice } from './Choice.tsx';
import type { EntryProps } from './entry-props.ts';
import { asTakings, readField } from './read-field.ts';
import { TakeField } from './TakeField.tsx';

type How = 'over' | 'between' | 'straight';

/** The distance of two posts: over both, between them, or already known; the page does the sum. */
export function PostsEntry(props: EntryProps): ReactNode {
  const { wheel, slot, unit, text, onType, onTake } = props;
  const [how, setHow] = useState<How>('over');
  const [posts, setPosts] = useState('');
  const take = (): string | undefined => {
    const length = readField(text, unit);
    if ('wrong' in length) return length.wrong;
    const reading: Record<string, unknown> = { of: 'center-distance', mate: slot.mate };
    if (how === 'straight') reading.mm = asTakings(length.lengths);
    else {
      const two = readField(posts, unit);
      if ('wrong' in two) return `The posts: ${two.wrong}`;
      reading.postsMm = [two.lengths[0], two.lengths[1] ?? two.lengths[0]];
      reading[how === 'over' ? 'overPostsMm' : 'betweenPostsMm'] = length.lengths[0];
    }
    onTake(`distance of the posts ${text}`, (job) =>
      dropCenter(
        editWheel(job, wheel.id, (one) => putReading(one, reading as JobReading, findReading(one, slot))),
        wheel.id,
        slot.mate,
      ),
    );
    return undefined;
  };
  return (
    <div className="entry">
      <Choice
        legend="How is it measured?"
        options={[
          { value: 'over', words: 'outside, over both posts' },
          { value: 'between', words: 'between the posts' },
          { value: 'straight', words: 'middle to middle, known' },
        ]}
        chosen={how}
        onChoose={setHow}
      />
      <TakeField
        label="What the caliper shows"
        text={text}
        mode="decimal"
        onType={onType}
        onTake={take}
        unit={<span className="entry-hint">{unit}</span>}
      >
        {how !== 'straight' && (
          <label className="entry-small">
            Thickness of the two posts, such as 2 2{' '}
            <input
              value={posts}
              inputMode="decimal"
              onChange={(event) => setPosts(event.currentTarget.value)}
            />{' '}
            {unit}
          </label>
        )}
      </TakeField>
    </div>
  );
}
