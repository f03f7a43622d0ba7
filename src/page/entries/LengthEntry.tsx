import { type ReactNode, useState } from 'react';
import type { Wheel } from '../../index.ts';
import { editWheel, type JobReading, putReading } from '../state/edit-job.ts';
import { isSplit } from '../state/is-split.ts';
import { findReading } from '../state/slot.ts';
import { nameAct } from '../words/name-act.ts';
import { Choice } from './Choice.tsx';
import type { EntryProps } from './entry-props.ts';
import { asTakings, readField, textOf } from './read-field.ts';
import { TakeField } from './TakeField.tsx';

type Jaws = 'settled' | 'rocked' | 'either';

/** A length: three takings in one field, the unit at the field, how the jaws stood and whether a split stood open. */
export function LengthEntry(props: EntryProps): ReactNode {
  const { wheel, slot, unit, text, onType, onUnit, onTake } = props;
  const index = findReading(wheel, slot);
  const taken = (wheel.readings ?? [])[index] as LengthFields | undefined;
  const [jaws, setJaws] = useState<Jaws>(
    taken?.jaws === 'settled' || taken?.jaws === 'rocked' ? taken.jaws : 'either',
  );
  const [split, setSplit] = useState<'open' | 'closed'>(taken?.taken ?? 'open');
  const shown = text === '' && taken ? textOf(taken.mm, unit) : text;
  const asksJaws = slot.of === 'outside' && isOddCount(wheel);
  const asksSplit =
    isSplit(wheel) && (slot.of === 'outside' || slot.of === 'root' || slot.of === 'over-pins');
  const take = (): string | undefined => {
    const content = readField(shown, unit);
    if ('wrong' in content) return content.wrong;
    const reading = {
      ...taken,
      ...slot,
      mm: asTakings(content.lengths),
      ...(asksJaws && jaws !== 'either' ? { jaws } : {}),
      ...(asksSplit ? { taken: split } : {}),
    };
    if (asksJaws && jaws === 'either') delete (reading as { jaws?: unknown }).jaws;
    onTake(`${nameAct(slot)} ${shown}`, (job) =>
      editWheel(job, wheel.id, (one) =>
        putReading(one, clean(reading) as JobReading, findReading(one, slot)),
      ),
    );
    return undefined;
  };
  return (
    <div className="entry">
      {asksSplit && (
        <Choice
          legend="The split, while you measure"
          options={[
            { value: 'open', words: 'stands open' },
            { value: 'closed', words: 'pressed shut' },
          ]}
          chosen={split}
          onChoose={setSplit}
        />
      )}
      {asksJaws && (
        <Choice
          legend="How did the jaws stand?"
          options={[
            { value: 'rocked', words: 'rocked to the largest' },
            { value: 'settled', words: 'settled flat' },
            { value: 'either', words: 'not sure' },
          ]}
          chosen={jaws}
          onChoose={setJaws}
        />
      )}
      <TakeField
        label="What the caliper shows; several takings with a space between"
        text={shown}
        mode="decimal"
        onType={onType}
        onTake={take}
        beside={
          <button type="button" onClick={() => onType(`${shown.trim()} `)}>
            Again, at another place
          </button>
        }
        unit={
          <button
            type="button"
            className="entry-unit plain"
            onClick={() => onUnit(unit === 'mm' ? 'in' : 'mm')}
          >
            {unit}
            <span className="unseen">, change the unit</span>
          </button>
        }
      />
    </div>
  );
}

interface LengthFields {
  readonly mm?: number | readonly number[];
  readonly jaws?: string;
  readonly taken?: 'open' | 'closed';
}

/** Without the fields that are not said. */
function clean(reading: object): object {
  return Object.fromEntries(Object.entries(reading).filter(([, value]) => value !== undefined));
}

function isOddCount(wheel: Wheel): boolean {
  return (wheel.readings ?? []).some(
    (reading) => reading.of === 'teeth' && reading.count !== undefined && reading.count % 2 === 1,
  );
}
