import type { ReactNode } from 'react';
import type { Job } from '../../index.ts';
import { nameAct } from '../words/name-act.ts';
import type { EntryProps } from './entry-props.ts';
import { readField } from './read-field.ts';
import { TakeField } from './TakeField.tsx';

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
  const take = (): string | undefined => {
    const signed = isSigned ? readSigned(text, unit) : undefined;
    if (signed !== undefined) {
      onTake(`${nameAct(slot)} ${text}`, (job) => put(job, signed));
      return undefined;
    }
    const content = readField(text, unit);
    if ('wrong' in content) return content.wrong;
    onTake(`${nameAct(slot)} ${text}`, (job) => put(job, content.lengths[0]));
    return undefined;
  };
  return (
    <div className="entry">
      <TakeField
        label={label}
        text={text}
        mode="decimal"
        onType={onType}
        onTake={take}
        unit={<span className="entry-hint">{unit}</span>}
      />
    </div>
  );
}

function readSigned(text: string, unit: 'mm' | 'in'): number | undefined {
  const value = Number(text.trim().replace(',', '.').replace('−', '-'));
  if (text.trim() === '' || !Number.isFinite(value) || Math.abs(value) > 5) return undefined;
  return unit === 'mm' ? value : Number((value * 25.4).toPrecision(9));
}
