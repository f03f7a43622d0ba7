import { type ReactNode, useState } from 'react';
import type { Job } from '../../index.ts';
import { Choice } from '../entries/Choice.tsx';
import { TakeField } from '../entries/TakeField.tsx';
import { setMotor, shaftOf } from '../state/edit-train.ts';
import { nameShaft } from '../words/name-wheel.ts';
import { readNumber } from './read-number.ts';

/** Where the turning starts, and how fast. */
export function MotorEntry(props: {
  readonly job: Job;
  /** Where it starts as far as the drive can tell */
  readonly from: string | undefined;
  readonly text: string;
  readonly onType: (text: string) => void;
  readonly onTake: (what: string, edit: (job: Job) => Job) => void;
}): ReactNode {
  const { job, from, text, onType, onTake } = props;
  const shafts = [...new Set((job.wheels ?? []).filter((one) => one.kind !== 'rack').map(shaftOf))];
  const [chosen, setShaft] = useState<string>();
  const shaft = chosen ?? job.motor?.shaft ?? from ?? shafts[0] ?? '';
  const shown = text === '' && job.motor?.rpm !== undefined ? String(job.motor.rpm) : text;
  return (
    <div className="entry">
      <Choice
        legend="Where does the motor, the spring or the hand turn it?"
        options={shafts.map((one) => ({ value: one, words: nameShaft(job, one) }))}
        chosen={shaft}
        onChoose={setShaft}
      />
      <TakeField
        label="How many turns a minute there?"
        text={shown}
        mode="decimal"
        unit={<span className="entry-hint">rpm</span>}
        onType={onType}
        onTake={() => {
          const rpm = readNumber(shown);
          if (rpm === undefined || rpm <= 0 || rpm > 1e6)
            return 'Type turns a minute, such as 3000: it often stands on the motor.';
          onTake(`motor ${shown} rpm`, (one) => setMotor(one, shaft, rpm));
          return undefined;
        }}
        beside={
          <button
            type="button"
            onClick={() =>
              onTake('speed of the motor not known', (one) => {
                const set = setMotor(one, shaft, undefined);
                return { ...set, leftOut: [...new Set([...(set.leftOut ?? []), 'motor'])] };
              })
            }
          >
            Don’t know
          </button>
        }
      />
    </div>
  );
}
