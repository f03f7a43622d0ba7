import { type ReactNode, useState } from 'react';
import type { Job } from '../../index.ts';
import { nameAct } from '../words/name-act.ts';
import type { EntryProps } from './entry-props.ts';
import { Field } from './Field.tsx';
import { readField } from './read-field.ts';

/** A length that is no reading of the teeth: a split's gap, the flat of a D, the caliper's own zero. */
export function PlainLengthEntry(
  props: EntryProps & {
    readonly label: string;
    /** Zero and below are lengths here too */
    readonly isSigned?: boolean | undefined;
    readonly put: (job: Job, mm: number) => Job;
  },
): ReactNode {
  const { slot, unit, text, onType, onTake, label, isSigned, put } = props;
  const [wrong, setWrong] = useState<string>();
  const take = (): void => {
    const signed = isSigned ? readSigned(text, unit) : undefined;
    if (signed !== undefined) {
      onTake(`${nameAct(slot)} ${text}`, (job) => put(job, signed));
      return;
    }
    const content = readField(text, unit);
    if ('wrong' in content) {
      setWrong(`${content.wrong} ${content.remedy}`);
      return;
    }
    onTake(`${nameAct(slot)} ${text}`, (job) => put(job, content.lengths[0]));
  };
  return (
    <div className="entry">
      <Field
        label={label}
        text={text}
        mode="decimal"
        wrong={wrong}
        onType={(typed) => {
          setWrong(undefined);
          onType(typed);
        }}
        onTake={take}
        unit={<span className="entry-hint">{unit}</span>}
      />
      <div className="entry-row">
        <button type="button" className="next" onClick={take}>
          Take it
        </button>
      </div>
    </div>
  );
}

function readSigned(text: string, unit: 'mm' | 'in'): number | undefined {
  const value = Number(text.trim().replace(',', '.').replace('−', '-'));
  if (text.trim() === '' || !Number.isFinite(value) || Math.abs(value) > 5) return undefined;
  return unit === 'mm' ? value : Number((value * 25.4).toPrecision(9));
}
