import type { ReactNode } from 'react';
import type { Job, Wheel } from '../../index.ts';
import { readField } from '../entries/read-field.ts';
import { TakeField } from '../entries/TakeField.tsx';
import { editWheel } from '../state/edit-job.ts';
import { readNumber } from './read-number.ts';

/** What a wheel without gear readings is known by: a belt wheel's diameter, a screw's threads, else its teeth. */
export function SizeEntry(props: {
  readonly wheel: Wheel;
  readonly unit: 'mm' | 'in';
  readonly text: string;
  readonly onType: (text: string) => void;
  readonly onTake: (what: string, edit: (job: Job) => Job) => void;
}): ReactNode {
  const { wheel, unit, text, onType, onTake } = props;
  const own = wheel.name ?? wheel.id;
  if (wheel.kind === 'pulley') {
    return (
      <div className="entry">
        <TakeField
          label="Across, where the belt runs"
          text={text}
          mode="decimal"
          unit={<span className="entry-hint">{unit}</span>}
          onType={onType}
          onTake={() => {
            const content = readField(text, unit);
            if ('wrong' in content) return content.wrong;
            const [mm] = content.lengths;
            onTake(`across ${own} ${text}`, (job) =>
              editWheel(job, wheel.id, (one) => ({ ...one, diameterMm: mm })),
            );
            return undefined;
          }}
        />
      </div>
    );
  }
  const isWorm = wheel.kind === 'worm';
  return (
    <div className="entry">
      <TakeField
        label={isWorm ? 'How many threads run round the screw? (starts)' : 'Teeth'}
        text={text}
        mode="numeric"
        onType={onType}
        onTake={() => {
          const teeth = readNumber(text);
          const least = isWorm ? 1 : 4;
          if (
            teeth === undefined ||
            !Number.isInteger(teeth) ||
            teeth < least ||
            teeth > (isWorm ? 12 : 1000)
          )
            return isWorm
              ? 'Type a whole number, mostly 1 or 2: look at its end and count where threads begin.'
              : 'Type a whole number, such as 40.';
          onTake(`${own}: ${text}`, (job) =>
            editWheel(job, wheel.id, (one) => ({ ...one, spec: { ...one.spec, teeth } })),
          );
          return undefined;
        }}
      />
    </div>
  );
}
