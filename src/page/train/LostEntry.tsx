import { type ReactNode, useState } from 'react';
import { Choice } from '../entries/Choice.tsx';
import type { EntryProps } from '../entries/entry-props.ts';
import { readField } from '../entries/read-field.ts';
import { TakeField } from '../entries/TakeField.tsx';
import { editWheel } from '../state/edit-job.ts';
import { useStoreOfPage } from '../state/use-page.ts';
import { AgainstEntry } from './AgainstEntry.tsx';
import { WantedEntry } from './WantedEntry.tsx';

/** What is asked of a gear that is lost: its crumbs, its post, its neighbors, its rows, the speed that was wanted. */
export default function LostEntry(props: EntryProps): ReactNode {
  const { job, wheel, slot, text, onType, onTake } = props;
  const store = useStoreOfPage();
  switch (slot.of) {
    case 'crumbs':
      return (
        <div className="entry">
          <div className="entry-row">
            <button type="button" className="next" onClick={() => store.openAct({ of: 'tooth-depth' })}>
              I found one: measure its depth
            </button>
          </div>
        </div>
      );
    case 'post':
      return <PostEntry {...props} />;
    case 'neighbors':
      return (
        <AgainstEntry
          job={job}
          wheel={wheel}
          reached={new Set()}
          onTake={onTake}
          onSeat={() => store.turnTo('train', 'what-is-it')}
        />
      );
    case 'rows':
      return (
        <div className="entry">
          <div className="entry-row">
            {([1, 2] as const).map((rows) => (
              <button
                key={rows}
                type="button"
                onClick={() =>
                  onTake(rows === 1 ? 'one row of teeth' : 'two rows of teeth', (one) =>
                    editWheel(one, wheel.id, (was) => ({ ...was, rows })),
                  )
                }
              >
                {rows === 1 ? 'One row' : 'Two rows, one piece'}
              </button>
            ))}
          </div>
        </div>
      );
    default:
      return (
        <WantedEntry
          job={job}
          from={job.wanted?.from ?? job.motor?.shaft}
          to={job.wanted?.to}
          text={text}
          onType={onType}
          onTake={onTake}
          onMotor={() => store.turnTo('train', 'what-is-it')}
        />
      );
  }
}

/** The post that a lost gear sat on: it says the bore, the length, and what held it. */
function PostEntry({ wheel, unit, text, onType, onTake }: EntryProps): ReactNode {
  const [height, setHeight] = useState('');
  const [clip, setClip] = useState<'yes' | 'no' | 'unsure'>('unsure');
  const take = (): string | undefined => {
    const across = readField(text, unit);
    if ('wrong' in across) return across.wrong;
    const free = height.trim() === '' ? undefined : readField(height, unit);
    if (free && 'wrong' in free) return `The height: ${free.wrong}`;
    onTake(`post ${text}`, (job) =>
      editWheel(job, wheel.id, (one) => ({
        ...one,
        postSize: {
          ...one.postSize,
          diameterMm: across.lengths[0],
          ...(free ? { freeHeightMm: free.lengths[0] } : {}),
          ...(clip === 'unsure' ? {} : { clip: clip === 'yes' }),
        },
      })),
    );
    return undefined;
  };
  return (
    <div className="entry">
      <TakeField
        label="Across the post"
        text={text}
        mode="decimal"
        onType={onType}
        onTake={take}
        unit={<span className="entry-hint">{unit}</span>}
      >
        <label className="entry-small">
          Free height of the post, if it can be measured{' '}
          <input
            value={height}
            inputMode="decimal"
            onChange={(event) => setHeight(event.currentTarget.value)}
          />{' '}
          {unit}
        </label>
        <Choice
          legend="Is there a groove for a clip?"
          options={[
            { value: 'yes', words: 'yes' },
            { value: 'no', words: 'no' },
            { value: 'unsure', words: 'not sure' },
          ]}
          chosen={clip}
          onChoose={setClip}
        />
      </TakeField>
    </div>
  );
}
